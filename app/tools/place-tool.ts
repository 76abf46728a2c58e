import { type Editor, shownTake } from '../editor.ts';
import { selectionOf } from '../store/selection.ts';
import { railUnder } from '../store/view.ts';
import { pushesFor, stepFor } from './drag-tool.ts';
import type { Pointer, Tool } from './pointer.ts';
import { snapTo } from './slide.ts';

type State = { readonly at: 'idle' } | { readonly at: 'holding'; readonly kind: string };

export interface PlaceTool extends Tool {
  /** The pointer moves without being pressed: the module in hand goes along. */
  hover(pointer: Pointer): void;
  /** The pointer left the stage. */
  leave(): void;
}

const clamp = (value: number, least: number, most: number): number => Math.max(least, Math.min(value, most));

/**
 * Puts the kind in hand on the rails: taken from the tray with a tap and put down with another, or dragged
 * over in one go. It stays in hand for the next one while Ctrl is held.
 */
export function placeTool(editor: Editor): PlaceTool {
  const { session, gestures } = editor;
  let state: State = { at: 'idle' };

  const hold = (): string | null => {
    const { inHand } = session.getState();
    const kind = editor.layouts.layout().kit.modules.find(({ id }) => id === inHand);
    if (!kind) return null;
    if (state.at === 'idle') {
      gestures.begin(shownTake(editor).id, `place ${kind.name}`);
      state = { at: 'holding', kind: kind.id };
    }
    return kind.id;
  };

  const show = (pointer: Pointer): void => {
    const id = hold();
    const under = railUnder(editor, pointer);
    const kind = editor.layouts.layout().kit.modules.find((candidate) => candidate.id === id);
    if (!kind || !under) return;
    const { rows, id: take } = shownTake(editor);
    const row = rows[under.row];
    if (!row) return;
    const wanted = snapTo(under.atHp - kind.widthHp / 2, stepFor(editor, pointer));
    const atHp = clamp(wanted, 0, Math.max(0, row.widthHp - kind.widthHp));
    gestures.preview({
      type: 'place-module',
      take,
      kind: kind.id,
      row: row.id,
      atHp,
      push: pushesFor(editor, pointer),
    });
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
      const before = new Set(shownTake(editor).modules.map(({ id }) => id));
      state = { at: 'idle' };
      const placed = [...gestures.commit()].filter((id) => !before.has(id));
      session.setState({
        selection: selectionOf('module', placed),
        ...(!pointer.mod && { inHand: null }),
      });
    },
    cancel() {
      drop();
      session.setState({ inHand: null });
    },
  };
}
