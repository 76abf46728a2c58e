import type { JointTarget } from '../../src/index.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { placesFor, plugIn, type RibbonEnd } from '../store/aim.ts';
import { seatEdit } from '../store/seat-edit.ts';
import { toSheet } from '../store/view.ts';
import { aimAt } from './aim-at.ts';
import { REACH_PX } from './berths.ts';
import { nearestPlace } from './grip.ts';
import type { Pointer, Tool } from './pointer.ts';

type State =
  | { readonly at: 'idle' }
  | { readonly at: 'pulling'; readonly end: RibbonEnd; readonly places: readonly JointTarget[] };

/** What a pull at a connector takes hold of: the plug of another ribbon that sits in it, else itself. */
export function endOf(editor: Editor, ribbonId: string, connector: number): RibbonEnd | undefined {
  const ribbon = shownAnalysis(editor).derived.wiring.ribbonById.get(ribbonId);
  const end = ribbon && { ribbon, connector };
  return end && (plugIn(end) ?? end);
}

export const seatLabel = ({ ribbon, connector }: RibbonEnd): string =>
  `move connector ${connector + 1} of ${ribbon.name}`;

/** Pulls a connector off what it sits on: it snaps to the nearest thing that it fits, and let go elsewhere it is free. */
export function seatTool(editor: Editor, ribbonId: string, connector: number): Tool {
  const { gestures } = editor;
  let state: State = { at: 'idle' };

  return {
    down() {
      const end = endOf(editor, ribbonId, connector);
      if (!end || end.ribbon.ribbon.locked) return;
      gestures.begin(shownTake(editor).id, seatLabel(end));
      state = { at: 'pulling', end, places: placesFor(shownAnalysis(editor).derived, end) };
    },
    move(pointer: Pointer) {
      if (state.at !== 'pulling') return;
      const { end, places } = state;
      const place = nearestPlace(editor, places, pointer, REACH_PX[pointer.kind]);
      gestures.preview(
        seatEdit(editor, end, place),
        aimAt(end, places, place ? undefined : toSheet(editor, pointer)),
      );
    },
    up() {
      if (state.at === 'pulling') gestures.commit();
      state = { at: 'idle' };
    },
    cancel() {
      if (state.at === 'pulling') gestures.cancel();
      state = { at: 'idle' };
    },
  };
}
