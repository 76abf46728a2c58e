import type { Viewport } from '../canvas/model.ts';
import { panBy, zoomAbout } from '../canvas/viewport.ts';
import type { Editor } from '../editor.ts';
import { lookAt, viewportNow } from '../store/view.ts';
import type { Point, Pointer, Tool } from './pointer.ts';

type State =
  | { readonly at: 'idle' }
  | {
      readonly at: 'pinching';
      readonly start: Viewport;
      readonly from: readonly [Pointer, Pointer];
      readonly now: readonly [Pointer, Pointer];
    };

type Fingers = readonly [Point, Point];

const middle = ([a, b]: Fingers): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
const spread = ([a, b]: Fingers): number => Math.max(1, Math.hypot(a.x - b.x, a.y - b.y));

function pinched(start: Viewport, from: Fingers, to: Fingers): Viewport {
  const a = middle(from);
  const b = middle(to);
  return panBy(zoomAbout(start, spread(to) / spread(from), a.x, a.y), b.x - a.x, b.y - a.y);
}

/** Two fingers move and zoom the sheet: what lies between them stays there. */
export function pinchTool(editor: Editor, first: Pointer): Tool {
  let state: State = { at: 'idle' };
  return {
    down(second) {
      const fingers = [first, second] as const;
      state = { at: 'pinching', start: viewportNow(editor), from: fingers, now: fingers };
    },
    move(pointer) {
      if (state.at !== 'pinching') return;
      const [a, b] = state.now;
      const now = [pointer.id === a.id ? pointer : a, pointer.id === b.id ? pointer : b] as const;
      state = { ...state, now };
      lookAt(editor, pinched(state.start, state.from, now));
    },
    up() {
      state = { at: 'idle' };
    },
    cancel() {
      if (state.at === 'pinching') lookAt(editor, state.start);
      state = { at: 'idle' };
    },
  };
}
