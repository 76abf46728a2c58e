import type { Editor } from '../editor.ts';

export type Arrow = 'left' | 'right' | 'up' | 'down';

/** Steps along the rails, as seen from the front: left and right are the screen's, which shows the rear mirrored. */
export function alongOf(editor: Editor, arrow: Arrow): number {
  const across = arrow === 'left' ? -1 : arrow === 'right' ? 1 : 0;
  return editor.session.getState().side === 'rear' ? 0 - across : across;
}

export const rowsOf = (arrow: Arrow): number => (arrow === 'up' ? -1 : arrow === 'down' ? 1 : 0);
