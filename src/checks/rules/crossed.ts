import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, ribbon, ribbonKind } from '../example.ts';
import { ribbonSpots } from '../spots.ts';
import { ribbonSubject } from '../words.ts';

export const about: About = {
  title: 'Seats out of the order of the connectors',
  why: 'Connectors are pressed onto a flat ribbon in one order; it cannot be seated in another without a fold.',
  source: 'common practice, no source',
};

export const crossed: Check = {
  id: 'crossed',
  level: 'fault',
  *find(take: DerivedTake) {
    for (const laid of take.crossed) {
      const way = laid.ribbon.stripe === 'up' ? 'right to left' : 'left to right';
      yield {
        subjects: [ribbonSubject(laid)],
        headline: `${laid.name} would have to cross itself`,
        detail: `With its stripe ${laid.ribbon.stripe ?? 'down'} its connectors run ${way} seen from the rear; its seats do not.`,
        remedy: 'Seat the connectors in their order, or turn the ribbon.',
        spots: ribbonSpots(laid),
      };
    }
  },
};

const order = (...modules: string[]) =>
  example({
    ribbonKinds: [ribbonKind('uneven', [0, 25.4, 76.2])],
    modules: [
      ['a', 'voice', 15],
      ['b', 'voice', 10],
      ['c', 'voice', 0],
    ],
    ribbons: [ribbon('r', 'uneven', along(...modules))],
  });

export const examples: Examples = { good: () => order('a', 'b', 'c'), bad: () => order('c', 'b', 'a') };
