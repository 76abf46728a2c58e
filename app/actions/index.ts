import type { Action } from './action.ts';
import { addTake } from './add-take.ts';
import { duplicate } from './duplicate.ts';
import { feedAllThatNeed } from './feed-all.ts';
import { fit } from './fit.ts';
import { letGo } from './let-go.ts';
import { newLayout } from './new-layout.ts';
import { nudges } from './nudge.ts';
import { openDemo } from './open-demo.ts';
import { openFile } from './open-file.ts';
import { pin } from './pin.ts';
import { redo } from './redo.ts';
import { remove } from './remove.ts';
import { removeTake } from './remove-take.ts';
import { saveFile } from './save-file.ts';
import { selectAll } from './select-all.ts';
import { themes, toggleHalfHp, togglePush } from './settings.ts';
import { nextNote, previousNote } from './step-note.ts';
import { nextTake, previousTake } from './step-take.ts';
import { swap } from './swap.ts';
import { turn } from './turn.ts';
import { undo } from './undo.ts';
import { zoomIn, zoomOut } from './zoom.ts';

/** Everything that a user can do apart from pointing, dragging and typing into fields. */
export const actions: readonly Action[] = [
  undo,
  redo,
  turn,
  fit,
  zoomIn,
  zoomOut,
  remove,
  duplicate,
  pin,
  swap,
  feedAllThatNeed,
  selectAll,
  letGo,
  ...nudges,
  newLayout,
  openDemo,
  openFile,
  saveFile,
  addTake,
  removeTake,
  nextTake,
  previousTake,
  nextNote,
  previousNote,
  togglePush,
  toggleHalfHp,
  ...themes,
];
