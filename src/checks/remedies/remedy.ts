import type { Edit } from '../../edit/edit.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend, Note } from '../check.ts';

/**
 * What might mend a note, the smallest disturbance first. It need not be right: each is tried before it is offered.
 */
export type Remedy = (note: Note, take: WholeTake) => Iterable<Mend>;

const smallFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** One tap and one undo, of however many edits. */
export function mend(label: string, edits: readonly Edit[], why?: string): Mend {
  const [only, ...more] = edits;
  const edit: Edit = only && more.length === 0 ? only : { type: 'several', label: smallFirst(label), edits };
  return { label, edit, ...(why && { why }) };
}

export const editsOf = ({ edit }: Mend): readonly Edit[] => (edit.type === 'several' ? edit.edits : [edit]);
