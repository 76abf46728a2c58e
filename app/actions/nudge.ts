import { type Editor, shownTake } from '../editor.ts';
import { type Arrow, alongOf, rowsOf } from '../store/arrows.ts';
import { previewSlide, slideLabel, slideOfSelection } from '../tools/drag-tool.ts';
import type { Action, Shortcut } from './action.ts';
import { modulesSelected } from './selected.ts';

const KEYS = { left: 'ArrowLeft', right: 'ArrowRight', up: 'ArrowUp', down: 'ArrowDown' } as const;

function nudgeSelected(editor: Editor, arrow: Arrow, stepHp: number, push: boolean): void {
  const lead = modulesSelected(editor).find(({ pinned }) => !pinned);
  const slide = lead && slideOfSelection(editor, lead.id);
  if (!slide) return;
  const { row, atHp } = slide.inHand.from;
  editor.gestures.begin(shownTake(editor).id, slideLabel(editor, slide));
  previewSlide(
    editor,
    slide,
    { row: row + rowsOf(arrow), atHp: atHp + alongOf(editor, arrow) * stepHp },
    push,
  );
  editor.gestures.commit();
}

const hasFree = (editor: Editor): boolean => modulesSelected(editor).some(({ pinned }) => !pinned);

const WORDS = {
  left: 'to the left',
  right: 'to the right',
  up: 'to the row above',
  down: 'to the row below',
} as const;

function nudge(arrow: Arrow, stepHp: number, pushes: boolean): Action {
  const shortcut: Shortcut = {
    key: KEYS[arrow],
    ...(stepHp < 1 && { alt: true }),
    ...(pushes && { shift: true }),
  };
  const words = [`Move ${WORDS[arrow]}`, ...(stepHp < 1 ? ['by ½ HP'] : []), ...(pushes ? ['and push'] : [])];
  return {
    id: ['nudge', arrow, ...(stepHp < 1 ? ['half'] : []), ...(pushes ? ['push'] : [])].join('-'),
    label: () => words.join(' '),
    shortcuts: [shortcut],
    keysOnStageOnly: true,
    enabled: hasFree,
    run: (editor) => nudgeSelected(editor, arrow, stepHp, pushes !== editor.session.getState().push),
  };
}

const ARROWS: readonly Arrow[] = ['left', 'right', 'up', 'down'];

/** Arrows move by 1 HP or to the next row, with Alt by ½ HP; with Shift neighbours give way. */
export const nudges: readonly Action[] = ARROWS.flatMap((arrow) => [
  nudge(arrow, 1, false),
  nudge(arrow, 1, true),
  ...(rowsOf(arrow) === 0 ? [nudge(arrow, 0.5, false), nudge(arrow, 0.5, true)] : []),
]);
