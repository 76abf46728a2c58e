import type { PartPower } from '../../electrical/power.ts';
import { exceeds } from '../../geometry/exceeds.ts';
import type { LaidRibbon } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, kind, onBoard, onModule, powerHeader, ribbon } from '../example.ts';
import { beyond, inEachPart } from '../load-words.ts';
import { ribbonSpots } from '../spots.ts';
import { connectorName, lineName, ribbonSubject } from '../words.ts';

/** Where a ribbon carries most in one contact or conductor. */
interface Worst {
  readonly ribbon: LaidRibbon;
  readonly ma: number;
  readonly line: number;
  readonly place: string;
}

/** The first of the largest for each ribbon. */
function worstPlaces(power: PartPower): Iterable<Worst> {
  const worst = new Map<LaidRibbon, Worst>();
  const look = (
    ribbon: LaidRibbon,
    { branches, shares }: { readonly branches: readonly number[]; readonly shares: readonly number[] },
    place: () => string,
  ): void => {
    for (let line = 0; line < branches.length; line++) {
      if ((shares[line] as number) === 0) continue;
      const ma = Math.abs(power.maIn(branches[line] as number)) / (shares[line] as number);
      if (ma > power.part.limits.contactMa && ma > (worst.get(ribbon)?.ma ?? 0))
        worst.set(ribbon, { ribbon, ma, line, place: place() });
    }
  };
  for (const seat of power.network.seats)
    look(seat.joint.ribbon, seat, () => `each contact of ${connectorName(seat.joint)},`);
  for (const { ribbon, spans } of power.network.ribbons) {
    for (const span of spans)
      look(
        ribbon,
        span,
        () => `each conductor of ${ribbon.name} between connectors ${span.from + 1} and ${span.to + 1}`,
      );
  }
  return worst.values();
}

export const about: About = {
  title: 'Too much current in one contact',
  why: 'A contact of a ribbon connector is good for about 1 A; beyond that it heats, and its spring goes soft.',
  source: 'common practice, no source',
};

export const contactOverload: Check = {
  id: 'contact-overload',
  level: 'damage',
  whole: true,
  find: inEachPart(function* (power) {
    const { kit, limits } = power.part;
    for (const { ribbon, ma, line, place } of worstPlaces(power)) {
      if (!exceeds(ma, limits.contactMa)) continue;
      yield {
        subjects: [ribbonSubject(ribbon)],
        headline: `${ribbon.name} carries too much on ${lineName(kit.supplyLines[line] as string)}`,
        detail: `Estimated, ${place} carries ${beyond(ma, limits.contactMa)} allowed.`,
        remedy: 'Feed part of its modules by a lead of their own, and not through this ribbon.',
        measure: { ma, allowed: limits.contactMa },
        spots: ribbonSpots(ribbon),
      };
    }
  }),
};

/** Two contacts bring +12 V. */
const drawing = (ma: number) =>
  example({
    kinds: [kind('strong', { draws: { '+12': ma }, headers: [powerHeader()] })],
    modules: [['a', 'strong', 40]],
    ribbons: [ribbon('r', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });

export const examples: Examples = { good: () => drawing(2000), bad: () => drawing(2000.1) };
