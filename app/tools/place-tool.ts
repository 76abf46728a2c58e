import type { Take } from '../../src/index.ts';
import { selectionKey } from '../canvas/model.ts';
import { type Editor, shownTake } from '../editor.ts';
import { editUnder, inHandOf } from './in-hand.ts';
import type { Pointer, Tool } from './pointer.ts';

type State = { readonly at: 'idle' } | { readonly at: 'holding' };

export interface PlaceTool extends Tool {
  /** The pointer moves without being pressed: what is in hand goes along. */
  hover(pointer: Pointer): void;
  /** The pointer left the stage. */
  leave(): void;
}

const keysOf = ({ modules, ribbons }: Take) => [
  ...modules.map(({ id }) => selectionKey('module', id)),
  ...ribbons.map(({ id }) => selectionKey('ribbon', id)),
];

/**
 * Puts the kind in hand where it belongs, a module on the rails and a ribbon on headers: taken from the tray
 * with a tap and put down with another, or dragged over in one go. It stays in hand while Ctrl is held.
 */
export function placeTool(editor: Editor): PlaceTool {
  const { session, gestures } = editor;
  let state: State = { at: 'idle' };

  const show = (pointer: Pointer): void => {
    const held = inHandOf(session.getState().inHand, editor.layouts.layout().kit);
    if (!held) return;
    if (state.at === 'idle') {
      gestures.begin(shownTake(editor).id, `${held.type === 'module' ? 'place' : 'lay'} ${held.kind.name}`);
      state = { at: 'holding' };
    }
    gestures.preview(editUnder(editor, held, pointer));
  };

  const drop = (): void => {
    if (state.at === 'holding') gestures.cancel();
    state = { at: 'idle' };
  };

  return {
    hover: show,
    leave: drop,
    down: show,
    move: show,
    up(pointer) {
      show(pointer);
      if (state.at !== 'holding') return;
      const before = new Set(keysOf(shownTake(editor)));
      state = { at: 'idle' };
      gestures.commit();
      session.setState({
        selection: new Set(keysOf(shownTake(editor)).filter((key) => !before.has(key))),
        ...(!pointer.mod && { inHand: null }),
      });
    },
    cancel() {
      drop();
      session.setState({ inHand: null });
    },
  };
}
