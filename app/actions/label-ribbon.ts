import { type Editor, shownTake } from '../editor.ts';
import { selectedAlone } from '../store/selection.ts';
import type { Action } from './action.ts';

const hasOneRibbon = (editor: Editor): boolean =>
  selectedAlone(shownTake(editor), editor.session.getState().selection) !== undefined;

export const labelRibbon: Action = {
  id: 'label-ribbon',
  label: () => 'Label the ribbon',
  shortcuts: [{ key: 'F2' }],
  enabled: hasOneRibbon,
  run: ({ session }) => session.setState({ labelling: true, fold: 'part' }),
};
