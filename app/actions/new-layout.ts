import { emptyKit, emptyLayout, type Layout } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import { type Action, always } from './action.ts';
import { takeLayout } from './take-layout.ts';

/** Starts with the question which case it is. */
function startWith(editor: Editor, layout: Layout, label: string): void {
  takeLayout(editor, layout, label);
  editor.session.setState({ fold: 'case' });
}

export const newLayout: Action = {
  id: 'new-layout',
  label: () => 'New empty case',
  enabled: always,
  run: (editor) => startWith(editor, emptyLayout(), 'start an empty case'),
};

export const newEmptyStock: Action = {
  id: 'new-empty-stock',
  label: () => 'New case with an empty stock',
  enabled: always,
  run: (editor) => startWith(editor, emptyLayout(emptyKit()), 'start a case with an empty stock'),
};
