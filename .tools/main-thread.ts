/** What a page's main thread did while it was traced. */
export interface MainThread {
  /** All its tasks together, ms. */
  readonly totalMs: number;
  /** The same without the time in which other programs had the processor, ms. */
  readonly cpuMs: number;
  readonly longestMs: number;
  readonly longestCpuMs: number;
}

interface Task {
  readonly ms: number;
  readonly cpuMs: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds. */
  readonly dur?: number;
  readonly tdur?: number;
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
  const tasks = new Map<string, Task[]>();
  for (const { name, ph, pid, tid, dur = 0, tdur = 0 } of traceEvents) {
    const thread = `${pid}/${tid}`;
    if (ph !== 'X' || !TASKS.has(name) || !mains.has(thread)) continue;
    const task = { ms: dur / 1000, cpuMs: tdur / 1000 };
    const known = tasks.get(thread);
    if (known) known.push(task);
    else tasks.set(thread, [task]);
  }
  const threads = [...tasks.values()].map((all) => ({
    totalMs: all.reduce((sum, { ms }) => sum + ms, 0),
    cpuMs: all.reduce((sum, { cpuMs }) => sum + cpuMs, 0),
    longestMs: Math.max(...all.map(({ ms }) => ms)),
    longestCpuMs: Math.max(...all.map(({ cpuMs }) => cpuMs)),
  }));
  const busiest = threads.toSorted((a, b) => b.totalMs - a.totalMs)[0];
  if (!busiest) throw new Error('no main thread in the trace');
  return busiest;
}
