import { type Editor, shownTake } from '../editor.ts';
import type { Action } from './action.ts';
import { showTake } from './show-take.ts';

function stepTake(editor: Editor, step: number): void {
  const { takes } = editor.layouts.layout();
  const at = takes.indexOf(shownTake(editor));
  const next = takes[(at + step + takes.length) % takes.length];
  if (next) showTake(editor, next.id);
}

const hasSeveral = ({ layouts }: Editor): boolean => layouts.layout().takes.length > 1;

export const nextTake: Action = {
  id: 'next-take',
  label: () => 'Next take',
  shortcuts: [{ key: ']' }],
  enabled: hasSeveral,
  run: (editor) => stepTake(editor, 1),
};

export const previousTake: Action = {
  id: 'previous-take',
  label: () => 'Previous take',
  shortcuts: [{ key: '[' }],
  enabled: hasSeveral,
  run: (editor) => stepTake(editor, -1),
};
