import { fail, ok, type Result } from '../../src/index.ts';
import type { Clock } from './clock.ts';

/** none: the browser has no threads, or does not start this one. late: it had its time and was ended. */
export type NoAnswer = 'none' | 'late';

/** Asks a thread one question, which it answers with one message, and ends it. */
export function askThread<T>(
  start: () => Worker,
  question: unknown,
  clock: Clock,
  patienceMs: number,
): Promise<Result<T, NoAnswer>> {
  return new Promise((resolve) => {
    let thread: Worker;
    try {
      thread = start();
    } catch {
      resolve(fail('none'));
      return;
    }
    const end = (answer: Result<T, NoAnswer>): void => {
      callOff();
      thread.terminate();
      resolve(answer);
    };
    const callOff = clock.after(patienceMs, () => end(fail('late')));
    thread.onmessage = ({ data }: MessageEvent<T>) => end(ok(data));
    thread.onerror = () => end(fail('none'));
    thread.postMessage(question);
  });
}
