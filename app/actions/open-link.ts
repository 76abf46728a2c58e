import { fail, type Layout, type Result } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import { askThread } from '../platform/thread.ts';
import { takeLayout } from './take-layout.ts';

/** Nobody waits longer for a link, ms. */
const PATIENCE_MS = 12_000;

/** From then on it is said that a link is being read, ms. */
const QUIET_MS = 300;

const startThread = (): Worker =>
  new Worker(new URL('../hand-over/link-thread.ts', import.meta.url), { type: 'module' });

/** Beside the page, which stays at hand however long it takes; in the page where there are no threads. */
export async function readLinkText({ platform }: Editor, text: string): Promise<Result<Layout, string>> {
  const answer = await askThread<Result<Layout, string>>(startThread, text, platform.clock, PATIENCE_MS);
  if (answer.ok) return answer.value;
  const { readLink, tooBigWords } = await import('../hand-over/read-link.ts');
  return answer.error === 'late' ? fail(tooBigWords()) : readLink(text);
}

let latest = 0;

/** Offers the layout that a link carries; nothing is kept before the user says so. A broken link says what is wrong. */
export async function openLinkText(editor: Editor, text: string): Promise<void> {
  const mine = ++latest;
  const { session, platform } = editor;
  const callOff = platform.clock.after(QUIET_MS, () => session.setState({ banner: 'Reading the link…' }));
  const opened = await readLinkText(editor, text);
  callOff();
  // Another link has come since.
  if (mine !== latest) return;
  session.setState(
    opened.ok
      ? { offered: { layout: opened.value, by: 'link' }, banner: null }
      : { banner: `Not opened: ${opened.error}.` },
  );
}

/** Whether a text was copied from a link of ours. */
export const looksLikeLink = (text: string): boolean => /(^|#)rw\d+\./.test(text);

/** Ends the offer: what was offered is kept, or left. Either way the link has done its work. */
export async function answerOffer(editor: Editor, isKept: boolean): Promise<void> {
  const { offered } = editor.session.getState();
  editor.session.setState({ offered: null });
  if (offered && isKept) takeLayout(editor, offered.layout, `open ${offered.layout.title}`);
  const address = await editor.platform.address();
  if (looksLikeLink(address.whole())) address.clear();
}
