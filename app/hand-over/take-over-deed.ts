import { fail, type Layout, ok, type Result } from '../../src/index.ts';
import { isSameContent } from '../../src/share.ts';
import { lookAnew } from '../actions/take-layout.ts';
import type { Editor } from '../editor.ts';
import type { Kin } from './find-kin.ts';

/**
 * Puts a mixture in the place of mine, as one step that can be undone; mine comes on the screen, if it is not there.
 *
 * @returns why not, as a sentence without its end
 */
export async function takeOver(
  editor: Editor,
  { layout: mine }: Kin,
  merged: Layout,
  title: string,
): Promise<Result<void, string>> {
  const { layouts, keep } = editor;
  if (layouts.layout().id !== mine.id) {
    const { keeper } = keep.getState();
    const opened = await keeper?.open(mine.id ?? '');
    if (!opened?.ok) return fail(opened?.error ?? 'Yours is not kept');
    lookAnew(editor);
    // Until it is known whether this tab may change it.
    await keeper?.flush();
  }
  const mayChange = layouts.mayChange();
  if (!mayChange.ok) return mayChange;
  if (!isSameContent(layouts.layout(), mine)) return fail('Yours has been changed meanwhile');
  layouts.replace(merged, `take over changes of ${title}`);
  return ok(undefined);
}
