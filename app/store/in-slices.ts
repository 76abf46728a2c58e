import type { Editor } from '../editor.ts';

/** A slice of work is over after so long, ms: half a frame. */
const SLICE_MS = 6;

/** Between two slices, ms; and how often it is looked whether a gesture is over. */
const PAUSE_MS = 4;
const WAIT_MS = 120;

/** One step of something long; answers whether it is done. */
type Step = () => boolean;

const jobs = new Set<Step>();
let isScheduled = false;

/** Works on the first job for a slice; drags come first. */
function work(editor: Editor): void {
  isScheduled = false;
  const isBusy = editor.gestures.store.getState().running;
  const [step] = jobs;
  if (step && !isBusy) {
    const end = performance.now() + SLICE_MS;
    let isDone = step();
    while (!isDone && performance.now() < end) isDone = step();
    if (isDone) jobs.delete(step);
  }
  schedule(editor, isBusy ? WAIT_MS : PAUSE_MS);
}

function schedule(editor: Editor, ms: number): void {
  if (isScheduled || jobs.size === 0) return;
  isScheduled = true;
  editor.platform.clock.after(ms, () => work(editor));
}

/**
 * Carries out a search a slice at a time, one search after the other, so that the hand is never held up. Answers with
 * how to call it off.
 */
export function inSlices<T>(
  editor: Editor,
  search: Iterator<undefined, T>,
  found: (value: T) => void,
): () => void {
  const step: Step = () => {
    const { done, value } = search.next();
    if (done) found(value);
    return done === true;
  };
  jobs.add(step);
  schedule(editor, 0);
  return () => void jobs.delete(step);
}
