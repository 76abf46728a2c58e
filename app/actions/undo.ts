import { undoLabel } from '../../src/index.ts';
import type { Action } from './action.ts';

export const undo: Action = {
  id: 'undo',
  label: ({ layouts }) => ['Undo', undoLabel(layouts.store.getState().history)].filter(Boolean).join(' '),
  icon: 'undo',
  shortcuts: [{ key: 'z', mod: true }],
  enabled: ({ layouts }) => undoLabel(layouts.store.getState().history) !== undefined,
  run: ({ layouts }) => layouts.undo(),
};
