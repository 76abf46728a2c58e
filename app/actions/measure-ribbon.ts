import type { Action } from './action.ts';
import { modulesSelected } from './selected.ts';

/** Opens the making of a ribbon for the headers of the selected modules. */
export const measureRibbon: Action = {
  id: 'measure-ribbon',
  label: () => 'Make a ribbon to measure',
  shortcuts: [{ key: 'u' }],
  enabled: (editor) => modulesSelected(editor).length > 1,
  run: async (editor) => (await import('../stock/begin-measuring.ts')).beginMeasuring(editor),
};
