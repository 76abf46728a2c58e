import type { Editor } from '../editor.ts';
import { NOTHING } from '../store/session.ts';

/** Shows another take; the sheet stays where it is, so that the eye can compare. Not while something of this one is held. */
export function showTake({ session, gestures }: Editor, take: string): void {
  if (gestures.store.getState().running) return;
  session.setState({ take, selection: NOTHING, cursor: null, focus: null });
}
