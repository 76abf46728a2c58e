import { seatPlaces } from '../../src/index.ts';
import { perform } from '../actions/action.ts';
import { selectWhatIsJoined } from '../actions/select-joined.ts';
import { type Hit, type SelectionKey, selectionKey } from '../canvas/model.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { chosenConnector, plugIn } from '../store/aim.ts';
import { focusNote } from '../store/focus-note.ts';
import { seatEdit } from '../store/seat-edit.ts';
import { selectedAlone } from '../store/selection.ts';
import { NOTHING } from '../store/session.ts';
import { hitAt, moduleUnder, notesAt, pileAt } from '../store/under-pointer.ts';
import { freeBerthAt } from './berths.ts';
import { casePartTool } from './case-part-tool.ts';
import { dragTool } from './drag-tool.ts';
import { type Grip, gripAt, nearestPlace } from './grip.ts';
import { openChoicesAt } from './item-at.ts';
import { layTool } from './lay-tool.ts';
import { marqueeTool } from './marquee-tool.ts';
import { panTool } from './pan-tool.ts';
import { keyOf, moduleOf, toggled } from './pick.ts';
import { hasWandered, type Pointer, type Tool } from './pointer.ts';
import { seatTool } from './seat-tool.ts';
import { slideRibbonTool } from './slide-ribbon-tool.ts';
import type { Taps } from './taps.ts';

const LONG_PRESS_MS = 450;

/** How far off a header a tap may be that seats the chosen connector there, px. */
const TAP_REACH_PX = { mouse: 12, pen: 16, touch: 26 } as const;

type State =
  | { readonly at: 'idle' }
  | { readonly at: 'pointing'; readonly from: Pointer; readonly hit: Hit | null }
  /** A finger has rested: let go, it asks what can be done; moved, it moves what it rests on. */
  | { readonly at: 'resting'; readonly from: Pointer; readonly hit: Hit | null; readonly to: Tool | null }
  /** Another tool has taken over until the pointer is let go. */
  | { readonly at: 'handed on'; readonly to: Tool };

const IDLE: State = { at: 'idle' };

const adds = ({ shift, mod }: Pointer): boolean => shift || mod;

/** What a tap can select of what lies at a point, each thing once. */
const selectable = (pile: readonly Hit[]): readonly Hit[] => {
  const keys = pile.map(keyOf);
  return pile.filter((_, i) => keys[i] !== null && keys.indexOf(keys[i] as SelectionKey) === i);
};

/**
 * Taps select, again at the same place what lies below, and a double tap all that is joined; a press that wanders
 * moves what is selected, draws a marquee or, by finger, moves the sheet. From a free header it pulls a ribbon or
 * lead; a finger rests there first. A finger that rests and is let go asks what can be done.
 */
export function selectTool(editor: Editor, taps: Taps): Tool {
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
    const rest = { focus: null, connector: null };
    if (key) session.setState({ selection: adding ? toggled(selection, key) : new Set([key]), ...rest });
    else if (!adding) session.setState({ selection: NOTHING, ...rest });
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

  /** The next thing below the one that is selected, and round again; the uppermost where that is not there. */
  const selectNext = (pointer: Pointer, hit: Hit | null, goesOn: boolean): void => {
    const pile = selectable(pileAt(editor, pointer));
    const { selection } = session.getState();
    const isSelected = (hit: Hit): boolean =>
      selection.size === 1 && selection.has(keyOf(hit) as SelectionKey);
    const at = goesOn && pile.length > 0 ? (pile.findIndex(isSelected) + 1) % pile.length : 0;
    select(pile[at] ?? hit, false);
    const { x, y } = pointer;
    const now = session.getState().selection;
    // That a ribbon lies over a module need not be told until somebody asks for more than the ribbon.
    const isTold = at > 0 || pile.filter(({ type }) => type === 'ribbon').length > 1;
    session.setState({
      pile: isTold ? { x, y, at: at + 1, of: pile.length, selection: now } : null,
      ...(isTold && { spoken: `${at + 1} of ${pile.length} here.` }),
    });
  };

  /** A tap on a connector of the ribbon that alone is selected chooses it; another one on it lets it go. */
  const choose = (hit: Hit | null): boolean => {
    const { selection, connector: chosen } = session.getState();
    if (hit?.type !== 'ribbon' || hit.connector === undefined) return false;
    const { id: ribbon, connector } = hit;
    if (selectedAlone(shownTake(editor), selection)?.id !== ribbon) return false;
    const isChosen = chosen?.ribbon === ribbon && chosen.connector === connector;
    session.setState({ connector: isChosen ? null : { ribbon, connector }, focus: null });
    return true;
  };

  /** With a connector chosen, a tap on something free that it fits seats it there. */
  const seat = (pointer: Pointer): boolean => {
    const end = session.getState().side === 'rear' ? chosenConnector(editor) : undefined;
    if (!end || end.ribbon.ribbon.locked || plugIn(end)) return false;
    const places = seatPlaces(shownAnalysis(editor).derived, end.ribbon, end.connector);
    const place = nearestPlace(editor, places, pointer, TAP_REACH_PX[pointer.kind]);
    if (place) perform(editor, seatEdit(editor, end, place));
    return place !== undefined;
  };

  const tap = (pointer: Pointer, hit: Hit | null): void => {
    if (adds(pointer)) {
      taps.forget();
      select(hit, true);
      return;
    }
    if (seat(pointer) || choose(hit) || focusMark(pointer)) return;
    const told = taps.tell(pointer);
    if (told === 'double' && keyOf(hit)) selectWhatIsJoined(editor);
    else selectNext(pointer, hit, told === 'again');
  };

  /** What takes hold of a selected ribbon: its connectors come off, its band slides. Locked, it holds fast. */
  const ribbonTool = (grip: Grip | null): Tool | null => {
    const ribbon = grip && shownAnalysis(editor).derived.wiring.ribbonById.get(grip.id);
    if (!ribbon || ribbon.ribbon.locked) return null;
    if (grip.connector !== undefined) return seatTool(editor, grip.id, grip.connector);
    return ribbon.facts.flat ? slideRibbonTool(editor, grip.id) : null;
  };

  /** A finger moves only what it selected before: on a small screen there is little free ground to pan by. */
  const successor = (from: Pointer, hit: Hit | null): Tool => {
    const onRibbon = ribbonTool(gripAt(editor, from));
    if (onRibbon) return onRibbon;
    if (from.kind !== 'touch' && freeBerthAt(editor, from)) return layTool(editor, () => null);
    const partTool = casePartTool(editor, from, hit);
    if (partTool) {
      if (!session.getState().selection.has(partTool.key))
        session.setState({ selection: new Set([partTool.key]), focus: null });
      return partTool.tool;
    }
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
      const hit = gripAt(editor, from) ?? hitAt(editor, from);
      state = { at: 'pointing', from, hit };
      if (from.kind !== 'touch') return;
      forgetPress = platform.clock.after(LONG_PRESS_MS, () => {
        const to = freeBerthAt(editor, from) ? layTool(editor, () => null) : null;
        to?.down(from);
        taps.forget();
        state = { at: 'resting', from, hit, to };
      });
    },
    move(pointer) {
      if (state.at === 'handed on') state.to.move(pointer);
      if (state.at === 'resting' && hasWandered(state.from, pointer)) {
        const { from, hit, to } = state;
        if (to) state = { at: 'handed on', to };
        else {
          const key = keyOf(hit);
          if (key && !session.getState().selection.has(key)) select(hit, false);
          handOn(successor(from, hit), from);
        }
        if (state.at === 'handed on') state.to.move(pointer);
        return;
      }
      if (state.at !== 'pointing' || !hasWandered(state.from, pointer)) return;
      forgetPress();
      taps.forget();
      const { from, hit } = state;
      handOn(successor(from, hit), from).move(pointer);
    },
    up(pointer) {
      if (state.at === 'handed on') state.to.up(pointer);
      if (state.at === 'pointing') tap(pointer, state.hit);
      if (state.at === 'resting') {
        const { from, to } = state;
        to?.cancel();
        openChoicesAt(editor, from);
      }
      rest();
    },
    cancel() {
      if (state.at === 'handed on' || state.at === 'resting') state.to?.cancel();
      rest();
    },
    press: (key) => state.at === 'handed on' && state.to.press?.(key) === true,
  };
}
