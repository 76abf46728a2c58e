import { ohmsPerMetre } from '../electrical/wire.ts';
import type { PlacedModule } from '../geometry/place.ts';
import type { KitIndex, RibbonFacts } from '../layout/kit-index.ts';
import { remember } from '../layout/remember.ts';
import { type Group, islandOf } from './groups.ts';
import type { LeadPlan } from './leads.ts';
import { atMm } from './placing.ts';

/** By supply line, in the kit's order, GND last. */
type ByLine = readonly number[];

/** Of each supply line whether its voltage is above or below ground. */
export const signsOf = remember(
  (kit: KitIndex): ByLine => kit.supplyLines.map((line) => Math.sign(kit.voltages.get(line)?.volts ?? 0)),
);

const currentsIn = remember((kit: KitIndex) =>
  remember(({ facts }: PlacedModule): ByLine => {
    const drawn = kit.supplyLines.map((line) =>
      facts.needs.includes(line) ? (facts.draws.find(([of]) => of === line)?.[1] ?? 0) : 0,
    );
    const signs = signsOf(kit);
    const ground = drawn.length - 1;
    drawn[ground] = drawn.reduce((sum, ma, i) => (i === ground ? sum : sum + (signs[i] as number) * ma), 0);
    return drawn;
  }),
);

/** What a module draws of what its headers bring: mA on each voltage, and what comes back through ground. */
export const currentsOf = (module: PlacedModule, kit: KitIndex): ByLine => currentsIn(kit)(module);

/** Ohms of one contact on each line; none on a line that it does not carry, where no current flows either. */
function contactOhms({ bus }: RibbonFacts, ways: number, kit: KitIndex): ByLine {
  return kit.supplyLines.map((line) => {
    const contacts = (bus.supplyPins.get(line) ?? []).filter((pin) => pin < ways).length;
    return contacts === 0 ? 0 : kit.limits.contactMilliohm / 1000 / contacts;
  });
}

function wireOhms(facts: RibbonFacts, lengthMm: number, kit: KitIndex): ByLine {
  const perMm = ohmsPerMetre(facts.kind.awg ?? 28, kit.limits.ambientC) / 1000;
  return kit.supplyLines.map((line) => {
    const wires = facts.bus.supplyPins.get(line)?.length ?? 0;
    return wires === 0 ? 0 : (perMm * lengthMm) / wires;
  });
}

/** Ohms of the pieces and contacts of each kind of ribbon, worked out once. */
interface Pieces {
  /** Before each connector; nothing before the first. */
  readonly wires: readonly ByLine[];
  readonly contacts: readonly ByLine[];
}

const piecesIn = remember((kit: KitIndex) =>
  remember(
    (facts: RibbonFacts): Pieces => ({
      wires: facts.connectors.map((_, c) =>
        wireOhms(facts, c === 0 ? 0 : atMm(facts, c) - atMm(facts, c - 1), kit),
      ),
      contacts: facts.connectors.map((_, c) => contactOhms(facts, facts.ways[c] ?? 0, kit)),
    }),
  ),
);

/** What an island draws, and what it loses between the module that is fed and each other one, mV. */
export interface IslandLoss {
  readonly currents: ByLine;
  readonly modules: readonly PlacedModule[];
  /** By the module that is fed, then by voltage: the worst of all modules that draw it; without end below 0 where none does. */
  readonly worst: Float64Array;
}

const NOT_DRAWN = Number.NEGATIVE_INFINITY;

const voltagesOf = (kit: KitIndex): number => kit.supplyLines.length - 1;

/** Of each voltage whether a module draws it, of what its headers bring. */
const drawnIn = remember((kit: KitIndex) =>
  remember(({ facts }: PlacedModule): readonly boolean[] =>
    kit.supplyLines
      .slice(0, -1)
      .map((line) => facts.needs.includes(line) && facts.draws.some(([drawn]) => drawn === line)),
  ),
);

export function aloneLoss(module: PlacedModule, kit: KitIndex): IslandLoss {
  const worst = Float64Array.from(drawnIn(kit)(module), (isDrawn) => (isDrawn ? 0 : NOT_DRAWN));
  return { currents: currentsOf(module, kit), modules: [module], worst };
}

/** The tree that a group's ribbons make of its modules (first) and connectors, from its first module on. */
interface Tree {
  /** Nodes, each after the one that it hangs on. */
  readonly order: readonly number[];
  readonly parent: Int32Array;
  /** Of the way from each node to its parent, ohms, by node and line. */
  readonly ohms: Float64Array;
}

function treeOf({ placings, joints }: Group, modules: readonly PlacedModule[], kit: KitIndex): Tree {
  const pieces = piecesIn(kit);
  const first: number[] = [];
  let nodes = modules.length;
  for (const { facts } of placings) {
    first.push(nodes);
    nodes += facts.connectors.length;
  }
  const ends: number[] = [];
  const between: ByLine[] = [];
  const join = (a: number, b: number, ohms: ByLine): void => {
    ends.push(a, b);
    between.push(ohms);
  };
  placings.forEach(({ facts, seats }, i) => {
    const at = first[i] as number;
    const { wires, contacts } = pieces(facts);
    for (let c = 1; c < facts.connectors.length; c++) join(at + c - 1, at + c, wires[c] as ByLine);
    for (const { connector, header } of seats) {
      const module = modules.indexOf(header.owner as PlacedModule);
      if (module >= 0 && !header.isolated) join(module, at + connector, contacts[connector] as ByLine);
    }
  });
  for (const { plug, plugConnector, socket, socketConnector } of joints) {
    const facts = (n: number) => (placings[n] as Group['placings'][number]).facts;
    const ways = Math.min(facts(plug).ways[plugConnector] ?? 0, facts(socket).ways[socketConnector] ?? 0);
    join(
      (first[plug] as number) + plugConnector,
      (first[socket] as number) + socketConnector,
      contactOhms(facts(plug), ways, kit),
    );
  }
  const head = new Int32Array(nodes).fill(-1);
  const next = new Int32Array(ends.length);
  for (let end = 0; end < ends.length; end++) {
    const node = ends[end] as number;
    next[end] = head[node] as number;
    head[node] = end;
  }
  const parent = new Int32Array(nodes).fill(-1);
  const lines = kit.supplyLines.length;
  const ohms = new Float64Array(nodes * lines);
  const order = [0];
  for (let at = 0; at < order.length; at++) {
    const node = order[at] as number;
    for (let end = head[node] as number; end >= 0; end = next[end] as number) {
      const to = ends[end ^ 1] as number;
      if (to === 0 || parent[to] !== -1) continue;
      parent[to] = node;
      ohms.set(between[end >> 1] as ByLine, to * lines);
      order.push(to);
    }
  }
  return { order, parent, ohms };
}

/** What flows into each node and all that hangs on it, by node and line. */
function intoNodes({ order, parent }: Tree, modules: readonly PlacedModule[], kit: KitIndex): Float64Array {
  const lines = kit.supplyLines.length;
  const into = new Float64Array(parent.length * lines);
  modules.forEach((module, i) => {
    into.set(currentsOf(module, kit), i * lines);
  });
  for (let i = order.length - 1; i > 0; i--) {
    const node = order[i] as number;
    const on = parent[node] as number;
    for (let l = 0; l < lines; l++)
      into[on * lines + l] = (into[on * lines + l] as number) + (into[node * lines + l] as number);
  }
  return into;
}

/**
 * What a group's ribbons lose, by the module at which they are fed. Of each voltage the worst way down from every node
 * is found from the leaves on, then the worst way up from it and down elsewhere: twice through the tree instead of once
 * for each module that may be fed.
 */
export function groupLoss(group: Group, kit: KitIndex): IslandLoss {
  const modules = islandOf(group);
  const tree = treeOf(group, modules, kit);
  const { order, parent, ohms } = tree;
  const into = intoNodes(tree, modules, kit);
  const lines = kit.supplyLines.length;
  const voltages = voltagesOf(kit);
  const currents = Array.from(into.subarray(0, lines));
  const draws = modules.map(drawnIn(kit));
  const worst = new Float64Array(modules.length * voltages).fill(NOT_DRAWN);
  /** The worst way down from each node, that by which it goes, and the worst of the others. */
  const down = new Float64Array(parent.length);
  const by = new Int32Array(parent.length);
  const other = new Float64Array(parent.length);
  const up = new Float64Array(parent.length).fill(NOT_DRAWN);
  for (let v = 0; v < voltages; v++) {
    if (!draws.some((drawn) => drawn[v])) continue;
    // On its own line, and by the shift of ground.
    const sign = signsOf(kit)[v] as number;
    down.fill(NOT_DRAWN);
    by.fill(-1);
    other.fill(NOT_DRAWN);
    for (let m = 0; m < modules.length; m++) if (draws[m]?.[v]) down[m] = 0;
    for (let i = order.length - 1; i > 0; i--) {
      const node = order[i] as number;
      const on = parent[node] as number;
      const [own, ground] = [node * lines + v, node * lines + voltages];
      const way =
        (down[node] as number) +
        (ohms[own] as number) * (into[own] as number) +
        sign * (ohms[ground] as number) * (into[ground] as number);
      if (way > (down[on] as number)) {
        other[on] = down[on] as number;
        down[on] = way;
        by[on] = node;
      } else if (way > (other[on] as number)) other[on] = way;
    }
    for (let i = 1; i < order.length; i++) {
      const node = order[i] as number;
      const on = parent[node] as number;
      const [own, ground] = [node * lines + v, node * lines + voltages];
      // Up from the module that is fed flows what all the others draw.
      up[node] =
        Math.max(up[on] as number, (by[on] === node ? other[on] : down[on]) as number) +
        (ohms[own] as number) * ((currents[v] as number) - (into[own] as number)) +
        sign * (ohms[ground] as number) * ((currents[voltages] as number) - (into[ground] as number));
    }
    for (let m = 0; m < modules.length; m++)
      worst[m * voltages + v] = Math.max(down[m] as number, up[m] as number);
  }
  return { currents, modules, worst };
}

/** Ohms of a lead from the board to its first stop, on each line. */
export function leadOhms({ facts, boardConnector, stops }: LeadPlan, kit: KitIndex): ByLine {
  const { connector } = stops[0] as LeadPlan['stops'][number];
  const lengthMm = Math.abs(atMm(facts, connector) - atMm(facts, boardConnector));
  const wire = wireOhms(facts, lengthMm, kit);
  const { contacts } = piecesIn(kit)(facts);
  const [near, far] = [contacts[connector] as ByLine, contacts[boardConnector] as ByLine];
  return wire.map((ohms, i) => ohms + (near[i] as number) + (far[i] as number));
}

/** Ohms of a board's lead on each line. */
export function boardOhms({ board }: LeadPlan, kit: KitIndex): number {
  const { lead } = board.board;
  return lead ? (ohmsPerMetre(lead.awg, kit.limits.ambientC) * lead.lengthMm) / 1000 : 0;
}

/** What is lost of a voltage in an island that is fed so, without what is lost on the way to the board, mV. */
export function ownLossMv(
  { currents, modules, worst }: IslandLoss,
  fed: PlacedModule,
  voltage: number,
  ohms: ByLine,
  kit: KitIndex,
): number {
  const ground = voltagesOf(kit);
  const inside = worst[modules.indexOf(fed) * ground + voltage] ?? NOT_DRAWN;
  return (
    inside +
    (ohms[voltage] as number) * (currents[voltage] as number) +
    (signsOf(kit)[voltage] as number) * (ohms[ground] as number) * (currents[ground] as number)
  );
}
