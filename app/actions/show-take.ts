import type { Editor } from '../editor.ts';
import { NOTHING } from '../store/session.ts';

/** Shows another take; the sheet stays where it is, so that the eye can compare. */
export function showTake({ session }: Editor, take: string): void {
  session.setState({ take, selection: NOTHING, cursor: null, focus: null });
}
