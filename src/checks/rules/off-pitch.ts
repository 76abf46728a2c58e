import { exceeds } from '../../geometry/exceeds.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, ribbon } from '../example.ts';
import { jointSpots } from '../spots.ts';
import { moveToLand, straysOf } from '../stray.ts';
import { connectorName, mm, seatPart, seatSubjects, targetName } from '../words.ts';

export const about: About = {
  title: 'Header off the ribbon’s pitch',
  why: 'A ribbon that does not bend has its connectors at fixed places; a header between them stays empty.',
  source: 'common practice, no source',
};

export const offPitch: Check = {
  id: 'off-pitch',
  level: 'fault',
  *find(take: DerivedTake) {
    for (const stray of straysOf(take)) {
      const { seat, dxMm, otherRow } = stray;
      if (stray.displaced || otherRow || take.crossed.has(seat.ribbon)) continue;
      if (!exceeds(Math.abs(dxMm), take.limits.seatToleranceMm)) continue;
      const move = moveToLand(stray, take);
      yield {
        subjects: seatSubjects(seat),
        part: seatPart(seat),
        headline: `${connectorName(seat)} misses ${targetName(seat.on)} by ${mm(Math.abs(dxMm))}`,
        detail: `The header lies ${mm(Math.abs(dxMm))} too far ${dxMm > 0 ? 'right' : 'left'} seen from the front, ${dxMm > 0 ? 'left' : 'right'} from the rear.`,
        remedy: move ? `${move}.` : 'Move the module, or take a ribbon of another pitch.',
        measure: { dxMm },
        spots: jointSpots(seat),
      };
    }
  },
};

const at = (atHp: number) =>
  example({
    modules: [
      ['a', 'voice', 20],
      ['b', 'voice', 15],
      ['c', 'voice', atHp],
    ],
    ribbons: [ribbon('r', 'stiff3', along('a', 'b', 'c'))],
  });

/** 0.19 HP is 0.97 mm, a seat with play; 9 HP is 5.08 mm, two pin rows, and no connector reaches it. */
export const examples: Examples = { good: () => at(10.19), bad: () => at(9) };
