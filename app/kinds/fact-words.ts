import type { Fact, ModuleKind, OpenFact, RestingNote } from '../../src/index.ts';
import { voltageName } from '../panels/figures.ts';
import { headerField } from './header-draft.ts';
import type { ModuleField } from './module-draft.ts';

/** A fact of a kind as it is asked for. */
export function factName(fact: Fact, { headers }: Pick<ModuleKind, 'headers'>): string {
  switch (fact.is) {
    case 'depth':
      return 'Depth';
    case 'draw':
      return `Current on ${voltageName(fact.voltage)}`;
    case 'pin1': {
      const header = headers.find(({ id }) => id === fact.header);
      return `Pin 1 of ${header?.name || fact.header}`;
    }
    case 'guessed':
      return 'Guessed figures';
  }
}

/** The field of the form in which a fact is entered. */
export function fieldOf(fact: Fact): ModuleField {
  switch (fact.is) {
    case 'depth':
      return 'depth';
    case 'draw':
      return `draws ${fact.voltage}`;
    case 'pin1':
      return headerField({ key: fact.header }, 'pin1');
    case 'guessed':
      return 'known';
  }
}

const modulesIn = (count: number): string => `${count} module${count === 1 ? '' : 's'}`;

/** What becomes of a note when the fact is known. */
export function restingWords({ note, take, modules, goes, alone }: RestingNote): string {
  const then = goes ? 'would go' : `would lose ${modulesIn(modules)}`;
  const also = alone ? '' : ', with the other unknown facts';
  return `“${note.headline}” in ${take} ${then}${also}`;
}

/** All of it in few words, for a list. */
export function restsWords({ notes }: OpenFact): string {
  const clears = notes.filter(({ goes }) => goes).length;
  const modules = Math.max(...notes.map((note) => note.modules));
  const what =
    clears > 0
      ? `clears ${clears} note${clears === 1 ? '' : 's'}`
      : `eases ${notes.length} note${notes.length === 1 ? '' : 's'}`;
  const also = notes.some(({ alone }) => !alone) ? ', with the others' : '';
  return `${modulesIn(modules)}; ${what}${also}`;
}
