import type { ModuleKind } from '../../layout/layout.ts';
import { remember } from '../../layout/remember.ts';
import type { About, Check, Examples, Found } from '../check.ts';
import { eachPart } from '../each-part.ts';
import { example, kind } from '../example.ts';
import { count, inDocumentOrder, moduleSubject, namesOf } from '../words.ts';

const guessedOf = eachPart(({ places }) =>
  places.modules
    .filter(({ facts }) => facts.kind.known === 'guessed')
    .map(({ id, index, name }) => ({ id, index, name })),
);

const tell = remember((guessed: ReturnType<typeof guessedOf>): Found => {
  const modules = inDocumentOrder(guessed);
  return {
    subjects: modules.map(moduleSubject),
    headline: `${count(modules.length, 'module')} with guessed figures`,
    detail: `${namesOf(modules)}: neither measured nor published.`,
    remedy: 'Measure them before you rely on the answers.',
    measure: { modules: modules.length },
  };
});

export const about: About = {
  title: 'Guessed figures',
  why: 'The answers are only as good as the figures they rest on.',
  source: 'common practice, no source',
};

export const guessedData: Check = {
  id: 'guessed-data',
  level: 'reminder',
  whole: true,
  *find(take) {
    const guessed = guessedOf(take);
    if (guessed.length > 0) yield tell(guessed);
  },
};

const from = (known: NonNullable<ModuleKind['known']>) =>
  example({ kinds: [kind('some', { known })], modules: [['a', 'some', 0]] });

export const examples: Examples = { good: () => from('published'), bad: () => from('guessed') };
