import type { Board, Edit, Row, Supply } from '../../src/index.ts';
import { type Editor, shownTake } from '../editor.ts';
import { askFirst } from './ask-first.ts';

/** A part of the case, with what it is called. */
type Part =
  | { readonly type: 'row'; readonly part: Row }
  | { readonly type: 'supply'; readonly part: Supply }
  | { readonly type: 'board'; readonly part: Board };

function nameOf(editor: Editor, { type, part }: Part): string {
  return type === 'row' ? (part.name ?? `Row ${shownTake(editor).rows.indexOf(part) + 1}`) : part.name;
}

function editFor(take: string, { type, part: { id } }: Part): Edit {
  if (type === 'row') return { type: 'remove-row', take, row: id };
  return type === 'supply'
    ? { type: 'remove-supply', take, supply: id }
    : { type: 'remove-board', take, board: id };
}

/** Takes parts out of the case as one step; says before what would go with them. */
export function removeParts(editor: Editor, parts: readonly Part[]): void {
  const take = shownTake(editor).id;
  const edits = parts.map((part) => editFor(take, part));
  const names = parts.map((part) => nameOf(editor, part)).join(', ');
  const [only, ...more] = edits;
  if (!only) return;
  const edit: Edit = more.length > 0 ? { type: 'several', label: `remove ${names}`, edits } : only;
  askFirst(editor, edit, `Remove ${names}?`);
}
