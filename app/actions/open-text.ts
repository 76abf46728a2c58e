import type { Result } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import { takeLayout } from './take-layout.ts';

const document = () => import('../../src/document.ts');

/** Opens the text of a file; what cannot be opened leaves everything as it was and says why. */
export async function openText(editor: Editor, read: Result<string, string>): Promise<void> {
  const tell = (banner: string): void => editor.session.setState({ banner });
  if (!read.ok) return tell(read.error);
  const { openLayout, describeFailure } = await document();
  const opened = openLayout(read.value);
  if (opened.ok) return takeLayout(editor, opened.value, `open ${opened.value.title}`);
  const { bringBack } = await import('../keep/bundle.ts');
  const brought = opened.error.kind === 'not-ours' ? await bringBack(editor, read.value) : null;
  if (brought !== null) tell(brought);
  else tell(`Not opened: ${describeFailure(opened.error)}`);
}
