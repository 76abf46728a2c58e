import type { PlacedModule } from '../../geometry/place.ts';
import { hpToMm, mmToHp } from '../../geometry/rack.ts';
import type { About, Check, Examples, Found } from '../check.ts';
import { eachRow } from '../each-part.ts';
import { example } from '../example.ts';
import { hp, moduleSubject } from '../words.ts';

/** Less is float noise and not space shared, HP. */
const LEAST_HP = 0.001;

function* overlapsIn(modules: readonly PlacedModule[]): Generator<Found> {
  const byLeft = [...modules].sort((a, b) => a.leftMm - b.leftMm || a.index - b.index);
  for (const [i, a] of byLeft.entries()) {
    for (let j = i + 1; j < byLeft.length; j++) {
      const b = byLeft[j] as PlacedModule;
      if (b.leftMm >= a.rightMm) break;
      const shared = mmToHp(Math.min(a.rightMm, b.rightMm) - b.leftMm);
      if (shared <= LEAST_HP) continue;
      yield {
        subjects: [moduleSubject(a), moduleSubject(b)],
        headline: `${a.name} and ${b.name} share ${hp(shared)}`,
        detail: `${b.name} starts at ${hp(b.module.atHp)}, ${a.name} ends at ${hp(a.module.atHp + a.facts.kind.widthHp)}.`,
        remedy: 'Move one of the two.',
        measure: { sharedHp: shared },
        spots: [{ row: a.row.row.id, xMm: b.leftMm + hpToMm(shared) / 2, yMm: 64 }],
      };
    }
  }
}

const overlaps = eachRow(overlapsIn);

export const about: About = {
  title: 'Two modules in one place',
  why: 'Panels are screwed side by side; two cannot share the same piece of rail.',
  source: 'IEC 60297-3-101, widths in HP of 5.08 mm (as quoted in secondary texts)',
};

export const overlap: Check = {
  id: 'overlap',
  level: 'fault',
  whole: true,
  find: (take) => overlaps(take.places.modules, take),
};

export const examples: Examples = {
  good: () =>
    example({
      modules: [
        ['a', 'voice', 0],
        ['b', 'voice', 5],
      ],
    }),
  bad: () =>
    example({
      modules: [
        ['a', 'voice', 0],
        ['b', 'voice', 4.5],
      ],
    }),
};
