import type { PlacedHeader, PlacedModule, Places } from '../geometry/place.ts';
import { GND } from '../layout/defaults.ts';
import type { BusFacts, KitIndex } from '../layout/kit-index.ts';
import type { Supply, Take } from '../layout/layout.ts';
import { Carriers, passesOn } from './carriers.ts';
import { type Harness, type HeaderJoint, isFeed } from './harness.ts';
import { type Joint, type LaidRibbon, waysOf } from './laid-ribbon.ts';
import { UnionFind } from './union-find.ts';

/** Modules that share a supply through link ribbons; a lone module is one. */
export interface Island {
  readonly modules: readonly PlacedModule[];
  readonly feeds: readonly Feed[];
}

/** A seat through which a feed harness brings a voltage into an island. */
export interface Feed {
  readonly seat: HeaderJoint;
  readonly harness: Harness;
}

/** How the supply lines of a take hang together. */
export interface SupplyNet {
  /** Those with a module or a feed. */
  readonly islands: readonly Island[];
  islandOf(module: PlacedModule): Island;
  /** Whether a supply line arrives at a module from a supply that gives it. */
  reaches(module: PlacedModule, line: string): boolean;
}

/** Whether a supply has an output for a line; ground it always has. */
export const gives = ({ ratings }: Supply, line: string): boolean =>
  line === GND || (Object.hasOwn(ratings, line) && (ratings[line] as number) > 0);

/** Whether any contact within the ways lies on the line. */
export const carries = (bus: BusFacts, ways: number, line: string): boolean => {
  const first = bus.supplyPins.get(line)?.[0];
  return first !== undefined && first < ways;
};

/** The nodes of the net: for each supply line one at every carrier, every ribbon and every supply. */
class Nodes {
  readonly #lines: readonly string[];
  readonly #carriers: Carriers;
  readonly #numberOfRibbon: ReadonlyMap<LaidRibbon, number>;
  readonly carriers: number;
  readonly size: number;

  constructor(kit: KitIndex, places: Places, ribbons: readonly LaidRibbon[], supplies: number) {
    this.#lines = kit.supplyLines;
    this.#carriers = new Carriers(places.modules);
    this.#numberOfRibbon = new Map(ribbons.map((ribbon, number) => [ribbon, number]));
    this.carriers = this.#carriers.count;
    this.size = (this.carriers + ribbons.length + supplies) * this.#lines.length;
  }

  carrier(header: PlacedHeader): number {
    return this.#carriers.of(header);
  }

  ofModule(module: PlacedModule): number {
    return this.#carriers.ofModule(module);
  }

  ofCarrier(carrier: number, line: number): number {
    return carrier * this.#lines.length + line;
  }

  ofRibbon(ribbon: LaidRibbon, line: number): number {
    return (this.carriers + (this.#numberOfRibbon.get(ribbon) as number)) * this.#lines.length + line;
  }

  ofSupply(supply: number, line: number): number {
    return (this.carriers + this.#numberOfRibbon.size + supply) * this.#lines.length + line;
  }

  ofHeader(header: PlacedHeader, line: number): number {
    return header.owner.type === 'module'
      ? this.ofCarrier(this.carrier(header), line)
      : this.ofSupply(header.owner.supplyIndex, line);
  }
}

function joinSeat(net: UnionFind, nodes: Nodes, lines: readonly string[], joint: Joint): void {
  const { ribbon, on } = joint;
  const ways =
    on.type === 'header'
      ? waysOf(ribbon, joint.connector)
      : Math.min(waysOf(ribbon, joint.connector), waysOf(on.ribbon, on.connector));
  lines.forEach((line, i) => {
    if (!carries(ribbon.facts.bus, ways, line)) return;
    const under = on.type === 'header' ? nodes.ofHeader(on.header, i) : nodes.ofRibbon(on.ribbon, i);
    net.join(nodes.ofRibbon(ribbon, i), under);
  });
}

function findIslands(
  kit: KitIndex,
  places: Places,
  nodes: Nodes,
  net: UnionFind,
): { islandOfCarrier: Island[]; islands: Island[] } {
  const carriers = new UnionFind(nodes.carriers);
  const firstAt = new Map<number, number>();
  kit.supplyLines.forEach((line, i) => {
    if (line === GND) return;
    for (let carrier = 0; carrier < nodes.carriers; carrier++) {
      const root = net.find(nodes.ofCarrier(carrier, i));
      const first = firstAt.get(root);
      if (first === undefined) firstAt.set(root, carrier);
      else carriers.join(first, carrier);
    }
  });
  const byRoot = new Map<number, Island>();
  const islands: Island[] = [];
  const islandOfCarrier: Island[] = [];
  for (let carrier = 0; carrier < nodes.carriers; carrier++) {
    const root = carriers.find(carrier);
    let island = byRoot.get(root);
    if (!island) {
      island = { modules: [], feeds: [] };
      byRoot.set(root, island);
      islands.push(island);
    }
    const module = places.modules[carrier];
    if (module) (island.modules as PlacedModule[]).push(module);
    islandOfCarrier.push(island);
  }
  return { islandOfCarrier, islands };
}

/** Voltages that a feed harness may bring to a seat: those on a contact there and on one at a board. */
function bringsVoltage(harness: Harness, seat: HeaderJoint): boolean {
  const { bus } = seat.ribbon.facts;
  for (const line of bus.supplyPins.keys()) {
    if (line === GND || !carries(bus, waysOf(seat.ribbon, seat.connector), line)) continue;
    const atBoard = harness.boardSeats.some((board) =>
      carries(board.ribbon.facts.bus, waysOf(board.ribbon, board.connector), line),
    );
    if (atBoard) return true;
  }
  return false;
}

/**
 * A header that is isolated feeds nothing, unless it passes the supply on to a partner: then the way past
 * the module is fed, and with it whatever hangs there.
 */
const isFed = ({ on: { header } }: HeaderJoint): boolean => !header.isolated || passesOn(header);

function joinSupplies(take: Take, nodes: Nodes, lines: readonly string[]): number[] {
  const sources: number[] = [];
  take.supplies.forEach((supply, index) => {
    lines.forEach((line, i) => {
      if (gives(supply, line)) sources.push(nodes.ofSupply(index, i));
    });
  });
  return sources;
}

/** Follows the supply lines of a take through seats, joints and modules. Near-linear in the seats drawn. */
export function traceSupplies(
  kit: KitIndex,
  take: Take,
  places: Places,
  ribbons: readonly LaidRibbon[],
  joints: readonly Joint[],
  harnesses: readonly Harness[],
  harnessOf: ReadonlyMap<LaidRibbon, Harness>,
): SupplyNet {
  const lines = kit.supplyLines;
  const nodes = new Nodes(kit, places, ribbons, take.supplies.length);
  const net = new UnionFind(nodes.size);
  const isFeedJoint = (joint: Joint): boolean => isFeed(harnessOf.get(joint.ribbon) as Harness);
  const conducting = joints.filter((joint) => joint.conducts);

  for (const joint of conducting) if (!isFeedJoint(joint)) joinSeat(net, nodes, lines, joint);
  const { islandOfCarrier, islands } = findIslands(kit, places, nodes, net);

  for (const harness of harnesses) {
    if (!isFeed(harness)) continue;
    for (const seat of harness.moduleSeats) {
      if (!isFed(seat) || !bringsVoltage(harness, seat)) continue;
      const island = islandOfCarrier[nodes.carrier(seat.on.header)] as Island;
      (island.feeds as Feed[]).push({ seat, harness });
    }
  }

  for (const joint of conducting) if (isFeedJoint(joint)) joinSeat(net, nodes, lines, joint);
  const live = new Set(joinSupplies(take, nodes, lines).map((node) => net.find(node)));
  const indexOfLine = new Map(lines.map((line, i) => [line, i]));
  return {
    islands: islands.filter(({ modules, feeds }) => modules.length > 0 || feeds.length > 0),
    islandOf: (module) => islandOfCarrier[nodes.ofModule(module)] as Island,
    reaches: (module, line) => {
      const i = indexOfLine.get(line);
      return i !== undefined && live.has(net.find(nodes.ofCarrier(nodes.ofModule(module), i)));
    },
  };
}
