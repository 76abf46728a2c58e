import { railAt, rowAt } from '../../src/index.ts';
import { selectionKey } from '../canvas/model.ts';
import { zoomAbout } from '../canvas/viewport.ts';
import type { Editor } from '../editor.ts';
import { boardUnder } from '../store/under-pointer.ts';
import { lookAt, sheetNow, toSheet, viewportNow } from '../store/view.ts';
import { askAbout, openChoicesAt } from './item-at.ts';
import { createLift } from './lift.ts';
import { panTool } from './pan-tool.ts';
import { pinchTool } from './pinch-tool.ts';
import { placeTool } from './place-tool.ts';
import type { Point, Pointer, Tool } from './pointer.ts';
import { selectTool } from './select-tool.ts';
import { createTaps } from './taps.ts';

/** Hands every pointer on the stage to the tool that it belongs to. */
export interface Toolbox extends Tool {
  press(key: string): boolean;
  hover(pointer: Pointer): void;
  leave(): void;
  /** What the pointer looks like where a press would take hold of the case itself; empty: as ever. */
  cursorAt(pointer: Pointer): string;
  wheel(wheel: Wheel): void;
  /** Asks what can be done with what lies under a pointer, or with the module on which the keys stand. */
  ask(pointer: Pointer | null): void;
  /** While the space bar is held, a press moves the sheet. */
  holdSheet(held: boolean): void;
  /** Hears no more of what becomes of the layout. */
  release(): void;
}

interface Wheel extends Point {
  readonly dx: number;
  readonly dy: number;
  readonly shift: boolean;
  readonly mod: boolean;
}

/** Wheel travel that doubles the scale, px. */
const DOUBLING_PX = 300;

const MIDDLE = 1;

export function createToolbox(editor: Editor): Toolbox {
  const place = placeTool(editor);
  const lift = createLift(editor);
  const taps = createTaps(editor.platform.clock);
  let sheetHeld = false;
  /** With the pointer that started it, where it was last. */
  let active: { readonly tool: Tool; readonly pointer: Pointer } | null = null;
  const fingers = new Set<number>();

  const toolFor = ({ button }: Pointer): Tool | null => {
    if (button === MIDDLE || (sheetHeld && button === 0)) return panTool(editor);
    if (button !== 0) return null;
    return editor.session.getState().inHand === null ? selectTool(editor, taps) : place;
  };

  const start = (tool: Tool | null, pointer: Pointer): void => {
    if (!tool) return;
    active = { tool, pointer };
    tool.down(pointer);
  };

  const drop = (): void => {
    active?.tool.cancel();
    active = null;
  };

  /** Tools know things as they were when they were pressed: what another hand changes meanwhile ends it. */
  const release = editor.layouts.store.subscribe((now, then) => {
    if (!active || now.history.present === then.history.present) return;
    if (active.tool === place) place.hold();
    else active.tool.cancel();
    active = null;
  });

  /** A second mouse or finger that nobody asked for does not steer what the first one began. */
  const steers = ({ id }: Pointer): boolean => id === active?.pointer.id || fingers.size > 1;

  return {
    down(pointer) {
      lift.drop();
      if (pointer.kind === 'touch') fingers.add(pointer.id);
      const first = active?.pointer;
      if (first?.kind === 'touch' && fingers.size === 2) {
        // To look closer is no reason to lay aside what is in hand.
        if (active?.tool === place) place.hold();
        else drop();
        start(pinchTool(editor, first), pointer);
      } else if (!active) start(toolFor(pointer), pointer);
    },
    move(pointer) {
      if (!active || !steers(pointer)) return;
      active.tool.move(pointer);
      if (pointer.id === active.pointer.id) active = { ...active, pointer };
    },
    up(pointer) {
      if (active && steers(pointer)) {
        const { tool } = active;
        active = null;
        tool.up(pointer);
      }
      fingers.delete(pointer.id);
    },
    cancel() {
      fingers.clear();
      if (active) drop();
      else place.cancel();
    },
    press: (key) => (active ? active.tool.press?.(key) === true : place.press(key)),
    hover(pointer) {
      if (active) return;
      if (editor.session.getState().inHand !== null) place.hover(pointer);
      else lift.hover(pointer);
    },
    leave() {
      lift.drop();
      if (!active) place.leave();
    },
    cursorAt(pointer) {
      if (editor.session.getState().inHand !== null) return '';
      const point = toSheet(editor, pointer);
      const row = rowAt(sheetNow(editor), point.y);
      if (row && railAt(row, point, 0) === 'end') return 'ew-resize';
      const board = boardUnder(editor, pointer);
      const { selection } = editor.session.getState();
      return board !== null && selection.has(selectionKey('board', board)) ? 'move' : '';
    },
    wheel({ x, y, dx, dy, shift, mod }) {
      const viewport = viewportNow(editor);
      if (mod) return lookAt(editor, zoomAbout(viewport, 2 ** (-dy / DOUBLING_PX), x, y));
      const [across, down] = shift && dx === 0 ? [dy, 0] : [dx, dy];
      lookAt(editor, { ...viewport, x: viewport.x - across, y: viewport.y - down });
    },
    ask(pointer) {
      const { cursor, inHand } = editor.session.getState();
      if (active || inHand !== null) return;
      if (pointer) openChoicesAt(editor, pointer);
      else if (cursor !== null) askAbout(editor, cursor);
    },
    holdSheet(held) {
      sheetHeld = held;
    },
    release,
  };
}
