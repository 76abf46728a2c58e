import type { Editor } from '../editor.ts';
import { takeLayout } from './take-layout.ts';

const core = () => import('../../src/share.ts');

/** Offers the layout that a link carries; nothing is kept before the user says so. A broken link says what is wrong. */
export async function openLinkText(editor: Editor, text: string): Promise<void> {
  const { openLink, describeLinkFailure } = await core();
  const opened = openLink(text);
  editor.session.setState(
    opened.ok
      ? { offered: opened.value, banner: null }
      : { banner: `Not opened: ${describeLinkFailure(opened.error)}.` },
  );
}

/** Whether a text was copied from a link of ours. */
export const looksLikeLink = (text: string): boolean => /(^|#)rw\d+\./.test(text);

/** Ends the offer: what was offered is kept, or left. Either way the link has done its work. */
export async function answerOffer(editor: Editor, isKept: boolean): Promise<void> {
  const { offered } = editor.session.getState();
  editor.session.setState({ offered: null });
  if (offered && isKept) takeLayout(editor, offered, `open ${offered.title}`);
  const address = await editor.platform.address();
  if (looksLikeLink(address.whole())) address.clear();
}
