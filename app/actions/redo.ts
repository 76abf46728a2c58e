import { redoLabel } from '../../src/index.ts';
import type { Action } from './action.ts';

export const redo: Action = {
  id: 'redo',
  label: ({ layouts }) => ['Redo', redoLabel(layouts.store.getState().history)].filter(Boolean).join(' '),
  icon: 'redo',
  shortcuts: [
    { key: 'z', mod: true, shift: true },
    { key: 'y', mod: true },
  ],
  enabled: ({ layouts }) => redoLabel(layouts.store.getState().history) !== undefined,
  run: ({ layouts }) => layouts.redo(),
};
