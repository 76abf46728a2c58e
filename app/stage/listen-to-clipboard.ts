import { copySelected } from '../actions/copy.ts';
import { cutSelected } from '../actions/cut.ts';
import { pasteText } from '../actions/paste.ts';
import type { Editor } from '../editor.ts';
import type { Point } from '../tools/pointer.ts';
import { listen } from './listen.ts';

/** Answers the browser's copy, cut and paste; what is pasted goes near the pointer while that is over the drawing. */
export function listenToClipboard(editor: Editor, stage: HTMLElement): () => void {
  let over: Point | null = null;
  const endPointer = listen(stage, {
    pointermove({ clientX, clientY, pointerType }) {
      const { left, top } = stage.getBoundingClientRect();
      over = pointerType === 'mouse' ? { x: clientX - left, y: clientY - top } : null;
    },
    pointerleave() {
      over = null;
    },
  });
  let isOver = false;
  let endClipboard = (): void => {};
  void editor.platform.clipboard().then((clipboard) => {
    if (isOver) return;
    endClipboard = clipboard.listen({
      copied: () => copySelected(editor),
      cut: () => cutSelected(editor),
      pasted: (text) => void pasteText(editor, text, over),
    });
  });
  return () => {
    isOver = true;
    endPointer();
    endClipboard();
  };
}
