import { type Places, placeTake } from '../geometry/place.ts';
import { indexKit, type KitIndex } from '../layout/kit-index.ts';
import type { Kit, Limits, Take } from '../layout/layout.ts';
import { findHarnesses, type Harness, type HeaderJoint } from './harness.ts';
import { isCrossed, type Joints, joinTake } from './joints.ts';
import type { LaidRibbon } from './laid-ribbon.ts';
import { type Lie, lieOf, seatsAlong } from './lie.ts';
import { findLinkGroups, type LinkGroup } from './link-group.ts';
import { findNeighbours, type Neighbours } from './neighbours.ts';
import { type SupplyNet, traceSupplies } from './supply-net.ts';

/** All that follows from a take and is not judged: computed once, shared by checks, canvas and sheets. */
export interface DerivedTake {
  readonly take: Take;
  readonly kit: KitIndex;
  readonly limits: Limits;
  readonly places: Places;
  readonly wiring: Joints;
  readonly harnesses: readonly Harness[];
  readonly linkGroups: readonly LinkGroup[];
  readonly neighbours: readonly Neighbours[];
  /** Seats that have a place along each ribbon, first along it first; by index of the ribbon. */
  readonly seatsAlong: readonly (readonly HeaderJoint[])[];
  /** How each seated flat ribbon that does not bend lies. */
  readonly lies: ReadonlyMap<LaidRibbon, Lie>;
  /** Flat ribbons whose seats are out of the connectors' order. */
  readonly crossed: ReadonlySet<LaidRibbon>;
  readonly supplyNet: SupplyNet;
}

function liesOf(
  ribbons: readonly LaidRibbon[],
  along: readonly (readonly HeaderJoint[])[],
  tolMm: number,
): Map<LaidRibbon, Lie> {
  const lies = new Map<LaidRibbon, Lie>();
  for (const ribbon of ribbons) {
    if (!ribbon.facts.flat || ribbon.facts.bends) continue;
    const lie = lieOf(ribbon, along[ribbon.index] ?? [], tolMm);
    if (lie) lies.set(ribbon, lie);
  }
  return lies;
}

/** Derives a take of an opened layout. Near-linear in what the take holds. */
export function deriveTake(kit: Kit, take: Take): DerivedTake {
  const index = indexKit(kit);
  const places = placeTake(index, take);
  const wiring = joinTake(index, take, places);
  const { harnesses, harnessOf } = findHarnesses(wiring.ribbons, wiring.joints);
  const along = wiring.ribbons.map(seatsAlong);
  return {
    take,
    kit: index,
    limits: index.limits,
    places,
    wiring,
    harnesses,
    linkGroups: findLinkGroups(harnesses),
    neighbours: findNeighbours(harnesses, along),
    seatsAlong: along,
    lies: liesOf(wiring.ribbons, along, index.limits.seatToleranceMm),
    crossed: new Set(wiring.ribbons.filter((ribbon) => isCrossed(ribbon, along[ribbon.index] ?? []))),
    supplyNet: traceSupplies(index, take, places, wiring.ribbons, wiring.joints, harnesses, harnessOf),
  };
}
