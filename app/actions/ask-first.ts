import { type Edit, lossOf, lossWords } from '../../src/index.ts';
import { type Editor, shownTake } from '../editor.ts';
import { perform } from './action.ts';

/** Carries out an edit of the shown take; where it would lose more than it says, the user is asked before. */
export function askFirst(editor: Editor, edit: Edit, question: string): void {
  const lines = lossWords(lossOf(editor.layouts.layout(), shownTake(editor).id, edit));
  if (lines.length === 0) perform(editor, edit);
  else editor.session.setState({ asked: { edit, question, lines } });
}
