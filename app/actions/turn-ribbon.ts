import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { ribbonIn } from '../store/aim.ts';
import { type Action, perform } from './action.ts';

/** The flat ribbon that alone is selected; a loose one has no way round. */
const flatRibbon = (editor: Editor) => {
  const ribbon = ribbonIn(shownAnalysis(editor).derived, editor.session.getState().selection);
  return ribbon?.facts.flat ? ribbon : undefined;
};

/** A ribbon that is alike from both ends stays on its headers; any other is turned where it sits. */
function turnSelected(editor: Editor): void {
  const ribbon = flatRibbon(editor);
  if (!ribbon) return;
  const seats = ribbon.facts.symmetric ? 'mirror' : 'keep';
  perform(editor, { type: 'turn-ribbon', take: shownTake(editor).id, ribbon: ribbon.id, seats });
}

export const turnRibbon: Action = {
  id: 'turn-ribbon',
  label: () => 'Turn ribbon by 180°',
  icon: 'turn',
  shortcuts: [{ key: 'r' }],
  enabled: (editor) => flatRibbon(editor) !== undefined,
  run: turnSelected,
};
