import type { History } from '../platform/history.ts';
import type { SessionStore } from '../store/session-store.ts';

/** A page of the help as a step of the browser: Back leads to the page before, and from the first out of the help. */
interface HelpStep {
  readonly help: string;
  /** How many steps of the help it takes to come here. */
  readonly depth: number;
}

function stepOf(state: unknown): HelpStep | undefined {
  const { help, depth } = (state ?? {}) as Partial<HelpStep>;
  return typeof help === 'string' && typeof depth === 'number' ? { help, depth } : undefined;
}

/** Steps of the help behind this one, up to the page from which it was opened. */
export const depthOf = (history: History): number => stepOf(history.state())?.depth ?? 0;

/** The list of commands is no place to come back to. */
const pageIn = (help: string | null): string | undefined =>
  help === 'find' ? undefined : (help ?? undefined);

/** Holds the help's pages and the browser's steps together for as long as the page lives. */
export function keepSteps(session: SessionStore, history: History): void {
  /** On its way back to where the help was opened. */
  let isLeaving = false;
  const follow = (): void => {
    if (isLeaving) return;
    const page = pageIn(session.getState().help);
    const here = stepOf(history.state());
    if (page === here?.help) return;
    if (page !== undefined) history.push({ help: page, depth: (here?.depth ?? 0) + 1 } satisfies HelpStep);
    else if (here) {
      isLeaving = true;
      history.go(-here.depth);
    }
  };
  history.listen(() => {
    if (isLeaving) {
      isLeaving = false;
      follow();
      return;
    }
    const { help } = session.getState();
    const page = stepOf(history.state())?.help;
    if (page !== pageIn(help)) session.setState({ help: page ?? null });
  });
  session.subscribe((now, before) => {
    if (now.help !== before.help) follow();
  });
  follow();
}
