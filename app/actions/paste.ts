import { type Editor, shownTake } from '../editor.ts';
import { railUnder } from '../store/view.ts';
import type { Point } from '../tools/pointer.ts';
import { type Action, always } from './action.ts';
import { sizeInWords } from './copy.ts';
import { looksLikeLink, openLinkText } from './open-link.ts';
import { runAndSelect } from './run-and-select.ts';

const NOTHING_THERE = 'There is no group of modules on the clipboard.';

const document = () => import('../../src/document.ts');

/**
 * Puts the group that a text from the clipboard holds on the rails of the take shown, near a point of the stage if
 * one is given; offers the layout of a link. Anything else changes nothing, and a line says so.
 */
export async function pasteText(editor: Editor, text: string, at: Point | null): Promise<void> {
  const isHolding = (): boolean => editor.gestures.store.getState().running;
  if (isHolding()) return;
  if (looksLikeLink(text)) return openLinkText(editor, text);
  const { openClip } = await document();
  if (isHolding()) return;
  const opened = openClip(text);
  if (!opened.ok) {
    const { error } = opened;
    const banner = error.kind === 'unusable' ? `Not pasted: ${error.why}.` : NOTHING_THERE;
    editor.session.setState({ banner });
    return;
  }
  const clip = opened.value;
  const take = shownTake(editor);
  const under = at && railUnder(editor, at);
  const row = under && take.rows[under.row];
  const near = row && { row: row.id, atHp: under.atHp };
  runAndSelect(
    editor,
    { type: 'paste', take: take.id, clip, ...(near && { near }) },
    `Pasted ${sizeInWords(clip)}.`,
  );
}

async function pasteKept(editor: Editor): Promise<void> {
  const clipboard = await editor.platform.clipboard();
  await pasteText(editor, clipboard.kept() ?? '', null);
}

export const paste: Action = {
  id: 'paste',
  label: () => 'Paste',
  shortcuts: [{ key: 'v', mod: true }],
  byClipboard: true,
  enabled: always,
  run: (editor) => void pasteKept(editor),
};
