import { describe, expect, test } from 'vitest';
import type { Moving } from '../../../app/canvas/model.ts';
import { atReadingPace } from '../../../app/store/reading-pace.ts';
import { fakeClock } from '../fakes.ts';

function source() {
  let moving: Moving | null = null;
  const listeners = new Set<() => void>();
  return {
    get: () => moving,
    subscribe: (listener: () => void) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    set(next: Moving | null) {
      moving = next;
      for (const listener of listeners) listener();
    },
  };
}

const step = (): Moving => ({}) as Moving;

describe('at reading pace', () => {
  test('the first move is told at once, the next ones when the hand pauses, the last for certain', () => {
    const from = source();
    const clock = fakeClock();
    const paced = atReadingPace(from, clock);
    let told = 0;
    paced.subscribe(() => told++);
    const [a, b, c] = [step(), step(), step()];
    from.set(a);
    expect([told, paced.get()]).toEqual([1, a]);
    from.set(b);
    from.set(c);
    clock.pass(79);
    expect([told, paced.get()]).toEqual([1, a]);
    clock.pass(1);
    expect([told, paced.get()]).toEqual([1, a]);
    clock.pass(80);
    expect(paced.get()).toBe(c);
    expect(told).toBe(2);
    clock.pass(1000);
    expect(told).toBe(2);
  });

  test('a hand that never pauses is followed all the same', () => {
    const from = source();
    const clock = fakeClock();
    const paced = atReadingPace(from, clock);
    let told = 0;
    paced.subscribe(() => told++);
    for (let ms = 0; ms < 2000; ms += 20) {
      from.set(step());
      clock.pass(20);
    }
    expect(told).toBe(1 + 4);
  });

  test('the end is told at once, and nothing after it', () => {
    const from = source();
    const clock = fakeClock();
    const paced = atReadingPace(from, clock);
    let told = 0;
    paced.subscribe(() => told++);
    from.set(step());
    from.set(step());
    from.set(null);
    expect([told, paced.get()]).toEqual([2, null]);
    clock.pass(1000);
    expect(told).toBe(2);
  });
});
