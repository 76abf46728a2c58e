import { type Mend, type Note, searchMends, type WholeTake } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import { inSlices } from './in-slices.ts';

type Found = (mends: readonly Mend[]) => void;

const known = new WeakMap<WholeTake, Map<string, readonly Mend[]>>();

const knownOf = (derived: WholeTake): Map<string, readonly Mend[]> => {
  const before = known.get(derived);
  if (before) return before;
  const empty = new Map<string, readonly Mend[]>();
  known.set(derived, empty);
  return empty;
};

/** What mends a note, as far as it is known already. */
export const mendsKnown = (derived: WholeTake, { key }: Note): readonly Mend[] | undefined =>
  knownOf(derived).get(key);

/** Looks for what mends a note, a slice at a time, one note after the other. Answers with how to call it off. */
export const findMends = (editor: Editor, derived: WholeTake, note: Note, found: Found): (() => void) =>
  inSlices(editor, searchMends(derived, note), (mends) => {
    knownOf(derived).set(note.key, mends);
    found(mends);
  });
