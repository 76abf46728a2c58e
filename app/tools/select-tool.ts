import { type Hit, selectionKey } from '../canvas/model.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { focusNote } from '../store/focus-note.ts';
import { NOTHING } from '../store/session.ts';
import { hitAt, moduleUnder, notesAt } from '../store/view.ts';
import { freeBerthAt } from './berths.ts';
import { dragTool } from './drag-tool.ts';
import { layTool } from './lay-tool.ts';
import { marqueeTool } from './marquee-tool.ts';
import { panTool } from './pan-tool.ts';
import { keyOf, moduleOf, toggled } from './pick.ts';
import { hasWandered, type Pointer, type Tool } from './pointer.ts';

const LONG_PRESS_MS = 450;

type State =
  | { readonly at: 'idle' }
  | { readonly at: 'pointing'; readonly from: Pointer; readonly hit: Hit | null }
  /** Another tool has taken over until the pointer is let go. */
  | { readonly at: 'handed on'; readonly to: Tool };

const IDLE: State = { at: 'idle' };

const adds = ({ shift, mod }: Pointer): boolean => shift || mod;

/**
 * Taps select; a press that wanders moves what is selected, draws a marquee or, by finger, moves the sheet. From
 * a free header it pulls a ribbon or lead; a finger rests there first.
 */
export function selectTool(editor: Editor): Tool {
  const { session, platform } = editor;
  let state: State = IDLE;
  let forgetPress = (): void => {};

  const rest = (): void => {
    forgetPress();
    state = IDLE;
  };

  const select = (hit: Hit | null, adding: boolean): void => {
    const key = keyOf(hit);
    const { selection } = session.getState();
    if (key) session.setState({ selection: adding ? toggled(selection, key) : new Set([key]), focus: null });
    else if (!adding) session.setState({ selection: NOTHING, focus: null });
    const module = moduleOf(hit);
    if (module !== null) session.setState({ cursor: module });
  };

  /** The note of the mark under the pointer; tapping a mark of several again goes to the next. */
  const focusMark = (pointer: Pointer): boolean => {
    const keys = notesAt(editor, pointer);
    const key = keys[(keys.indexOf(session.getState().focus ?? '') + 1) % keys.length];
    const note = shownAnalysis(editor).notes.find((candidate) => candidate.key === key);
    if (note) focusNote(editor, note);
    return note !== undefined;
  };

  /** A finger moves only what it selected before: on a small screen there is little free ground to pan by. */
  const successor = (from: Pointer): Tool => {
    if (from.kind !== 'touch' && freeBerthAt(editor, from)) return layTool(editor, () => null);
    const module = moduleUnder(editor, from);
    if (module === null) return from.kind === 'touch' ? panTool(editor) : marqueeTool(editor);
    const isSelected = session.getState().selection.has(selectionKey('module', module));
    if (!isSelected && from.kind === 'touch') return panTool(editor);
    if (!isSelected) select({ type: 'module', id: module }, adds(from));
    return dragTool(editor, module);
  };

  const handOn = (to: Tool, from: Pointer): Tool => {
    state = { at: 'handed on', to };
    to.down(from);
    return to;
  };

  return {
    down(from) {
      const hit = hitAt(editor, from);
      state = { at: 'pointing', from, hit };
      if (from.kind !== 'touch') return;
      forgetPress = platform.clock.after(LONG_PRESS_MS, () => {
        rest();
        if (freeBerthAt(editor, from))
          handOn(
            layTool(editor, () => null),
            from,
          );
        else select(hit, true);
      });
    },
    move(pointer) {
      if (state.at === 'handed on') state.to.move(pointer);
      if (state.at !== 'pointing' || !hasWandered(state.from, pointer)) return;
      forgetPress();
      const { from } = state;
      handOn(successor(from), from).move(pointer);
    },
    up(pointer) {
      if (state.at === 'handed on') state.to.up(pointer);
      if (state.at === 'pointing' && (adds(pointer) || !focusMark(pointer))) select(state.hit, adds(pointer));
      rest();
    },
    cancel() {
      if (state.at === 'handed on') state.to.cancel();
      rest();
    },
    press: (key) => state.at === 'handed on' && state.to.press?.(key) === true,
  };
}
