import { joinedWith } from '../../src/index.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { selectionOf } from '../store/selection.ts';
import type { Action } from './action.ts';
import { sizeInWords } from './copy.ts';
import { idsOf, modulesSelected, ribbonsSelected } from './selected.ts';

export function selectWhatIsJoined(editor: Editor): void {
  const joined = joinedWith(shownAnalysis(editor).derived, {
    modules: new Set(idsOf(modulesSelected(editor))),
    ribbons: new Set(idsOf(ribbonsSelected(editor))),
  });
  const words = sizeInWords({
    modules: { length: joined.modules.size },
    ribbons: { length: joined.ribbons.size },
  });
  editor.session.setState({
    selection: new Set([...selectionOf('module', joined.modules), ...selectionOf('ribbon', joined.ribbons)]),
    focus: null,
    spoken: `${words} selected.`,
  });
}

export const selectJoined: Action = {
  id: 'select-joined',
  label: () => 'Select what is joined',
  icon: 'joined',
  shortcuts: [{ key: 'j' }],
  enabled: (editor) => modulesSelected(editor).length + ribbonsSelected(editor).length > 0,
  run: selectWhatIsJoined,
};
