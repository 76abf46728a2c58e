import { fail, ok, type Result } from '../../src/index.ts';
import { lookAnew } from '../actions/take-layout.ts';
import type { Editor } from '../editor.ts';
import type { EarlierState } from '../store/keep.ts';
import { openKept } from './open-kept.ts';

/**
 * Brings a layout back to what it was, as one step that can be undone. It comes on the screen, if it is not there yet.
 *
 * @returns why not, as a sentence without its end
 */
export async function bringBackState(
  editor: Editor,
  id: string,
  { text }: EarlierState,
): Promise<Result<void, string>> {
  const { keep, layouts } = editor;
  const opened = await openKept({ id, text });
  if (!opened.ok) return fail(opened.error);
  if (layouts.layout().id !== id) {
    const { keeper } = keep.getState();
    const shown = await keeper?.open(id);
    if (!shown?.ok) return fail(shown?.error ?? 'The layout is not kept');
    lookAnew(editor);
    // Until it is known whether this tab may change it.
    await keeper?.flush();
  }
  const mayChange = layouts.mayChange();
  if (!mayChange.ok) return mayChange;
  layouts.replace(opened.value, 'bring back an earlier state');
  return ok(undefined);
}
