import type { RibbonFacts } from '../layout/kit-index.ts';
import { fail, ok, type Result } from '../layout/result.ts';
import type { Berth } from './berth.ts';
import type { DerivedTake } from './derived-take.ts';
import type { Gap } from './gap.ts';
import { layLoose } from './lay-loose.ts';
import type { Laying } from './laying.ts';
import { isInStock } from './stock.ts';

/** A loose ribbon from one place to another. */
export interface Lead {
  readonly laying: Laying;
  /** Whether one is left of what is owned. */
  readonly inStock: boolean;
}

/** Why there is no loose ribbon from one place to another. */
export type NoLead =
  /** No kind has the right ends. */
  | { readonly why: 'no-kind' }
  /** None is long enough. */
  | { readonly why: 'too-short'; readonly neededMm: number; readonly longestMm: number };

export const lengthMmOf = ({ connectors }: RibbonFacts): number =>
  connectors[connectors.length - 1]?.atMm ?? 0;

/** The piece of ribbon that is worst off for its way. */
export const tautest = (gaps: readonly Gap[]): Gap | undefined =>
  gaps.reduce<Gap | undefined>((worst, gap) => {
    const spare = ({ pair, neededMm }: Gap): number => pair.lengthMm - neededMm;
    return worst && spare(worst) <= spare(gap) ? worst : gap;
  }, undefined);

const isEnough = ({ gaps }: Laying): boolean => gaps.every(({ flaws }) => flaws.length === 0);

/** Pins of headers that it leaves without a contact: an end that has too few is not the right one. */
const freePins = ({ landings, facts }: Laying): number =>
  landings.reduce((sum, { connector, on }) => {
    const pins = on?.type === 'header' ? on.header.bus.pins : 0;
    return sum + Math.max(0, pins - (on ? (facts.ways[connector] ?? 0) : 0));
  }, 0);

const before = (a: Lead, b: Lead): boolean => {
  const free = freePins(a.laying) - freePins(b.laying);
  if (free !== 0) return free < 0;
  if (a.inStock !== b.inStock) return a.inStock;
  return lengthMmOf(a.laying.facts) < lengthMmOf(b.laying.facts);
};

/**
 * The loose ribbon to take from one place to another: the shortest that reaches and has the right ends, which
 * leave the fewest pins free; one that is owned and not in use before any other.
 */
export function shortestLead(take: DerivedTake, from: Berth, to: Berth): Result<Lead, NoLead> {
  const fitting = [...take.kit.ribbons.values()]
    .filter(({ flat }) => !flat)
    .flatMap((facts): Lead[] => {
      const laid = layLoose(take, facts.kind.id, [from, to]);
      return laid.ok ? [{ laying: laid.value, inStock: isInStock(take.take, facts.kind) }] : [];
    });
  const reaching = fitting.filter(({ laying }) => isEnough(laying));
  const [first, ...others] = reaching;
  if (first) return ok(others.reduce((best, lead) => (before(lead, best) ? lead : best), first));
  const longest = fitting.reduce<Lead | undefined>(
    (best, lead) => (best && lengthMmOf(best.laying.facts) >= lengthMmOf(lead.laying.facts) ? best : lead),
    undefined,
  );
  const taut = longest && tautest(longest.laying.gaps);
  if (!longest || !taut) return fail({ why: 'no-kind' });
  return fail({ why: 'too-short', neededMm: taut.neededMm, longestMm: lengthMmOf(longest.laying.facts) });
}
