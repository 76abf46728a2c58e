import type { PlacedModule, Places } from '../geometry/place.ts';
import type { KitIndex } from '../layout/kit-index.ts';
import type { Limits, Take } from '../layout/layout.ts';
import type { DerivedTake } from './derived-take.ts';
import type { Harness } from './harness.ts';
import type { DoubleUse, Joints } from './joints.ts';
import type { Joint, LaidRibbon } from './laid-ribbon.ts';
import type { LinkGroup } from './link-group.ts';
import type { Neighbours } from './neighbours.ts';
import type { SupplyNet } from './supply-net.ts';

/** What each part has a map of, as one map. */
function joined<K, V>(
  parts: readonly DerivedTake[],
  mapOf: (part: DerivedTake) => ReadonlyMap<K, V>,
): ReadonlyMap<K, V> {
  const all = new Map<K, V>();
  for (const part of parts) for (const [key, value] of mapOf(part)) all.set(key, value);
  return all;
}

/** The parts' joints as one, each list put together when it is first asked for. */
class JoinedJoints implements Joints {
  readonly #parts: readonly DerivedTake[];
  readonly #count: number;
  #ribbons?: readonly LaidRibbon[];
  #ribbonById?: ReadonlyMap<string, LaidRibbon>;
  #joints?: readonly Joint[];
  #seatedOn?: Joints['seatedOn'];
  #doubleUses?: readonly DoubleUse[];

  constructor(parts: readonly DerivedTake[], count: number) {
    this.#parts = parts;
    this.#count = count;
  }

  get ribbons() {
    if (this.#ribbons) return this.#ribbons;
    const ribbons = new Array<LaidRibbon>(this.#count);
    for (const { wiring } of this.#parts) for (const ribbon of wiring.ribbons) ribbons[ribbon.index] = ribbon;
    this.#ribbons = ribbons;
    return ribbons;
  }

  get ribbonById() {
    this.#ribbonById ??= new Map(this.ribbons.map((ribbon) => [ribbon.id, ribbon]));
    return this.#ribbonById;
  }

  get joints() {
    this.#joints ??= this.#parts.flatMap(({ wiring }) => wiring.joints);
    return this.#joints;
  }

  get seatedOn() {
    this.#seatedOn ??= joined(this.#parts, ({ wiring }) => wiring.seatedOn);
    return this.#seatedOn;
  }

  get doubleUses() {
    this.#doubleUses ??= this.#parts.flatMap(({ wiring }) => wiring.doubleUses);
    return this.#doubleUses;
  }
}

/** A whole take: its parts, and everything in them as one, put together when it is first asked for. */
export class WholeTake implements DerivedTake {
  readonly take: Take;
  readonly kit: KitIndex;
  readonly limits: Limits;
  readonly places: Places;
  readonly wiring: Joints;
  /** Pieces that no seat joins to one another; a part stays the very same while nothing in it changes. */
  readonly parts: readonly DerivedTake[];
  #harnesses?: readonly Harness[];
  #linkGroups?: readonly LinkGroup[];
  #neighbours?: readonly Neighbours[];
  #seatsAlong?: DerivedTake['seatsAlong'];
  #lies?: DerivedTake['lies'];
  #crossed?: DerivedTake['crossed'];
  #supplyNet?: SupplyNet;

  constructor(take: Take, kit: KitIndex, places: Places, parts: readonly DerivedTake[]) {
    this.take = take;
    this.kit = kit;
    this.limits = kit.limits;
    this.places = places;
    this.parts = parts;
    this.wiring = new JoinedJoints(parts, take.ribbons.length);
  }

  get harnesses() {
    this.#harnesses ??= this.parts.flatMap(({ harnesses }) => harnesses);
    return this.#harnesses;
  }

  get linkGroups() {
    this.#linkGroups ??= this.parts.flatMap(({ linkGroups }) => linkGroups);
    return this.#linkGroups;
  }

  get neighbours() {
    this.#neighbours ??= this.parts.flatMap(({ neighbours }) => neighbours);
    return this.#neighbours;
  }

  get seatsAlong() {
    this.#seatsAlong ??= joined(this.parts, ({ seatsAlong }) => seatsAlong);
    return this.#seatsAlong;
  }

  get lies() {
    this.#lies ??= joined(this.parts, ({ lies }) => lies);
    return this.#lies;
  }

  get crossed() {
    this.#crossed ??= new Set(this.parts.flatMap((part) => [...part.crossed]));
    return this.#crossed;
  }

  get supplyNet() {
    this.#supplyNet ??= joinSupplyNets(this.parts);
    return this.#supplyNet;
  }
}

function joinSupplyNets(parts: readonly DerivedTake[]): SupplyNet {
  const netOf = new Map<PlacedModule, SupplyNet>();
  for (const { places, supplyNet } of parts) {
    for (const module of places.modules) netOf.set(module, supplyNet);
  }
  const of = (module: PlacedModule): SupplyNet => netOf.get(module) as SupplyNet;
  return {
    islands: parts.flatMap(({ supplyNet }) => supplyNet.islands),
    islandOf: (module) => of(module).islandOf(module),
    reaches: (module, line) => of(module).reaches(module, line),
  };
}
