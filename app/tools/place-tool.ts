import type { ModuleKind, Take } from '../../src/index.ts';
import { selectionKey } from '../canvas/model.ts';
import { type Editor, shownTake } from '../editor.ts';
import { inHandOf, placeUnder } from './in-hand.ts';
import { layTool } from './lay-tool.ts';
import type { Pointer, Tool } from './pointer.ts';

type State = { readonly at: 'idle' } | { readonly at: 'holding' };

export interface PlaceTool extends Tool {
  /** The pointer moves without being pressed: what is in hand goes along. */
  hover(pointer: Pointer): void;
  /** The pointer left the stage. */
  leave(): void;
  /** Whether a key means something for what is in hand. */
  press(key: string): boolean;
  /** What is shown goes; the kind stays in hand. */
  hold(): void;
}

const keysOf = ({ modules }: Take) => modules.map(({ id }) => selectionKey('module', id));

/**
 * Puts the kind in hand where it belongs, a module on the rails and a ribbon on headers: taken from the tray
 * with a tap and put down with another, or dragged over in one go. It stays in hand while Ctrl is held.
 */
export function placeTool(editor: Editor): PlaceTool {
  const { session } = editor;
  const held = () => inHandOf(session.getState().inHand, editor.layouts.layout().kit);
  const layAside = ({ mod }: Pointer): void => {
    if (!mod) session.setState({ inHand: null });
  };
  const module = moduleTool(
    editor,
    () => {
      const inHand = held();
      return inHand?.type === 'module' ? inHand.kind : null;
    },
    layAside,
  );
  const ribbon = layTool(
    editor,
    () => {
      const inHand = held();
      return inHand?.type === 'ribbon' ? inHand.kind : null;
    },
    layAside,
  );
  let tool: Omit<PlaceTool, 'press' | 'hold'> = module;
  const fitting = (): typeof tool => {
    tool = held()?.type === 'ribbon' ? ribbon : module;
    return tool;
  };

  return {
    hover: (pointer) => fitting().hover(pointer),
    leave: () => tool.leave(),
    down: (pointer) => fitting().down(pointer),
    move: (pointer) => tool.move(pointer),
    up: (pointer) => tool.up(pointer),
    cancel() {
      tool.cancel();
      session.setState({ inHand: null });
    },
    hold: () => tool.cancel(),
    press: (key) => tool === ribbon && ribbon.press(key),
  };
}

/** @param placed - called when the module was let go */
function moduleTool(
  editor: Editor,
  kindInHand: () => ModuleKind | null,
  placed: (pointer: Pointer) => void,
): Omit<PlaceTool, 'press' | 'hold'> {
  const { session, gestures } = editor;
  let state: State = { at: 'idle' };

  const show = (pointer: Pointer): void => {
    const kind = kindInHand();
    if (!kind) return;
    if (state.at === 'idle') {
      gestures.begin(shownTake(editor).id, `place ${kind.name}`);
      state = { at: 'holding' };
    }
    gestures.preview(placeUnder(editor, kind, pointer));
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
      });
      placed(pointer);
    },
    cancel: drop,
  };
}
