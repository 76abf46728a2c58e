import type { Layout, Result } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import { takeLayout } from './take-layout.ts';

const document = () => import('../../src/document.ts');

/** Whether somebody made it from a layout of mine and changed it: then it is not only kept, but may be taken into mine. */
async function descendsFromMine({ layouts, keep }: Editor, theirs: Layout): Promise<boolean> {
  if (theirs.parent === undefined) return false;
  const [{ findKin }, { isSameContent }] = await Promise.all([
    import('../hand-over/find-kin.ts'),
    import('../../src/share.ts'),
  ]);
  const { keeper } = keep.getState();
  const kin = await findKin(layouts.layout(), { shelf: keeper?.shelf }, theirs);
  return kin !== null && kin.layout.id === theirs.parent && !isSameContent(kin.layout, theirs);
}

/** Opens the text of a file; what cannot be opened leaves everything as it was and says why. */
export async function openText(editor: Editor, read: Result<string, string>): Promise<void> {
  const tell = (banner: string): void => editor.session.setState({ banner });
  if (!read.ok) return tell(read.error);
  const { openLayout, describeFailure } = await document();
  const opened = openLayout(read.value);
  if (opened.ok) {
    if (await descendsFromMine(editor, opened.value)) {
      editor.session.setState({ offered: { layout: opened.value, by: 'file' }, showsLayouts: false });
      return;
    }
    return takeLayout(editor, opened.value, `open ${opened.value.title}`);
  }
  const { bringBack } = await import('../keep/bundle.ts');
  const brought = opened.error.kind === 'not-ours' ? await bringBack(editor, read.value) : null;
  if (brought !== null) tell(brought);
  else tell(`Not opened: ${describeFailure(opened.error)}`);
}
