import type { WholeTake } from '../../src/wiring/whole-take.ts';
import type { Circuit } from './circuit.ts';

/*
 * The network of a take by the letter of the rules and in the plainest way: every connector of every ribbon has
 * nodes, used or not; nothing is taken together, nothing is left out, no part is kept. It shares no code with the
 * program's own but the seats that conduct. What 0 Ω joins is given one number at the end.
 */

export interface PlainNetwork {
  readonly circuit: Circuit;
  readonly nodeOf: ReadonlyMap<string, number>;
  /** By what the branch is, as `seat ribbon connector line` or `segment ribbon from line`. */
  readonly branchOf: ReadonlyMap<string, number>;
  readonly reached: ReadonlySet<number>;
}

export const key = (...parts: readonly (string | number)[]): string => JSON.stringify(parts);

export function plainNetwork({ take, kit, wiring, places }: WholeTake): PlainNetwork {
  const { limits } = kit;
  const lines = [...kit.kit.voltages.map(({ id }) => id), 'GND'];
  const nodeOf = new Map<string, number>();
  const branchOf = new Map<string, number>();
  const resistors: [number, number, number][] = [];
  const held: [number, number][] = [];
  const loads: [number, number, number][] = [];
  const node = (...parts: readonly (string | number)[]): number => {
    const name = key(...parts);
    const known = nodeOf.get(name) ?? nodeOf.size + 1;
    nodeOf.set(name, known);
    return known;
  };
  const joined: [number, number][] = [];
  const join = (name: string, a: number, b: number, ohm: number): void => {
    if (ohm === 0) joined.push([a, b]);
    else branchOf.set(name, resistors.push([a, b, ohm]) - 1);
  };
  const wireOhm = (lengthMm: number, awg: number): number => {
    const mm2 = (Math.PI / 4) * (0.127 * 92 ** ((36 - awg) / 39)) ** 2;
    return (((0.017241 * lengthMm) / 1000) * (1 + 0.00393 * (limits.ambientC - 20))) / mm2;
  };

  for (const supply of take.supplies) {
    for (const line of lines) {
      const volts = kit.kit.voltages.find(({ id }) => id === line)?.volts ?? 0;
      const at = node('supply', supply.id, line);
      if (line === 'GND' || (supply.ratings[line] ?? 0) > 0) held.push([at, volts]);
      for (const { id, lead } of supply.boards) {
        const ohm = lead ? wireOhm(lead.lengthMm, lead.awg) : 0;
        join(key('lead', id, line), at, node('board', id, line), ohm);
      }
    }
  }
  for (const module of take.modules) {
    const kind = kit.kit.modules.find(({ id }) => id === module.kind);
    for (const line of lines) {
      for (const header of kind?.headers ?? []) {
        const own = node('header', module.id, header.id, line);
        if (!header.isolated)
          join(key('in', module.id, header.id, line), own, node('module', module.id, line), 0);
        for (const other of kind?.headers ?? []) {
          if (other.id <= header.id || other.bus !== header.bus || !header.passes || !other.passes) continue;
          const partner = node('header', module.id, other.id, line);
          join(key('pass', module.id, header.id, other.id, line), own, partner, 0);
        }
      }
    }
  }
  for (const { ribbon, facts } of wiring.ribbons) {
    const { connectors } = facts.kind;
    for (const line of lines) {
      const conductors = facts.bus.bus.pinout.filter((name) => name === line).length;
      for (let i = 0; conductors > 0 && i + 1 < connectors.length; i++) {
        const lengthMm = (connectors[i + 1]?.atMm ?? 0) - (connectors[i]?.atMm ?? 0);
        const [a, b] = [node('ribbon', ribbon.id, i, line), node('ribbon', ribbon.id, i + 1, line)];
        join(key('segment', ribbon.id, i, line), a, b, wireOhm(lengthMm, facts.kind.awg ?? 28) / conductors);
      }
    }
  }
  for (const { ribbon, connector, on, conducts } of wiring.joints) {
    if (!conducts) continue;
    const ways = [ribbon.facts.kind.connectors[connector]?.ways ?? Number.POSITIVE_INFINITY];
    if (on.type === 'connector')
      ways.push(on.ribbon.facts.kind.connectors[on.connector]?.ways ?? Number.POSITIVE_INFINITY);
    for (const line of lines) {
      const contacts = ribbon.facts.bus.bus.pinout.filter(
        (name, i) => name === line && i < Math.min(...ways),
      ).length;
      if (contacts === 0) continue;
      const under =
        on.type === 'connector'
          ? node('ribbon', on.ribbon.id, on.connector, line)
          : on.header.owner.type === 'board'
            ? node('board', on.header.owner.id, line)
            : node('header', on.header.owner.id, on.header.id, line);
      const ohm = limits.contactMilliohm / 1000 / contacts;
      join(key('seat', ribbon.id, connector, line), node('ribbon', ribbon.id, connector, line), under, ohm);
    }
  }
  for (const { id } of places.modules) for (const line of lines) node('module', id, line);

  let oneOf = Array.from({ length: nodeOf.size + 1 }, (_, at) => at);
  for (const [a, b] of joined) {
    const [gone, stays] = [oneOf[a] as number, oneOf[b] as number];
    oneOf = oneOf.map((at) => (at === gone ? stays : at));
  }
  const one = (at: number): number => oneOf[at] as number;
  for (const [name, at] of nodeOf) nodeOf.set(name, one(at));
  for (const [i, [a, b, ohm]] of resistors.entries()) resistors[i] = [one(a), one(b), ohm];
  const sources = new Map(held.map(([at, volts]) => [one(at), volts]));

  const around = new Map<number, number[]>();
  for (const [a, b] of resistors) {
    around.set(a, [...(around.get(a) ?? []), b]);
    around.set(b, [...(around.get(b) ?? []), a]);
  }
  const reached = new Set(sources.keys());
  for (const at of reached) for (const next of around.get(at) ?? []) reached.add(next);
  for (const { id, kind } of take.modules) {
    const draws = kit.kit.modules.find((each) => each.id === kind)?.draws ?? {};
    for (const [line, ma] of Object.entries(draws)) {
      const [at, ground] = [node('module', id, line), node('module', id, 'GND')];
      if (!ma || !reached.has(at) || !reached.has(ground)) continue;
      const volts = kit.kit.voltages.find((voltage) => voltage.id === line)?.volts ?? 0;
      loads.push(volts > 0 ? [at, ground, ma / 1000] : [ground, at, ma / 1000]);
    }
  }
  // What hangs on no supply would make the equations singular: it is tied to node 0 and carries nothing.
  const ties = oneOf.flatMap((_, at) => (at > 0 && !reached.has(at) ? [[at, 0, 1] as const] : []));
  const circuit = { nodes: oneOf.length, held: [...sources], resistors: [...resistors, ...ties], loads };
  return { circuit, nodeOf, branchOf, reached };
}
