import { type Editor, shownTake } from '../editor.ts';
import { type Action, perform } from './action.ts';
import { idsOf, ribbonsSelected } from './selected.ts';

/** There is something to lie over or under. */
const hasOthers = (editor: Editor): boolean => {
  const { length } = ribbonsSelected(editor);
  return length > 0 && length < shownTake(editor).ribbons.length;
};

function order(editor: Editor, to: 'front' | 'back'): void {
  perform(editor, {
    type: 'order-ribbons',
    take: shownTake(editor).id,
    ribbons: idsOf(ribbonsSelected(editor)),
    to,
  });
  editor.session.setState({
    spoken: to === 'front' ? 'Drawn over all other ribbons.' : 'Drawn under all other ribbons.',
  });
}

export const bringToFront: Action = {
  id: 'bring-to-front',
  label: () => 'Bring to front',
  icon: 'front',
  shortcuts: [{ key: 'o' }],
  enabled: hasOthers,
  run: (editor) => order(editor, 'front'),
};

export const sendToBack: Action = {
  id: 'send-to-back',
  label: () => 'Send to back',
  icon: 'back',
  shortcuts: [{ key: 'o', shift: true }],
  enabled: hasOthers,
  run: (editor) => order(editor, 'back'),
};
