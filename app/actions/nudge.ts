import type { Layout } from '../../src/index.ts';
import { type Editor, shownTake } from '../editor.ts';
import { type Arrow, alongOf, rowsOf } from '../store/arrows.ts';
import { boardLabel, placeOfBoard, previewBoard } from '../tools/board-tool.ts';
import { previewSlide, slideLabel, slideOfSelection } from '../tools/drag-tool.ts';
import type { Action } from './action.ts';
import { boardsSelected, modulesSelected } from './selected.ts';

const KEYS = { left: 'ArrowLeft', right: 'ArrowRight', up: 'ArrowUp', down: 'ArrowDown' } as const;

/** The last nudge: what it made of the layout, and how many steps of its kind it took. */
interface Nudged {
  readonly id: string;
  readonly made: Layout;
  readonly steps: number;
}

const lastNudge = new WeakMap<Editor, Nudged>();

/** How many steps to take from where the key went down; the ones taken so far are taken back. */
function stepsOf(editor: Editor, id: string, held: boolean): number {
  const last = lastNudge.get(editor);
  const goesOn = held && last?.id === id && last.made === editor.layouts.layout();
  if (!goesOn) return 1;
  editor.layouts.undo();
  return last.steps + 1;
}

interface Nudge {
  readonly arrow: Arrow;
  readonly hp: number;
  readonly pushes: boolean;
}

interface Way {
  readonly label: string;
  preview(): void;
}

function slideBy(editor: Editor, { arrow, hp, pushes }: Nudge, steps: number): Way | undefined {
  const lead = modulesSelected(editor).find(({ pinned }) => !pinned);
  const slide = lead && slideOfSelection(editor, lead.id);
  if (!slide) return undefined;
  const { row, atHp } = slide.inHand.from;
  const to = { row: row + steps * rowsOf(arrow), atHp: atHp + steps * hp * alongOf(editor, arrow) };
  return {
    label: slideLabel(editor, slide),
    preview: () => previewSlide(editor, slide, to, pushes !== editor.session.getState().push),
  };
}

/** A board goes by 1 mm, with Alt by 0.1 mm, with Shift by 10 mm. */
function boardBy(editor: Editor, { arrow, hp, pushes }: Nudge, steps: number): Way | undefined {
  const [board] = boardsSelected(editor);
  const from = board && placeOfBoard(editor, board.id);
  if (!board || !from) return undefined;
  const mm = (pushes ? 10 : 1) * (hp < 1 ? 0.1 : 1);
  const to = {
    row: from.row + steps * rowsOf(arrow),
    xMm: from.xMm + steps * mm * alongOf(editor, arrow),
  };
  return { label: boardLabel(editor, board.id), preview: () => previewBoard(editor, board.id, to) };
}

/** Moves what is selected; all the repeats of a key that is held down are one step to undo. */
function nudgeSelected(editor: Editor, id: string, by: Nudge, held: boolean): void {
  const steps = stepsOf(editor, id, held);
  const way = slideBy(editor, by, steps) ?? boardBy(editor, by, steps);
  if (!way) return;
  const before = editor.layouts.layout();
  editor.gestures.begin(shownTake(editor).id, way.label);
  way.preview();
  editor.gestures.commit();
  const made = editor.layouts.layout();
  if (made === before) lastNudge.delete(editor);
  else lastNudge.set(editor, { id, made, steps });
}

const hasFree = (editor: Editor): boolean =>
  modulesSelected(editor).some(({ pinned }) => !pinned) || boardsSelected(editor).length > 0;

const WORDS = {
  left: 'to the left',
  right: 'to the right',
  up: 'to the row above',
  down: 'to the row below',
} as const;

function nudge(by: Nudge): Action {
  const { arrow, hp, pushes } = by;
  const isHalf = hp < 1;
  const id = ['nudge', arrow, ...(isHalf ? ['half'] : []), ...(pushes ? ['push'] : [])].join('-');
  const words = [`Move ${WORDS[arrow]}`, ...(isHalf ? ['by ½ HP'] : []), ...(pushes ? ['and push'] : [])];
  return {
    id,
    label: () => words.join(' '),
    shortcuts: [{ key: KEYS[arrow], ...(isHalf && { alt: true }), ...(pushes && { shift: true }) }],
    keysOnStageOnly: true,
    ...((isHalf || pushes) && { isVariant: true }),
    enabled: hasFree,
    run: (editor, held = false) => nudgeSelected(editor, id, by, held),
  };
}

const ARROWS: readonly Arrow[] = ['left', 'right', 'up', 'down'];

/** Arrows move by 1 HP or to the next row, with Alt by ½ HP; with Shift neighbours give way. */
export const nudges: readonly Action[] = ARROWS.flatMap((arrow) =>
  [false, true].flatMap((pushes) => [
    nudge({ arrow, hp: 1, pushes }),
    ...(rowsOf(arrow) === 0 ? [nudge({ arrow, hp: 0.5, pushes })] : []),
  ]),
);
