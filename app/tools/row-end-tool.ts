import { sheetMm } from '../../src/index.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { railUnder } from '../store/view.ts';
import type { Tool } from './pointer.ts';

type State = { readonly at: 'idle' } | { readonly at: 'dragging'; readonly grabHp: number };

/** The shortest row that can be dragged, HP: a shorter one could hardly be taken hold of again. */
const LEAST_HP = 2;

/** Makes a row longer or shorter by its front's right end, by whole HP. */
export function rowEndTool(editor: Editor, id: string): Tool {
  const { gestures, session } = editor;
  let state: State = { at: 'idle' };
  const row = () => shownAnalysis(editor).derived.places.rowById.get(id);
  const sheetWidth = (): number => sheetMm(shownAnalysis(editor).derived.places.rows).width;

  /** The rear is drawn from the front's left end: a wider sheet would move all of it. */
  const keepInPlace = (before: number): void => {
    const { viewport, side } = session.getState();
    if (!viewport || side === 'front') return;
    session.setState({ viewport: { ...viewport, x: viewport.x - (sheetWidth() - before) * viewport.scale } });
  };

  return {
    down(pointer) {
      const under = railUnder(editor, pointer);
      const placed = row();
      if (!under || !placed) return;
      gestures.begin(shownTake(editor).id, `resize ${placed.row.name ?? `row ${placed.index + 1}`}`);
      state = { at: 'dragging', grabHp: under.atHp - placed.row.widthHp };
    },
    move(pointer) {
      const under = railUnder(editor, pointer);
      if (state.at !== 'dragging' || !under) return;
      const widthHp = Math.max(LEAST_HP, Math.round(under.atHp - state.grabHp));
      gestures.preview({ type: 'change-row', take: shownTake(editor).id, row: id, fields: { widthHp } });
    },
    up() {
      if (state.at !== 'dragging') return;
      state = { at: 'idle' };
      const before = sheetWidth();
      gestures.commit();
      keepInPlace(before);
    },
    cancel() {
      if (state.at === 'dragging') gestures.cancel();
      state = { at: 'idle' };
    },
  };
}
