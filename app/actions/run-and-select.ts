import type { Edit, Take } from '../../src/index.ts';
import { type SelectionKey, selectionKey } from '../canvas/model.ts';
import { type Editor, shownTake } from '../editor.ts';
import { perform } from './action.ts';

const keysOf = ({ modules, ribbons }: Take): SelectionKey[] => [
  ...modules.map(({ id }) => selectionKey('module', id)),
  ...ribbons.map(({ id }) => selectionKey('ribbon', id)),
];

/** Carries out an edit and selects what it added to the take shown; what the change brought is said after its name. */
export function runAndSelect(editor: Editor, edit: Edit, name: string): void {
  const { session } = editor;
  const had = new Set(keysOf(shownTake(editor)));
  const { spoken: before } = session.getState();
  perform(editor, edit);
  const added = keysOf(shownTake(editor)).filter((key) => !had.has(key));
  if (added.length === 0) return;
  const { spoken: after } = session.getState();
  session.setState({
    selection: new Set(added),
    focus: null,
    spoken: after === before ? name : `${name} ${after}`,
  });
}
