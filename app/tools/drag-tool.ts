import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { modulesIn } from '../store/selection.ts';
import { railUnder } from '../store/view.ts';
import type { Pointer, Tool } from './pointer.ts';
import { type RailPlace, type Slide, type Slider, sliderOf, slideTo, snapTo } from './slide.ts';

type State =
  | { readonly at: 'idle' }
  | { readonly at: 'dragging'; readonly slide: Slide; readonly grabHp: number; readonly last: Pointer };

/** Half HP by the setting, the other way with Alt. */
export const stepFor = (editor: Editor, { alt }: { readonly alt: boolean }): number =>
  editor.session.getState().halfHp !== alt ? 0.5 : 1;

/** Neighbours give way by the setting, the other way with Shift. */
export const pushesFor = (editor: Editor, { shift }: { readonly shift: boolean }): boolean =>
  editor.session.getState().push !== shift;

/** The selected modules that are not pinned, led by one of them; nothing if that one is pinned. */
export function slideOfSelection(editor: Editor, lead: string): Slide | undefined {
  const { places } = shownAnalysis(editor).derived;
  const take = shownTake(editor);
  const { rows } = take;
  const free = modulesIn(take, editor.session.getState().selection).filter(({ pinned }) => !pinned);
  const all = free.flatMap((module): Slider[] => {
    const placed = places.moduleById.get(module.id);
    return placed ? [sliderOf(module, placed.facts.kind.widthHp, rows)] : [];
  });
  const inHand = all.find(({ id }) => id === lead);
  return inHand && { rows, inHand, all };
}

/** Shows the slide at a place; the edit always counts from where the gesture began. */
export function previewSlide(editor: Editor, slide: Slide, to: RailPlace, push: boolean): void {
  const take = shownTake(editor).id;
  editor.gestures.preview({ type: 'move-modules', take, moves: slideTo(slide, to), ...(push && { push }) });
}

export const slideLabel = (editor: Editor, { all, inHand }: Slide): string => {
  const name = shownAnalysis(editor).derived.places.moduleById.get(inHand.id)?.name;
  return all.length === 1 ? `move ${name}` : `move ${all.length} modules`;
};

/** Moves the selected modules along and across the rails. The module pressed leads; the others keep their distance. */
export function dragTool(editor: Editor, lead: string): Tool {
  const { gestures } = editor;
  let state: State = { at: 'idle' };

  return {
    down(pointer) {
      const slide = slideOfSelection(editor, lead);
      const under = railUnder(editor, pointer);
      if (!slide || !under) return;
      gestures.begin(shownTake(editor).id, slideLabel(editor, slide));
      state = { at: 'dragging', slide, grabHp: under.atHp - slide.inHand.from.atHp, last: pointer };
    },
    move(pointer) {
      const under = railUnder(editor, pointer);
      if (state.at !== 'dragging' || !under) return;
      const atHp = snapTo(under.atHp - state.grabHp, stepFor(editor, pointer));
      previewSlide(editor, state.slide, { row: under.row, atHp }, pushesFor(editor, pointer));
    },
    up() {
      if (state.at === 'dragging') gestures.commit();
      state = { at: 'idle' };
    },
    cancel() {
      if (state.at === 'dragging') gestures.cancel();
      state = { at: 'idle' };
    },
  };
}
