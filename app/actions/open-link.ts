import type { Layout } from '../../src/index.ts';
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

/** A layout of one's own, made of one that came from elsewhere: it tells where it came from. */
function ownCopy({ id, ...layout }: Layout): Layout {
  return id === undefined ? layout : { ...layout, parent: id };
}

/** The one place where a layout from a link is kept. For now it is opened in place of the present one, an undo away. */
function keep(editor: Editor, layout: Layout): void {
  takeLayout(editor, ownCopy(layout), `open ${layout.title}`);
}

/** Ends the offer: what was offered is kept, or left. Either way the link has done its work. */
export async function answerOffer(editor: Editor, isKept: boolean): Promise<void> {
  const { offered } = editor.session.getState();
  editor.session.setState({ offered: null });
  if (offered && isKept) keep(editor, offered);
  const address = await editor.platform.address();
  if (looksLikeLink(address.whole())) address.clear();
}
