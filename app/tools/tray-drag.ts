import type { SelectionKey } from '../canvas/model.ts';
import type { Editor } from '../editor.ts';
import { NOTHING, type Session } from '../store/session.ts';
import { hasWandered, type Pointer } from './pointer.ts';
import type { Toolbox } from './toolbox.ts';

type State =
  | { readonly at: 'idle' }
  | { readonly at: 'pressed'; readonly kind: SelectionKey; readonly from: Pointer }
  | { readonly at: 'over the stage' | 'elsewhere' };

/** A kind taken from the tray: dragged onto the rails in one go, or with a tap here and a tap there. */
export interface TrayDrag<E> {
  down(kind: SelectionKey, event: E): void;
  move(event: E): void;
  up(event: E): void;
  cancel(): void;
  /** A click, by whatever means; one that ends a drag does not count. */
  tap(kind: SelectionKey): void;
}

/** Takes a kind in hand, or nothing; what was selected is let go. Ribbons are laid at the rear. */
const take = (kind: SelectionKey | null): Partial<Session> => ({
  inHand: kind,
  selection: NOTHING,
  focus: null,
  ...(kind?.startsWith('ribbon:') && { side: 'rear' }),
});

/**
 * @param read - the event in the stage's coordinates
 * @param isOnStage - whether the pointer is over the free stage
 * @param placed - called when a drag has ended on the rails
 */
export function createTrayDrag<E>(
  { session }: Editor,
  toolbox: Toolbox,
  read: (event: E) => Pointer,
  isOnStage: (event: E) => boolean,
  placed: () => void,
): TrayDrag<E> {
  let state: State = { at: 'idle' };
  let dragged = false;

  const putBack = (): void => {
    if (state.at === 'over the stage' || state.at === 'elsewhere') toolbox.cancel();
    state = { at: 'idle' };
  };

  return {
    down(kind, event) {
      dragged = false;
      state = { at: 'pressed', kind, from: read(event) };
    },
    move(event) {
      if (state.at === 'idle') return;
      const pointer = read(event);
      if (state.at === 'pressed') {
        if (!hasWandered(state.from, pointer)) return;
        dragged = true;
        const { kind } = state;
        session.setState(({ fold }) => ({ ...take(kind), fold: fold === 'case' ? null : fold }));
      }
      if (isOnStage(event)) {
        state = { at: 'over the stage' };
        toolbox.hover(pointer);
      } else {
        state = { at: 'elsewhere' };
        toolbox.leave();
      }
    },
    up(event) {
      const isStillInHand = session.getState().inHand !== null;
      if (state.at === 'over the stage' && isStillInHand) {
        const pointer = read(event);
        toolbox.down(pointer);
        toolbox.up(pointer);
        state = { at: 'idle' };
        placed();
      } else putBack();
    },
    cancel: putBack,
    tap(kind) {
      if (dragged) {
        dragged = false;
        return;
      }
      const { inHand } = session.getState();
      session.setState({ ...take(inHand === kind ? null : kind), fold: null });
    },
  };
}
