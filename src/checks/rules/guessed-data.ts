import type { ModuleKind } from '../../layout/layout.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, kind } from '../example.ts';
import { count, moduleSpot, moduleSubject, namesOf } from '../words.ts';

export const about: About = {
  title: 'Guessed figures',
  why: 'The answers are only as good as the figures they rest on.',
  source: 'common practice, no source',
};

export const guessedData: Check = {
  id: 'guessed-data',
  level: 'reminder',
  whole: true,
  *find({ places }) {
    const guessed = places.modules.filter(({ facts }) => facts.kind.known === 'guessed');
    if (guessed.length === 0) return;
    yield {
      subjects: guessed.map(moduleSubject),
      headline: `${count(guessed.length, 'module')} with guessed figures`,
      detail: `${namesOf(guessed)}: neither measured nor published.`,
      remedy: 'Measure them before you rely on the answers.',
      measure: { modules: guessed.length },
      spots: guessed.map(moduleSpot),
    };
  },
};

const from = (known: NonNullable<ModuleKind['known']>) =>
  example({ kinds: [kind('some', { known })], modules: [['a', 'some', 0]] });

export const examples: Examples = { good: () => from('published'), bad: () => from('guessed') };
