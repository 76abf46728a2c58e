import { describe, expect, test } from 'vitest';
import { askThread } from '../../../app/platform/thread.ts';
import { fakeClock } from '../fakes.ts';

class FakeThread {
  onmessage: ((event: { data: unknown }) => void) | null = null;
  onerror: (() => void) | null = null;
  ended = 0;
  asked: unknown;
  postMessage(question: unknown): void {
    this.asked = question;
  }
  terminate(): void {
    this.ended++;
  }
}

const ask = (thread: FakeThread, clock = fakeClock()) =>
  askThread(() => thread as unknown as Worker, 'what?', clock, 1000);

describe('a thread that is asked', () => {
  test('gives its answer, and is ended', async () => {
    const thread = new FakeThread();
    const answer = ask(thread);
    expect(thread.asked).toBe('what?');
    thread.onmessage?.({ data: 42 });
    expect(await answer).toEqual({ ok: true, value: 42 });
    expect(thread.ended).toBe(1);
  });

  test('is ended when its time is over', async () => {
    const thread = new FakeThread();
    const clock = fakeClock();
    const answer = ask(thread, clock);
    clock.pass(1000);
    expect(await answer).toEqual({ ok: false, error: 'late' });
    expect(thread.ended).toBe(1);
  });

  test('is none where it does not start', async () => {
    const thread = new FakeThread();
    const answer = ask(thread);
    thread.onerror?.();
    expect(await answer).toEqual({ ok: false, error: 'none' });
    const never = askThread(
      () => {
        throw new Error('no threads here');
      },
      'what?',
      fakeClock(),
      1000,
    );
    expect(await never).toEqual({ ok: false, error: 'none' });
  });
});
