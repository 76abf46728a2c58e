import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { previewSlide, slideLabel, slideOfSelection } from './drag-tool.ts';
import { type RailPlace, type Slide, slideTo } from './slide.ts';

type State =
  | { readonly at: 'idle' }
  | { readonly at: 'carrying'; readonly slide: Slide; readonly to: RailPlace; readonly push: boolean };

/** A drag by keys: pick up, move step by step, put down; one step to undo, like any drag. */
export interface Carry {
  isCarrying(): boolean;
  pick(lead: string): void;
  step(rows: number, hp: number, push: boolean): void;
  drop(): void;
  cancel(): void;
}

export function createCarry(editor: Editor): Carry {
  const { gestures, session } = editor;
  let state: State = { at: 'idle' };
  const say = (spoken: string): void => session.setState({ spoken });
  const nameOf = (id: string): string => shownAnalysis(editor).derived.places.moduleById.get(id)?.name ?? '';

  return {
    isCarrying: () => state.at === 'carrying',
    pick(lead) {
      const slide = slideOfSelection(editor, lead);
      if (!slide) return say(`${nameOf(lead)} is pinned.`);
      gestures.begin(shownTake(editor).id, slideLabel(editor, slide));
      state = { at: 'carrying', slide, to: slide.inHand.from, push: false };
      say(`${nameOf(lead)} picked up. Arrow keys move it, Enter puts it down, Escape puts it back.`);
    },
    step(rows, hp, push) {
      if (state.at !== 'carrying') return;
      const { slide, to } = state;
      previewSlide(editor, slide, { row: to.row + rows, atHp: to.atHp + hp }, push);
      const landed = slideTo(slide, { row: to.row + rows, atHp: to.atHp + hp }).find(
        ({ module }) => module === slide.inHand.id,
      );
      const row = slide.rows.findIndex(({ id }) => id === landed?.row);
      if (!landed) return;
      state = { ...state, to: { row, atHp: landed.atHp }, push };
      say(`${landed.atHp} HP, ${slide.rows[row]?.name ?? `row ${row + 1}`}.`);
    },
    drop() {
      if (state.at === 'carrying') gestures.commit();
      state = { at: 'idle' };
    },
    cancel() {
      if (state.at !== 'carrying') return;
      gestures.cancel();
      say('Put back.');
      state = { at: 'idle' };
    },
  };
}
