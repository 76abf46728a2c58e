import type { Editor } from '../editor.ts';
import { listen } from './listen.ts';

/** Has the loupe there as soon as a finger first touches the drawing; a mouse never needs it. */
export function loupeForFingers(editor: Editor, stage: HTMLElement): () => void {
  let end = (): void => {};
  let isOver = false;
  const stop = listen(stage, {
    pointerdown({ pointerType }) {
      if (pointerType !== 'touch') return;
      stop();
      void import('./loupe.ts').then(({ showLoupe }) => {
        if (!isOver) end = showLoupe(editor, stage);
      });
    },
  });
  return () => {
    isOver = true;
    stop();
    end();
  };
}
