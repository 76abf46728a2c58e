import { type Mend, type Note, searchMends, type WholeTake } from '../../src/index.ts';
import type { Editor } from '../editor.ts';

/** A slice of searching is over after so long, ms: half a frame. */
const SLICE_MS = 6;

/** Between two slices, ms; and how often it is looked whether a gesture is over. */
const PAUSE_MS = 4;
const WAIT_MS = 120;

type Found = (mends: readonly Mend[]) => void;

interface Job {
  readonly search: Iterator<undefined, readonly Mend[]>;
  readonly found: Found;
}

const known = new WeakMap<WholeTake, Map<string, readonly Mend[]>>();

const knownOf = (derived: WholeTake): Map<string, readonly Mend[]> => {
  const before = known.get(derived);
  if (before) return before;
  const empty = new Map<string, readonly Mend[]>();
  known.set(derived, empty);
  return empty;
};

const jobs = new Set<Job>();
let isScheduled = false;

/** Works on the first job for a slice; drags come first. */
function work(editor: Editor): void {
  isScheduled = false;
  const isBusy = editor.gestures.store.getState().running;
  const [job] = jobs;
  if (job && !isBusy) {
    const end = performance.now() + SLICE_MS;
    let step = job.search.next();
    while (!step.done && performance.now() < end) step = job.search.next();
    if (step.done) {
      jobs.delete(job);
      job.found(step.value);
    }
  }
  schedule(editor, isBusy ? WAIT_MS : PAUSE_MS);
}

function schedule(editor: Editor, ms: number): void {
  if (isScheduled || jobs.size === 0) return;
  isScheduled = true;
  editor.platform.clock.after(ms, () => work(editor));
}

/** What mends a note, as far as it is known already. */
export const mendsKnown = (derived: WholeTake, { key }: Note): readonly Mend[] | undefined =>
  knownOf(derived).get(key);

/** Searches a slice at a time, after whatever else is searched for. Answers with how to call it off. */
export function searchInSlices(editor: Editor, search: Job['search'], found: Found): () => void {
  const job: Job = { search, found };
  jobs.add(job);
  schedule(editor, 0);
  return () => void jobs.delete(job);
}

/** Looks for what mends a note, a slice at a time, one note after the other. Answers with how to call it off. */
export function findMends(editor: Editor, derived: WholeTake, note: Note, found: Found): () => void {
  return searchInSlices(editor, searchMends(derived, note), (mends) => {
    knownOf(derived).set(note.key, mends);
    found(mends);
  });
}
