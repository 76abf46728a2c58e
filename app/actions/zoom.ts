import { zoomAbout } from '../canvas/viewport.ts';
import type { Editor } from '../editor.ts';
import { insetsOf, lookAt, viewportNow } from '../store/view.ts';
import { type Action, always } from './action.ts';

const STEP = 1.25;

/** About the middle of what no panel covers. */
function zoom(editor: Editor, factor: number): void {
  const { stage } = editor.session.getState();
  const { left, right, top, bottom } = insetsOf(stage);
  const x = (left + stage.width - right) / 2;
  const y = (top + stage.height - bottom) / 2;
  lookAt(editor, zoomAbout(viewportNow(editor), factor, x, y));
}

export const zoomIn: Action = {
  id: 'zoom-in',
  label: () => 'Closer',
  icon: 'plus',
  shortcuts: [{ key: '+' }, { key: '=' }],
  whileDragging: true,
  enabled: always,
  run: (editor) => zoom(editor, STEP),
};

export const zoomOut: Action = {
  id: 'zoom-out',
  label: () => 'Further away',
  icon: 'minus',
  shortcuts: [{ key: '-' }],
  whileDragging: true,
  enabled: always,
  run: (editor) => zoom(editor, 1 / STEP),
};
