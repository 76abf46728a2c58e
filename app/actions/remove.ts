import type { Editor } from '../editor.ts';
import { shownTake } from '../editor.ts';
import { chosenConnector, plugIn } from '../store/aim.ts';
import { seatEdit } from '../store/seat-edit.ts';
import { type Action, perform } from './action.ts';
import { removeParts } from './remove-part.ts';
import { boardsSelected, idsOf, modulesSelected, ribbonsSelected, rowsSelected } from './selected.ts';

/**
 * A chosen connector is lifted. Modules go before ribbons: their ribbons may go with them. Parts of the case go when
 * nothing else is selected.
 */
function removeSelected(editor: Editor): void {
  const chosen = chosenConnector(editor);
  if (chosen) {
    perform(editor, seatEdit(editor, plugIn(chosen) ?? chosen));
    return;
  }
  const take = shownTake(editor).id;
  const modules = idsOf(modulesSelected(editor));
  const ribbons = idsOf(ribbonsSelected(editor));
  if (modules.length + ribbons.length === 0) {
    const boards = boardsSelected(editor).map((part) => ({ type: 'board', part }) as const);
    const rows = rowsSelected(editor).map((part) => ({ type: 'row', part }) as const);
    removeParts(editor, [...boards, ...rows]);
    return;
  }
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
  enabled: (editor) =>
    [modulesSelected, ribbonsSelected, boardsSelected, rowsSelected].some((of) => of(editor).length > 0),
  run: removeSelected,
};
