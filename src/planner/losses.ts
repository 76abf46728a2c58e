import { ohmsPerMetre } from '../electrical/wire.ts';
import type { PlacedModule } from '../geometry/place.ts';
import { GND } from '../layout/defaults.ts';
import type { KitIndex, RibbonFacts } from '../layout/kit-index.ts';
import { type Group, islandOf } from './groups.ts';
import type { LeadPlan } from './leads.ts';
import { atMm } from './placing.ts';

/** By supply line, in the kit's order, GND last. */
type ByLine = readonly number[];

/** What a module draws: mA on each voltage, and what comes back through ground. */
export function currentsOf({ facts }: PlacedModule, kit: KitIndex): ByLine {
  const draws = new Map(facts.draws);
  const drawn = kit.supplyLines.map((line) => (line === GND ? 0 : (draws.get(line) ?? 0)));
  drawn[drawn.length - 1] = kit.supplyLines.reduce(
    (sum, line, i) => sum + Math.sign(kit.voltages.get(line)?.volts ?? 0) * (drawn[i] ?? 0),
    0,
  );
  return drawn;
}

const add = (a: ByLine, b: ByLine): ByLine => a.map((value, i) => value + (b[i] as number));

/** Ohms of one contact on each line; without an end where none lies within the ways. */
function contactOhms({ bus }: RibbonFacts, ways: number, kit: KitIndex): ByLine {
  return kit.supplyLines.map((line) => {
    const contacts = (bus.supplyPins.get(line) ?? []).filter((pin) => pin < ways).length;
    return contacts === 0 ? Number.POSITIVE_INFINITY : kit.limits.contactMilliohm / 1000 / contacts;
  });
}

function wireOhms(facts: RibbonFacts, lengthMm: number, kit: KitIndex): ByLine {
  const perMm = ohmsPerMetre(facts.kind.awg ?? 28, kit.limits.ambientC) / 1000;
  return kit.supplyLines.map((line) => {
    const wires = facts.bus.supplyPins.get(line)?.length ?? 0;
    return wires === 0 ? Number.POSITIVE_INFINITY : (perMm * lengthMm) / wires;
  });
}

/** What is lost of a voltage: on its own line, and by the shift of ground; mV. */
const lossOn = (drops: ByLine, line: number, kit: KitIndex): number =>
  (drops[line] as number) +
  Math.sign(kit.voltages.get(kit.supplyLines[line] as string)?.volts ?? 0) *
    (drops[kit.supplyLines.length - 1] as number);

interface Edge {
  readonly to: number;
  readonly ohms: ByLine;
}

/** The worst that any module of a group loses of each voltage between the module that is fed and itself, mV. */
export interface IslandLoss {
  readonly currents: ByLine;
  /** By the module that is fed: by voltage; nothing where nobody draws it. */
  readonly worst: ReadonlyMap<PlacedModule, ByLine>;
}

const NOT_DRAWN = Number.NEGATIVE_INFINITY;

const worstAt = (modules: readonly (readonly [PlacedModule, ByLine])[], kit: KitIndex): ByLine =>
  kit.supplyLines
    .slice(0, -1)
    .map((line, i) =>
      modules.reduce(
        (most, [{ facts }, drops]) =>
          facts.draws.some(([drawn]) => drawn === line) ? Math.max(most, lossOn(drops, i, kit)) : most,
        NOT_DRAWN,
      ),
    );

export function aloneLoss(module: PlacedModule, kit: KitIndex): IslandLoss {
  const none = kit.supplyLines.map(() => 0);
  return { currents: currentsOf(module, kit), worst: new Map([[module, worstAt([[module, none]], kit)]]) };
}

/** What a group's ribbons lose, by the module at which they are fed. */
export function groupLoss(group: Group, kit: KitIndex): IslandLoss {
  const modules = islandOf(group);
  const first: number[] = [];
  let nodes = modules.length;
  for (const { facts } of group.placings) {
    first.push(nodes);
    nodes += facts.connectors.length;
  }
  const edges: Edge[][] = Array.from({ length: nodes }, () => []);
  const join = (a: number, b: number, ohms: ByLine): void => {
    (edges[a] as Edge[]).push({ to: b, ohms });
    (edges[b] as Edge[]).push({ to: a, ohms });
  };
  group.placings.forEach(({ facts, seats }, i) => {
    const at = first[i] as number;
    for (let c = 1; c < facts.connectors.length; c++)
      join(at + c - 1, at + c, wireOhms(facts, atMm(facts, c) - atMm(facts, c - 1), kit));
    for (const { connector, header } of seats) {
      const module = modules.indexOf(header.owner as PlacedModule);
      if (module >= 0 && !header.isolated)
        join(module, at + connector, contactOhms(facts, facts.ways[connector] ?? 0, kit));
    }
  });
  for (const { plug, plugConnector, socket, socketConnector } of group.joints) {
    const facts = (n: number) => (group.placings[n] as Group['placings'][number]).facts;
    const ways = Math.min(facts(plug).ways[plugConnector] ?? 0, facts(socket).ways[socketConnector] ?? 0);
    join(
      (first[plug] as number) + plugConnector,
      (first[socket] as number) + socketConnector,
      contactOhms(facts(plug), ways, kit),
    );
  }
  const drawn = modules.map((module) => currentsOf(module, kit));
  const none = kit.supplyLines.map(() => 0);
  const worst = new Map(
    modules.map((module, fed) => [module, worstAt(spread(edges, drawn, none.length, fed, modules), kit)]),
  );
  return { currents: drawn.reduce(add, none), worst };
}

/** Walks the tree from the module that is fed and sums up what is lost on the way to each other one. */
function spread(
  edges: readonly (readonly Edge[])[],
  drawn: readonly ByLine[],
  lines: number,
  fed: number,
  modules: readonly PlacedModule[],
): [PlacedModule, ByLine][] {
  const order = [fed];
  const back: (Edge | undefined)[] = new Array(edges.length);
  const seen = new Uint8Array(edges.length);
  seen[fed] = 1;
  for (const node of order)
    for (const { to, ohms } of edges[node] as readonly Edge[]) {
      if (seen[to]) continue;
      seen[to] = 1;
      back[to] = { to: node, ohms };
      order.push(to);
    }
  const through = new Float64Array(edges.length * lines);
  drawn.forEach((currents, node) => {
    through.set(currents, node * lines);
  });
  for (let i = order.length - 1; i > 0; i--) {
    const node = order[i] as number;
    const before = (back[node] as Edge).to;
    for (let line = 0; line < lines; line++)
      through[before * lines + line] =
        (through[before * lines + line] as number) + (through[node * lines + line] as number);
  }
  const drops = new Float64Array(edges.length * lines);
  for (let i = 1; i < order.length; i++) {
    const node = order[i] as number;
    const { to: before, ohms } = back[node] as Edge;
    for (let line = 0; line < lines; line++) {
      const carried = through[node * lines + line] as number;
      const lost = carried === 0 ? 0 : (ohms[line] as number) * carried;
      drops[node * lines + line] = (drops[before * lines + line] as number) + lost;
    }
  }
  return modules.flatMap((module, i) =>
    seen[i] ? [[module, Array.from(drops.subarray(i * lines, (i + 1) * lines))]] : [],
  );
}

/** Ohms of a lead from the board to its first stop, on each line. */
export function leadOhms({ facts, boardConnector, stops }: LeadPlan, kit: KitIndex): ByLine {
  const { connector } = stops[0] as LeadPlan['stops'][number];
  const lengthMm = Math.abs(atMm(facts, connector) - atMm(facts, boardConnector));
  const wire = wireOhms(facts, lengthMm, kit);
  const near = contactOhms(facts, facts.ways[connector] ?? 0, kit);
  const far = contactOhms(facts, facts.ways[boardConnector] ?? 0, kit);
  return wire.map((ohms, i) => ohms + (near[i] as number) + (far[i] as number));
}

/** Ohms of a board's lead on each line. */
export function boardOhms({ board }: LeadPlan, kit: KitIndex): number {
  const { lead } = board.board;
  return lead ? (ohmsPerMetre(lead.awg, kit.limits.ambientC) * lead.lengthMm) / 1000 : 0;
}

/** What is lost of each voltage in an island that is fed so, without what is lost on the way to the board, mV. */
export function ownLosses(
  { currents, worst }: IslandLoss,
  fed: PlacedModule,
  ohms: ByLine,
  kit: KitIndex,
): ByLine {
  const drops = ohms.map((each, i) => (currents[i] === 0 ? 0 : each * (currents[i] as number)));
  return (worst.get(fed) ?? []).map((inside, i) =>
    inside === NOT_DRAWN ? inside : inside + lossOn(drops, i, kit),
  );
}
