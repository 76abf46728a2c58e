import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { tellMishap } from '../consequence.ts';
import { along, example, ribbon } from '../example.ts';
import { jointSpots } from '../spots.ts';
import { displacedWords, misplugOf, moveToLand, straysOf } from '../stray.ts';
import { connectorName, figure, mm, seatPart, seatSubjects, targetName } from '../words.ts';

export const about: About = {
  title: 'Connector that can sit beside its pins',
  why: 'An open header takes a connector one row or some pairs off: half its contacts hang free, the others touch foreign pins.',
  source: 'common practice, no source; contact grid 2.54 mm after IEC 60603-13 (title and scope only)',
};

export const displaced: Check = {
  id: 'displaced',
  level: 'damage',
  *find(take: DerivedTake) {
    for (const stray of straysOf(take)) {
      if (!stray.displaced || take.crossed.has(stray.seat.ribbon)) continue;
      const { seat } = stray;
      const off = displacedWords(stray.displaced);
      const distance = [stray.dxMm, stray.dyMm].filter((d) => Math.abs(d) > take.limits.seatToleranceMm);
      const move = moveToLand(stray, take);
      yield {
        subjects: seatSubjects(seat),
        part: seatPart(seat),
        headline: `${connectorName(seat)} lands ${off} off ${targetName(seat.on)}`,
        detail: `The header lies ${distance.map((d) => mm(Math.abs(d))).join(' and ')} from the ribbon's pitch. ${tellMishap(seat, misplugOf(stray), 'Plugged so', take.kit)}`,
        remedy: move
          ? `${move}.`
          : `Bring the header under the connector: ${figure(stray.dxMm)} mm along, ${figure(stray.dyMm)} mm up.`,
        measure: {
          dxMm: stray.dxMm,
          dyMm: stray.dyMm,
          rows: stray.displaced.rows,
          pairs: stray.displaced.pairs,
        },
        spots: jointSpots(seat),
      };
    }
  },
};

const at = (atHp: number) =>
  example({
    limits: { seatToleranceMm: 1 },
    modules: [
      ['a', 'voice', 10],
      ['b', 'voice', 5],
      ['c', 'voice', atHp],
    ],
    ribbons: [ribbon('r', 'stiff3', along('a', 'b', 'c'))],
  });

/** 0.19 HP is 0.97 mm, a seat with play; half an HP is one pin row. */
export const examples: Examples = { good: () => at(-0.19), bad: () => at(-0.5) };
