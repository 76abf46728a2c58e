import type { Viewport } from '../canvas/model.ts';
import type { Editor } from '../editor.ts';
import { insetsOf, lookAt, sheetNow } from '../store/view.ts';
import { type Action, always } from './action.ts';

/** Turns about the middle of the free stage: what stood there stands there, seen from the other side. */
function turned({ scale, x, y }: Viewport, sheetWidth: number, middle: number): Viewport {
  return { scale, y, x: 2 * middle - x - sheetWidth };
}

function turnRound(editor: Editor): void {
  const { side, viewport, stage } = editor.session.getState();
  const { left, right } = insetsOf(stage);
  const { width } = sheetNow(editor);
  editor.session.setState({ side: side === 'rear' ? 'front' : 'rear' });
  if (viewport) lookAt(editor, turned(viewport, width, (left + stage.width - right) / 2));
}

export const turn: Action = {
  id: 'turn',
  label: ({ session }) => (session.getState().side === 'rear' ? 'Turn to the front' : 'Turn to the rear'),
  icon: 'turn',
  shortcuts: [{ key: 't' }],
  enabled: always,
  run: turnRound,
};
