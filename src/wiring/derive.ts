import { type PlacedModule, type Places, placeTake } from '../geometry/place.ts';
import { indexKit, type KitIndex } from '../layout/kit-index.ts';
import type { Kit, Module, Ribbon, Supply, Take } from '../layout/layout.ts';
import type { DerivedTake } from './derived-take.ts';
import { findHarnesses } from './harness.ts';
import { isCrossed, joinRibbons } from './joints.ts';
import type { LaidRibbon } from './laid-ribbon.ts';
import { type Lie, lieOf, seatsAlong } from './lie.ts';
import { findLinkGroups } from './link-group.ts';
import { findNeighbours, type SeatsAlong } from './neighbours.ts';
import { type Part, partsOf } from './parts.ts';
import { traceSupplies } from './supply-net.ts';
import { WholeTake } from './whole-take.ts';

function liesOf(ribbons: readonly LaidRibbon[], along: SeatsAlong, tolMm: number): Map<LaidRibbon, Lie> {
  const lies = new Map<LaidRibbon, Lie>();
  for (const ribbon of ribbons) {
    if (!ribbon.facts.flat || ribbon.facts.bends) continue;
    const lie = lieOf(ribbon, along.get(ribbon) ?? [], tolMm);
    if (lie) lies.set(ribbon, lie);
  }
  return lies;
}

/** What the parts of a take have in common. As long as that is the very same, a part follows from its own things alone. */
interface Setting {
  readonly kit: KitIndex;
  readonly takeId: string;
  readonly supplies: readonly Supply[];
  readonly rows: Places['rows'];
  readonly boards: Places['boards'];
}

interface Kept {
  readonly setting: Setting;
  /** Indices of its ribbons in the document. */
  readonly ribbons: Part['ribbons'];
  readonly derived: DerivedTake;
}

/*
 * Parts outlive the take that they were derived for: while a module is dragged all parts but its own are made of
 * the very same objects in each layout, and so are what follows from them and what the checks say of them. Kept
 * by the first ribbon or module of the document, so that they go when these go.
 */
const keptParts = new WeakMap<Ribbon | Module, Kept>();

const isSetting = (a: Setting, b: Setting): boolean =>
  a.kit === b.kit &&
  a.takeId === b.takeId &&
  a.supplies === b.supplies &&
  a.rows === b.rows &&
  a.boards === b.boards;

function isMadeOf({ ribbons, derived }: Kept, part: Part, take: Take, places: Places): boolean {
  const { places: own, take: ownTake } = derived;
  if (ribbons.length !== part.ribbons.length || own.modules.length !== part.modules.length) return false;
  // Plain loops: every module and ribbon of the take passes here at every move of a drag.
  for (let i = 0; i < own.modules.length; i++)
    if (places.modules[part.modules[i] as number] !== own.modules[i]) return false;
  for (let i = 0; i < ribbons.length; i++) {
    const index = part.ribbons[i] as number;
    if (ribbons[i] !== index || take.ribbons[index] !== ownTake.ribbons[i]) return false;
  }
  return true;
}

function derivePart(part: Part, kit: KitIndex, whole: Take, all: Places): DerivedTake {
  const modules = part.modules.map((index) => all.modules[index] as PlacedModule);
  const drawn = part.ribbons.map((index) => ({ ribbon: whole.ribbons[index] as Ribbon, index }));
  const take: Take = {
    ...whole,
    modules: modules.map(({ module }) => module),
    ribbons: drawn.map(({ ribbon }) => ribbon),
  };
  const { rows, rowById, boards, boardById } = all;
  const moduleById = new Map(modules.map((module) => [module.id, module]));
  const places: Places = { rows, rowById, boards, boardById, modules, moduleById };
  const wiring = joinRibbons(kit, drawn, places);
  const { ribbons, joints } = wiring;
  const { harnesses, harnessOf } = findHarnesses(ribbons, joints);
  const along: SeatsAlong = new Map(ribbons.map((ribbon) => [ribbon, seatsAlong(ribbon)]));
  return {
    take,
    kit,
    limits: kit.limits,
    places,
    wiring,
    harnesses,
    linkGroups: findLinkGroups(harnesses),
    neighbours: findNeighbours(harnesses, along),
    seatsAlong: along,
    lies: liesOf(ribbons, along, kit.limits.seatToleranceMm),
    crossed: new Set(ribbons.filter((ribbon) => isCrossed(ribbon, along.get(ribbon) ?? []))),
    supplyNet: traceSupplies(kit, take, places, ribbons, joints, harnesses, harnessOf),
  };
}

/** Derives a take of an opened layout. Near-linear in what the take holds; after a move, in what the move touches. */
export function deriveTake(kit: Kit, take: Take): WholeTake {
  const index = indexKit(kit);
  const places = placeTake(index, take);
  const { rows, boards } = places;
  const setting: Setting = { kit: index, takeId: take.id, supplies: take.supplies, rows, boards };
  const parts = partsOf(take).map((part) => {
    const key =
      take.ribbons[part.ribbons[0] as number] ?? (take.modules[part.modules[0] as number] as Module);
    const known = keptParts.get(key);
    if (known && isSetting(known.setting, setting) && isMadeOf(known, part, take, places))
      return known.derived;
    const derived = derivePart(part, index, take, places);
    keptParts.set(key, { setting, ribbons: part.ribbons, derived });
    return derived;
  });
  return new WholeTake(take, index, places, parts);
}
