import { ribbonWidthMm } from '../../geometry/connector.ts';
import { exceeds } from '../../geometry/exceeds.ts';
import type { PlacedRow } from '../../geometry/place.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { HeaderJoint } from '../../wiring/harness.ts';
import type { LaidRibbon } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples, Found } from '../check.ts';
import { eachPart, eachRow } from '../each-part.ts';
import { along, example, kind, ribbon, ribbonKind, shoreHeader } from '../example.ts';
import { mm, ribbonSubject } from '../words.ts';

/** What a flat ribbon covers of a row, mm. */
interface Span {
  readonly ribbon: LaidRibbon;
  readonly row: PlacedRow;
  fromMm: number;
  toMm: number;
  lowMm: number;
  highMm: number;
}

/** One span in each row where the ribbon has seats. */
function spansOf(ribbon: LaidRibbon, seats: readonly HeaderJoint[]): Span[] {
  const half = ribbonWidthMm(ribbon.facts.conductors) / 2;
  const spans: Span[] = [];
  for (const { on } of seats) {
    const { row, xMm, yMm } = on.header;
    const known = spans.find((span) => span.row === row);
    if (!known) {
      spans.push({ ribbon, row, fromMm: xMm, toMm: xMm, lowMm: yMm - half, highMm: yMm + half });
      continue;
    }
    known.fromMm = Math.min(known.fromMm, xMm);
    known.toMm = Math.max(known.toMm, xMm);
    known.lowMm = Math.min(known.lowMm, yMm - half);
    known.highMm = Math.max(known.highMm, yMm + half);
  }
  return spans;
}

const allSpans = eachPart(({ wiring, seatsAlong }) =>
  wiring.ribbons
    .filter(({ facts }) => facts.flat)
    .flatMap((laid) => spansOf(laid, seatsAlong.get(laid) ?? [])),
);

const areJoined = (a: LaidRibbon, b: LaidRibbon): boolean =>
  a.uses.some((joints) =>
    joints.some(
      (joint) =>
        joint.on.type === 'connector' && joint.conducts && (joint.ribbon === b || joint.on.ribbon === b),
    ),
  );

function* clashesIn(spans: readonly Span[], { limits }: DerivedTake): Generator<Found> {
  const byStart = [...spans].sort((a, b) => a.fromMm - b.fromMm || a.ribbon.index - b.ribbon.index);
  for (const [i, a] of byStart.entries()) {
    for (let j = i + 1; j < byStart.length; j++) {
      const b = byStart[j] as Span;
      if (b.fromMm >= a.toMm) break;
      const sharedMm = Math.min(a.toMm, b.toMm) - b.fromMm;
      const bandMm = Math.min(a.highMm, b.highMm) - Math.max(a.lowMm, b.lowMm);
      if (!exceeds(sharedMm, limits.connectorBodyMm) || !exceeds(bandMm, 0) || areJoined(a.ribbon, b.ribbon))
        continue;
      yield {
        subjects: [ribbonSubject(a.ribbon), ribbonSubject(b.ribbon)],
        part: a.row.row.id,
        headline: `${a.ribbon.name} and ${b.ribbon.name} would lie in one place`,
        detail: `Along ${mm(sharedMm)} of the row both need the same ${mm(bandMm)} of height.`,
        remedy: 'Join them plug in socket, or seat one elsewhere.',
        measure: { sharedMm, bandMm },
        spots: [{ row: a.row.row.id, xMm: b.fromMm + sharedMm / 2, yMm: (b.lowMm + b.highMm) / 2 }],
      };
    }
  }
}

const clashes = eachRow(clashesIn);

export const about: About = {
  title: 'Two flat ribbons in one place',
  why: 'Pressed onto one another, the lower connector cannot be seated and neither can be checked.',
  source: 'common practice, no source; conductor pitch 1.27 mm',
};

export const ribbonsClash: Check = {
  id: 'ribbons-clash',
  level: 'fault',
  whole: true,
  find: (take) => clashes(allSpans(take), take),
};

/** Two pairs of headers in one row, one inside the other, the second so much higher. */
const above = (yMm: number) =>
  example({
    kinds: [kind('high', { headers: [shoreHeader({ yMm })] })],
    ribbonKinds: [ribbonKind('long', [0, 76.2])],
    modules: [
      ['a', 'voice', 15],
      ['b', 'high', 10],
      ['c', 'high', 5],
      ['d', 'voice', 0],
    ],
    ribbons: [ribbon('r', 'long', along('a', 'd')), ribbon('s', 'stiff', along('b', 'c'))],
  });

/** Ten conductors are 12.7 mm wide. */
export const examples: Examples = { good: () => above(50.7), bad: () => above(50.6) };
