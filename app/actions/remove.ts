import type { Editor } from '../editor.ts';
import { shownTake } from '../editor.ts';
import { chosenConnector, plugIn } from '../store/aim.ts';
import { seatEdit } from '../store/seat-edit.ts';
import { type Action, perform } from './action.ts';
import { idsOf, modulesSelected, ribbonsSelected } from './selected.ts';

/** A chosen connector is lifted. Modules go before ribbons: their ribbons may go with them. */
function removeSelected(editor: Editor): void {
  const chosen = chosenConnector(editor);
  if (chosen) {
    perform(editor, seatEdit(editor, plugIn(chosen) ?? chosen));
    return;
  }
  const take = shownTake(editor).id;
  const modules = idsOf(modulesSelected(editor));
  const ribbons = idsOf(ribbonsSelected(editor));
  perform(
    editor,
    modules.length > 0
      ? { type: 'remove-modules', take, modules }
      : { type: 'remove-ribbons', take, ribbons },
  );
}

export const remove: Action = {
  id: 'remove',
  label: (editor) => (chosenConnector(editor) ? 'Lift the connector' : 'Remove'),
  icon: 'remove',
  shortcuts: [{ key: 'Delete' }, { key: 'Backspace' }],
  keysOnStageOnly: true,
  enabled: (editor) => modulesSelected(editor).length + ribbonsSelected(editor).length > 0,
  run: removeSelected,
};
