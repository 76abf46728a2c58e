import { describe, expect, test } from 'vitest';
import { followUpdates } from '../../../app/keep/follow-updates.ts';
import type { UpdateEar } from '../../../app/platform/service-worker.ts';
import { createKeepStore } from '../../../app/store/keep.ts';
import { ok } from '../../../src/layout/result.ts';
import { fakeClock } from '../fakes.ts';
import { settled } from './browser.ts';

function page(saves = true) {
  const clock = fakeClock();
  const keep = createKeepStore();
  const did: string[] = [];
  const now = { saves };
  let ear: UpdateEar | undefined;
  followUpdates({
    offline: {
      start: async (listener) => {
        ear = listener;
        return ok(undefined);
      },
    },
    keep,
    keeper: {
      flush: async () => {
        did.push('flush');
        return now.saves;
      },
    },
    clock,
    tell: (banner) => did.push(banner),
    reload: () => did.push('reload'),
  });
  if (!ear) throw new Error('nobody listens');
  return { clock, keep, did, now, ear, ready: () => ear?.ready({ switch: () => did.push('switch') }) };
}

describe('a new version', () => {
  test('waits until it is wanted; then the layout is saved, the version switched, the page loaded once', async () => {
    const { clock, keep, did, ear, ready } = page();
    ready();
    clock.pass(60_000);
    expect(did).toEqual([]);
    keep.getState().update?.();
    await settled();
    expect(did).toEqual(['flush', 'switch']);
    ear.switched();
    ear.switched();
    await settled();
    clock.pass(60_000);
    await settled();
    expect(did).toEqual(['flush', 'switch', 'flush', 'reload']);
  });

  test('that does not take over is loaded all the same after a while', async () => {
    const { clock, keep, did, ready } = page();
    ready();
    keep.getState().update?.();
    await settled();
    clock.pass(4000);
    await settled();
    expect(did.filter((one) => one === 'reload')).toHaveLength(1);
  });

  test('chosen in another tab loads this one too, its layout saved before', async () => {
    const { did, ear } = page();
    ear.switched();
    await settled();
    expect(did).toEqual(['flush', 'reload']);
  });

  test('never costs a layout that cannot be saved', async () => {
    const { clock, keep, did, now, ear, ready } = page(false);
    ready();
    keep.getState().update?.();
    await settled();
    ear.switched();
    await settled();
    clock.pass(60_000);
    await settled();
    expect(did).not.toContain('switch');
    expect(did).not.toContain('reload');
    expect(did.filter((one) => one.includes('as a file'))).not.toEqual([]);
    now.saves = true;
    ear.switched();
    await settled();
    expect(did.at(-1)).toBe('reload');
  });
});
