import { looksLikeLink, openLinkText } from '../actions/open-link.ts';
import type { Editor } from '../editor.ts';

/** Offers the layout of a link that the page was opened with, or that was put into its address since. */
export function listenToLinks(editor: Editor): () => void {
  let isOver = false;
  let end = (): void => {};
  void editor.platform.address().then((address) => {
    if (isOver) return;
    const look = (): void => {
      const text = address.whole();
      if (looksLikeLink(text)) void openLinkText(editor, text);
    };
    look();
    end = address.listen(look);
  });
  return () => {
    isOver = true;
    end();
  };
}
