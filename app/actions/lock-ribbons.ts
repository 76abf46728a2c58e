import { type Editor, shownTake } from '../editor.ts';
import { type Action, perform } from './action.ts';
import { idsOf, ribbonsSelected } from './selected.ts';

const allLocked = (editor: Editor): boolean => ribbonsSelected(editor).every(({ locked }) => locked);

const hasRibbons = (editor: Editor): boolean => ribbonsSelected(editor).length > 0;

export const lockRibbons: Action = {
  id: 'lock-ribbons',
  label: (editor) => (hasRibbons(editor) && allLocked(editor) ? 'Unlock' : 'Lock'),
  icon: 'lock',
  shortcuts: [{ key: 'l' }],
  enabled: hasRibbons,
  run: (editor) =>
    perform(editor, {
      type: 'lock-ribbon',
      take: shownTake(editor).id,
      ribbons: idsOf(ribbonsSelected(editor)),
      locked: !allLocked(editor),
    }),
};
