import { type RibbonFacts, resolve } from '../layout/kit-index.ts';
import { fail, ok, type Result } from '../layout/result.ts';
import { type Berth, isSamePlace } from './berth.ts';
import type { DerivedTake } from './derived-take.ts';
import { type Gap, gapOf } from './gap.ts';
import type { LaidRibbon } from './laid-ribbon.ts';
import {
  asLaid,
  connectorsFor,
  headerSeatAt,
  type Landing,
  type Laying,
  type Placing,
  type WhyNot,
  whyNotOn,
} from './laying.ts';
import { pairUp, type Reached, seatsAround } from './neighbours.ts';

/** The seats from which ribbon leads on: the one at a connector, or those beyond the socket into which it is plugged. */
function seatsFrom(laid: LaidRibbon, { connector, on }: Placing): Reached[] {
  if (on.type === 'connector') {
    return seatsAround(on.ribbon, on.connector).map((reached) => ({
      ...reached,
      ribbons: [...reached.ribbons, laid],
    }));
  }
  const seat = headerSeatAt(laid, connector);
  return seat ? [{ seat, lengthMm: 0, ribbons: [laid] }] : [];
}

/** Ribbon from one stop to the next. */
function gapsBetween(take: DerivedTake, laid: LaidRibbon, from: Placing, to: Placing): Gap[] {
  const { connectors } = laid.facts;
  const own = Math.abs((connectors[to.connector]?.atMm ?? 0) - (connectors[from.connector]?.atMm ?? 0));
  return seatsFrom(laid, from).flatMap((a) =>
    // A ring that comes back to the seat where it begins has nothing to bridge.
    seatsFrom(laid, to).flatMap((b) =>
      b.seat === a.seat
        ? []
        : gapOf(
            pairUp(a.seat, b.seat, a.lengthMm + own + b.lengthMm, [...new Set([...a.ribbons, ...b.ribbons])]),
            take,
          ),
    ),
  );
}

interface Assigned {
  readonly placings: readonly Placing[];
  readonly gaps: readonly Gap[];
}

/** Puts connectors, taken in an order, on the stops: each on the first one that fits and reaches, else on the last that fits. */
function assign(
  take: DerivedTake,
  facts: RibbonFacts,
  stops: readonly Berth[],
  order: readonly number[],
): Assigned | undefined {
  const placings: Placing[] = [];
  const gaps: Gap[] = [];
  let left = order;
  for (const { on } of stops) {
    const fitting = connectorsFor(take, facts, on);
    const from = placings[placings.length - 1];
    const ways = left
      .filter((connector) => fitting.includes(connector))
      .map((connector) => {
        const to = { connector, on };
        return { to, between: from ? gapsBetween(take, asLaid(take, facts, [from, to]), from, to) : [] };
      });
    const way =
      ways.find(({ between }) => between.every(({ flaws }) => flaws.length === 0)) ?? ways[ways.length - 1];
    if (!way) return undefined;
    placings.push(way.to);
    gaps.push(...way.between);
    left = left.slice(left.indexOf(way.to.connector) + 1);
  }
  return { placings, gaps };
}

/** A lead is numbered from the board. */
const isBoard = ({ on }: Berth): boolean => on.type === 'header' && on.header.owner.type === 'board';

const shortBy = (gaps: readonly Gap[]): number => gaps.reduce((sum, { missingMm = 0 }) => sum + missingMm, 0);

/**
 * How a loose ribbon lies from stop to stop, each a header or a free socket of a laid ribbon: from one of its
 * ends, in the order of its connectors, with as little missing as can be.
 */
export function layLoose(take: DerivedTake, kindId: string, stops: readonly Berth[]): Result<Laying, WhyNot> {
  const facts = resolve(take.kit.ribbons, kindId);
  for (const [i, { on }] of stops.entries()) {
    const why = stops.slice(0, i).some((other) => isSamePlace(other.on, on))
      ? 'taken'
      : whyNotOn(take, facts, on);
    if (why) return fail(why);
  }
  const [start] = stops;
  const forward = facts.connectors.map((_, i) => i);
  const orders = [forward, [...forward].reverse()];
  if (start && !isBoard(start) && stops.some(isBoard)) orders.reverse();
  const ways = orders.flatMap((order) => assign(take, facts, stops, order) ?? []);
  const [first, ...others] = ways;
  if (!first || !start) return fail('no-mate');
  const best = others.reduce((least, way) => (shortBy(way.gaps) < shortBy(least.gaps) ? way : least), first);
  return ok(layingOf(take, facts, start, best.placings, best.gaps));
}

function layingOf(
  take: DerivedTake,
  facts: RibbonFacts,
  start: Berth,
  placings: readonly Placing[],
  gaps: readonly Gap[],
): Laying {
  const inOrder = [...placings].sort((a, b) => a.connector - b.connector);
  const short = gaps.some(({ flaws }) => flaws.length > 0);
  const landings = facts.connectors.map((_, connector): Landing => {
    const on = placings.find((placing) => placing.connector === connector)?.on;
    const at = on?.type === 'header' ? on.header : start;
    return { connector, xMm: at.xMm, yMm: at.yMm, ...(on && { on }), lands: on !== undefined && !short };
  });
  return { facts, seats: asLaid(take, facts, inOrder).ribbon.seats, start, landings, gaps };
}
