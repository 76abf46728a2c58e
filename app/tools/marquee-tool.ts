import { type Box, meets, moduleBox } from '../../src/index.ts';
import { type SelectionKey, selectionKey } from '../canvas/model.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { sheetNow, toSheet } from '../store/view.ts';
import type { Point, Pointer, Tool } from './pointer.ts';

type Selection = ReadonlySet<SelectionKey>;

type State =
  | { readonly at: 'idle' }
  | {
      readonly at: 'stretching';
      readonly from: Pointer;
      readonly before: Selection;
      readonly kept: Selection;
    };

const boxBetween = (a: Point, b: Point): Box => ({
  left: Math.min(a.x, b.x),
  right: Math.max(a.x, b.x),
  top: Math.min(a.y, b.y),
  bottom: Math.max(a.y, b.y),
});

const sameSet = <T>(a: ReadonlySet<T>, b: ReadonlySet<T>): boolean =>
  a.size === b.size && [...a].every((item) => b.has(item));

/** Keys of the modules whose panels a box on the stage touches. */
function modulesIn(editor: Editor, a: Point, b: Point): SelectionKey[] {
  const sheet = sheetNow(editor);
  const box = boxBetween(toSheet(editor, a), toSheet(editor, b));
  const { modules } = shownAnalysis(editor).derived.places;
  return modules
    .filter((module) => meets(moduleBox(sheet, module), box))
    .map(({ id }) => selectionKey('module', id));
}

/** Draws a box on free ground and selects what it touches; with Shift or Ctrl besides what is selected. */
export function marqueeTool(editor: Editor): Tool {
  const { session, gestures } = editor;
  let state: State = { at: 'idle' };

  const end = (): void => {
    gestures.stretch(null);
    state = { at: 'idle' };
  };

  return {
    down(from) {
      const before = session.getState().selection;
      state = { at: 'stretching', from, before, kept: from.shift || from.mod ? before : new Set() };
    },
    move(pointer) {
      if (state.at !== 'stretching') return;
      gestures.stretch(boxBetween(state.from, pointer));
      const selection = new Set([...state.kept, ...modulesIn(editor, state.from, pointer)]);
      if (!sameSet(selection, session.getState().selection)) session.setState({ selection, focus: null });
    },
    up: end,
    cancel() {
      if (state.at === 'stretching') session.setState({ selection: state.before });
      end();
    },
  };
}
