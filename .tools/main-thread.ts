/** What a page's main thread did while it was traced. */
export interface MainThread {
  /** All its tasks together, ms. */
  readonly totalMs: number;
  readonly longestMs: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds. */
  readonly dur?: number;
  readonly args?: { readonly name?: string };
}

const TASKS = new Set(['RunTask', 'ThreadControllerImpl::RunTask']);

/** Reads a browser's trace: of all renderers the one that had most to do, which is the page that was moved on. */
export function mainThreadOf(trace: string): MainThread {
  const { traceEvents } = JSON.parse(trace) as { readonly traceEvents: readonly TraceEvent[] };
  const mains = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(({ pid, tid }) => `${pid}/${tid}`),
  );
  const tasks = new Map<string, number[]>();
  for (const { name, ph, pid, tid, dur } of traceEvents) {
    const thread = `${pid}/${tid}`;
    if (ph !== 'X' || !TASKS.has(name) || !mains.has(thread)) continue;
    const ms = (dur ?? 0) / 1000;
    const known = tasks.get(thread);
    if (known) known.push(ms);
    else tasks.set(thread, [ms]);
  }
  const threads = [...tasks.values()].map((all) => ({
    totalMs: all.reduce((sum, ms) => sum + ms, 0),
    longestMs: Math.max(...all),
  }));
  const busiest = threads.toSorted((a, b) => b.totalMs - a.totalMs)[0];
  if (!busiest) throw new Error('no main thread in the trace');
  return busiest;
}
