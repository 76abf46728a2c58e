import type { Viewport } from '../canvas/model.ts';
import { panBy } from '../canvas/viewport.ts';
import type { Editor } from '../editor.ts';
import { lookAt, viewportNow } from '../store/view.ts';
import type { Pointer, Tool } from './pointer.ts';

type State =
  | { readonly at: 'idle' }
  | {
      readonly at: 'panning';
      readonly from: Pointer;
      readonly start: Viewport;
      readonly before: Viewport | null;
    };

/** Moves the sheet under the pointer. */
export function panTool(editor: Editor): Tool {
  let state: State = { at: 'idle' };
  return {
    down(from) {
      state = { at: 'panning', from, start: viewportNow(editor), before: editor.session.getState().viewport };
    },
    move({ x, y }) {
      if (state.at === 'panning') lookAt(editor, panBy(state.start, x - state.from.x, y - state.from.y));
    },
    up() {
      state = { at: 'idle' };
    },
    cancel() {
      if (state.at === 'panning') editor.session.setState({ viewport: state.before });
      state = { at: 'idle' };
    },
  };
}
