import { GND, typeOf } from '../layout/defaults.ts';
import { groupBy } from '../layout/group-by.ts';
import type { KitIndex } from '../layout/kit-index.ts';
import type { Harness } from '../wiring/harness.ts';
import { connectorOf, type LaidRibbon, linesOf, waysOf } from '../wiring/laid-ribbon.ts';
import { UnionFind } from '../wiring/union-find.ts';
import type { WholeTake } from '../wiring/whole-take.ts';

/** A connector that a probe comes to: it is not seated in another ribbon's. */
export interface ProbePoint {
  readonly ribbon: LaidRibbon;
  readonly connector: number;
}

/** What beeps together: the contacts of that number at these connectors. One alone beeps with nothing. */
export interface Net {
  /** From 1. */
  readonly pin: number;
  /** '' where nothing is on it. */
  readonly line: string;
  readonly points: readonly ProbePoint[];
  /** Places, among the nets, of those beside it: the next in the ribbon, and the next in a connector's row. */
  readonly besides: readonly number[];
}

/** All that a test of one harness tells, taken off all headers: two contacts beep exactly where one net has both. */
export interface Continuity {
  readonly harness: Harness;
  readonly points: readonly ProbePoint[];
  readonly nets: readonly Net[];
  /** Ground, then each voltage on it, with the pins that carry it: none of these may beep to another. */
  readonly supplies: readonly { readonly line: string; readonly pins: readonly number[] }[];
}

/** Contact k lies on conductor k everywhere, and a plug's contact k on the socket's. */
function joinConductors(ribbons: readonly LaidRibbon[]) {
  const first = new Map<LaidRibbon, number>();
  let count = 0;
  for (const ribbon of ribbons) {
    first.set(ribbon, count);
    count += ribbon.facts.conductors;
  }
  const conductor = (ribbon: LaidRibbon, pin: number): number => (first.get(ribbon) as number) + pin;
  const sets = new UnionFind(count);
  const buried = new Set<string>();
  const joints = new Set(ribbons.flatMap(({ uses }) => uses.flat()));
  for (const { ribbon, connector, on, conducts } of joints) {
    if (!conducts || on.type !== 'connector') continue;
    const ways = Math.min(waysOf(ribbon, connector), waysOf(on.ribbon, on.connector));
    for (let pin = 0; pin < ways; pin++) sets.join(conductor(ribbon, pin), conductor(on.ribbon, pin));
    buried.add(`${first.get(ribbon)} ${connector}`).add(`${first.get(on.ribbon)} ${on.connector}`);
  }
  return {
    netOf: (ribbon: LaidRibbon, pin: number) => sets.find(conductor(ribbon, pin)),
    isBuried: (ribbon: LaidRibbon, connector: number) => buried.has(`${first.get(ribbon)} ${connector}`),
  };
}

/** Follows every conductor of a harness. Linear in its contacts. */
export function continuityOf(harness: Harness, kit: KitIndex): Continuity {
  const { ribbons } = harness;
  const { netOf, isBuried } = joinConductors(ribbons);
  const points = ribbons.flatMap((ribbon) =>
    ribbon.facts.connectors.flatMap((_, connector) =>
      isBuried(ribbon, connector) ? [] : [{ ribbon, connector }],
    ),
  );
  const byRoot = new Map<number, { readonly pin: number; line: string; readonly points: ProbePoint[] }>();
  for (const point of points) {
    const lines = linesOf(point.ribbon);
    for (let pin = 0; pin < waysOf(point.ribbon, point.connector); pin++) {
      const root = netOf(point.ribbon, pin);
      const net = byRoot.get(root) ?? { pin: pin + 1, line: '', points: [] };
      if (net.line === '') net.line = lines[pin] ?? '';
      net.points.push(point);
      byRoot.set(root, net);
    }
  }
  const found = [...byRoot.values()].sort((a, b) => a.pin - b.pin);
  const isBeside = (a: (typeof found)[number], b: (typeof found)[number]): boolean => {
    const apart = Math.abs(a.pin - b.pin);
    if (apart !== 1 && apart !== 2) return a !== b && apart === 0;
    return a.points.some(({ ribbon }) => b.points.some((other) => other.ribbon === ribbon));
  };
  const byPin = groupBy([...found.keys()], (i) => (found[i] as (typeof found)[number]).pin);
  const nets = found.map((net, i) => {
    const near = [-2, -1, 0, 1, 2].flatMap((step) => byPin.get(net.pin + step) ?? []);
    return { ...net, besides: near.filter((k) => k !== i && isBeside(net, found[k] as typeof net)) };
  });
  const supplies = [GND, ...kit.supplyLines.filter((line) => line !== GND)].map((line) => ({
    line,
    pins: [...new Set(nets.filter((net) => net.line === line).map(({ pin }) => pin))],
  }));
  return { harness, points, nets, supplies: supplies.filter(({ pins }) => pins.length > 0) };
}

/** Harnesses that are tested by one table: contacts and lines alike, joined in the same way; lengths do not matter. */
export interface AlikeHarnesses {
  /** Of the first. */
  readonly continuity: Continuity;
  readonly harnesses: readonly Harness[];
}

function shapeOf({ ribbons }: Harness): string {
  const numbers = new Map(ribbons.map((ribbon, number) => [ribbon, number]));
  return JSON.stringify(
    ribbons.map(({ facts, uses }) => [
      facts.bus.bus.id,
      facts.ways,
      facts.connectors.map(typeOf),
      uses
        .flat()
        .filter(({ conducts }) => conducts)
        .flatMap(({ ribbon, connector, on }) =>
          on.type === 'connector'
            ? [[numbers.get(ribbon), connector, numbers.get(on.ribbon), on.connector]]
            : [],
        ),
    ]),
  );
}

/** One test for all harnesses that are alike, in the order of their first ribbons in the document. */
export function continuitiesOf(take: WholeTake): readonly AlikeHarnesses[] {
  const inOrder = take.harnesses.toSorted((a, b) => (a.ribbons[0]?.index ?? 0) - (b.ribbons[0]?.index ?? 0));
  return [...groupBy(inOrder, shapeOf).values()].map((harnesses) => ({
    continuity: continuityOf(harnesses[0] as Harness, take.kit),
    harnesses,
  }));
}

/** Whether a connector is a plug: its contacts are pins. */
export const isPlug = ({ ribbon, connector }: ProbePoint): boolean =>
  typeOf(connectorOf(ribbon, connector)) === 'plug';
