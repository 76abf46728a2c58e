import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Layout } from '../../src/index.ts';
import type { FigureLine, Progress, ProposalChange, Unlinked } from '../../src/planner.ts';
import { perform } from '../actions/action.ts';
import { showTake } from '../actions/show-take.ts';
import { type Editor, shownTake } from '../editor.ts';
import type { Message, Question } from './propose-thread.ts';

/** What a proposal came to, beside the take that it was made of. */
export interface Told {
  /** The take that it became, and the one that it was made of. */
  readonly take: string;
  readonly from: string;
  readonly isSame: boolean;
  readonly score: string;
  readonly proof: string;
  readonly unlinked: readonly Unlinked[];
  /** In what counts first, from the take that it was made of to this one. */
  readonly against: readonly FigureLine[];
  readonly changes: readonly ProposalChange[];
}

interface TakesDesk {
  /** With which take the one shown is compared, of this layout or of the one from a link. */
  readonly with: string | null;
  /** What a bandmate's link holds. */
  readonly linked: Layout | null;
  readonly hasShadow: boolean;
  readonly running: { readonly arrange: boolean; readonly progress: Progress | null } | null;
  readonly told: Told | null;
}

export type TakesDeskStore = StoreApi<TakesDesk>;

const desks = new WeakMap<Editor, TakesDeskStore>();
const threads = new WeakMap<Editor, Worker>();

export function takesDeskOf(editor: Editor): TakesDeskStore {
  const known = desks.get(editor);
  if (known) return known;
  const made = createStore<TakesDesk>(() => ({
    with: null,
    linked: null,
    hasShadow: true,
    running: null,
    told: null,
  }));
  desks.set(editor, made);
  return made;
}

const startThread = (): Worker =>
  new Worker(new URL('./propose-thread.ts', import.meta.url), { type: 'module' });

export function cancelProposal(editor: Editor): void {
  threads.get(editor)?.terminate();
  threads.delete(editor);
  takesDeskOf(editor).setState({ running: null });
}

/** Has the take shown wired anew, beside the page; what is found arrives as a take of its own. */
export function propose(editor: Editor, arrange: boolean): void {
  const desk = takesDeskOf(editor);
  cancelProposal(editor);
  const take = shownTake(editor);
  const { kit } = editor.layouts.layout();
  const fail = (words: string): void => {
    cancelProposal(editor);
    editor.session.setState({ banner: words });
  };
  let thread: Worker;
  try {
    thread = startThread();
  } catch {
    fail('This browser has no threads: nothing can be proposed here.');
    return;
  }
  threads.set(editor, thread);
  desk.setState({ running: { arrange, progress: null }, told: null });
  thread.onerror = () => fail('The search for a proposal broke off.');
  thread.onmessage = async ({ data }: MessageEvent<Message>) => {
    if (threads.get(editor) !== thread) return;
    if ('progress' in data) {
      desk.setState({ running: { arrange, progress: data.progress } });
      return;
    }
    const { proposal } = data;
    if (!proposal) {
      fail('The search came to no end: nothing is proposed.');
      return;
    }
    const { pressingFigures, proofWords, proposalChanges, scoreWords, sideBySide } = await import(
      '../../src/planner.ts'
    );
    cancelProposal(editor);
    const before = editor.layouts.layout();
    const { modules, ribbons } = proposal.take;
    const isSame =
      modules === take.modules ||
      JSON.stringify([modules, ribbons]) === JSON.stringify([take.modules, take.ribbons]);
    if (!isSame) perform(editor, { type: 'rewire-take', from: take.id, modules, ribbons });
    const added = editor.layouts.layout().takes.at(-1);
    const isAdded = !isSame && editor.layouts.layout() !== before && added !== undefined;
    if (isAdded) showTake(editor, added.id);
    if (!isAdded && !isSame) return;
    desk.setState({
      with: isAdded ? take.id : desk.getState().with,
      told: {
        take: isAdded ? added.id : take.id,
        from: take.id,
        isSame,
        score: scoreWords(proposal),
        proof: proofWords(proposal),
        unlinked: proposal.unlinked,
        against: pressingFigures(sideBySide({ kit, take }, { kit, take: proposal.take })),
        changes: isSame ? [] : proposalChanges(kit, take, proposal.take),
      },
    });
    editor.session.setState({
      spoken: isSame
        ? 'Nothing better was found.'
        : `${added?.name} is added and shown. ${scoreWords(proposal)}.`,
    });
  };
  thread.postMessage({ kit, take, arrange } satisfies Question);
}
