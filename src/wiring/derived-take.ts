import type { Places } from '../geometry/place.ts';
import type { KitIndex } from '../layout/kit-index.ts';
import type { Limits, Take } from '../layout/layout.ts';
import type { Harness } from './harness.ts';
import type { Joints } from './joints.ts';
import type { LaidRibbon } from './laid-ribbon.ts';
import type { Lie } from './lie.ts';
import type { LinkGroup } from './link-group.ts';
import type { Neighbours, SeatsAlong } from './neighbours.ts';
import type { SupplyNet } from './supply-net.ts';

/** All that follows from a take, or from one part of it, and is not judged: shared by checks, canvas and sheets. */
export interface DerivedTake {
  readonly take: Take;
  readonly kit: KitIndex;
  readonly limits: Limits;
  readonly places: Places;
  readonly wiring: Joints;
  readonly harnesses: readonly Harness[];
  readonly linkGroups: readonly LinkGroup[];
  readonly neighbours: readonly Neighbours[];
  readonly seatsAlong: SeatsAlong;
  /** How each seated flat ribbon that does not bend lies. */
  readonly lies: ReadonlyMap<LaidRibbon, Lie>;
  /** Flat ribbons whose seats are out of the connectors' order. */
  readonly crossed: ReadonlySet<LaidRibbon>;
  readonly supplyNet: SupplyNet;
}
