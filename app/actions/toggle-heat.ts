import type { Editor } from '../editor.ts';
import type { Action } from './action.ts';

const isOn = ({ session }: Editor): boolean => session.getState().heat !== null;

/** Lays the losses of the first voltage over the drawing, or takes the heat map off it. */
export const toggleHeat: Action = {
  id: 'toggle-heat',
  label: (editor) => (isOn(editor) ? 'Hide the heat map' : 'Show the heat map'),
  shortcuts: [{ key: 'v', shift: true }],
  enabled: ({ layouts }) => layouts.layout().kit.voltages.length > 0,
  run: async (editor) => {
    const [first] = editor.layouts.layout().kit.voltages;
    const { showHeat } = await import('../power/show-heat.ts');
    showHeat(editor, isOn(editor) ? null : (first?.id ?? null));
  },
};
