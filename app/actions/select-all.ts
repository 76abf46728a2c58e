import { shownTake } from '../editor.ts';
import { selectionOf } from '../store/selection.ts';
import { type Action, always } from './action.ts';
import { idsOf } from './selected.ts';

export const selectAll: Action = {
  id: 'select-all',
  label: () => 'Select all modules',
  shortcuts: [{ key: 'a', mod: true }],
  enabled: always,
  run: (editor) =>
    editor.session.setState({
      selection: selectionOf('module', idsOf(shownTake(editor).modules)),
      focus: null,
    }),
};
