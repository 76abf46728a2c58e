/** What a page's main thread did while it was traced. */
export interface MainThread {
  /** All its tasks together, ms. */
  readonly totalMs: number;
  /** The same without the time in which other programs had the processor, ms. */
  readonly cpuMs: number;
  readonly longestMs: number;
  readonly longestCpuMs: number;
  /** What each movement of the pointer cost, until the next one, ms; in their order. */
  readonly moveMs: readonly number[];
}

interface Task {
  /** Microseconds, on the trace's clock. */
  readonly endUs: number;
  readonly ms: number;
  readonly cpuMs: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds. */
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string; readonly data?: { readonly type?: string } };
}

const TASKS = new Set(['RunTask', 'ThreadControllerImpl::RunTask']);

/** Each task counts for the last movement that began before the task ended. */
function perMove(tasks: readonly Task[], movesUs: readonly number[]): number[] {
  const starts = movesUs.toSorted((a, b) => a - b);
  const sums = starts.map(() => 0);
  for (const { endUs, ms } of tasks) {
    const move = starts.findLastIndex((start) => start <= endUs);
    if (move >= 0) sums[move] = (sums[move] as number) + ms;
  }
  return sums;
}

/** Reads a browser's trace: of all renderers the one that had most to do, which is the page that was moved on. */
export function mainThreadOf(trace: string): MainThread {
  const { traceEvents } = JSON.parse(trace) as { readonly traceEvents: readonly TraceEvent[] };
  const mains = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(({ pid, tid }) => `${pid}/${tid}`),
  );
  const tasks = new Map<string, Task[]>();
  const moves = new Map<string, number[]>();
  for (const { name, ph, pid, tid, ts, dur = 0, tdur = 0, args } of traceEvents) {
    const thread = `${pid}/${tid}`;
    if (ph !== 'X' || !mains.has(thread)) continue;
    if (name === 'EventDispatch' && args?.data?.type === 'pointermove')
      moves.set(thread, [...(moves.get(thread) ?? []), ts]);
    if (!TASKS.has(name)) continue;
    const task = { endUs: ts + dur, ms: dur / 1000, cpuMs: tdur / 1000 };
    const known = tasks.get(thread);
    if (known) known.push(task);
    else tasks.set(thread, [task]);
  }
  const threads = [...tasks].map(([thread, all]) => ({
    totalMs: all.reduce((sum, { ms }) => sum + ms, 0),
    cpuMs: all.reduce((sum, { cpuMs }) => sum + cpuMs, 0),
    longestMs: Math.max(...all.map(({ ms }) => ms)),
    longestCpuMs: Math.max(...all.map(({ cpuMs }) => cpuMs)),
    moveMs: perMove(all, moves.get(thread) ?? []),
  }));
  const busiest = threads.toSorted((a, b) => b.totalMs - a.totalMs)[0];
  if (!busiest) throw new Error('no main thread in the trace');
  return busiest;
}
