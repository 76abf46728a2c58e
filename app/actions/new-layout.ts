import { emptyKit, emptyLayout } from '../../src/index.ts';
import { type Action, always } from './action.ts';
import { takeLayout } from './take-layout.ts';

/** Starts with the question which case it is. */
export const newLayout: Action = {
  id: 'new-layout',
  label: () => 'New empty case',
  enabled: always,
  run: (editor) => {
    takeLayout(editor, emptyLayout(), 'start an empty case');
    editor.session.setState({ fold: 'case' });
  },
};

export const newEmptyStock: Action = {
  id: 'new-empty-stock',
  label: () => 'New case with an empty stock',
  enabled: always,
  run: (editor) => takeLayout(editor, emptyLayout(emptyKit()), 'start a case with an empty stock'),
};
