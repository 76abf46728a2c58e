import { describe, expect, it } from 'vitest';
import { type Migration, migrate } from '../../src/layout/migrations.ts';
import { deepFreeze } from '../support/deep-freeze.ts';

/** No version has been left behind yet, so the machine is tried on a made-up chain. */
const steps = new Map<number, Migration>([
  [1, ({ name, ...rest }) => ({ ...rest, title: name })],
  [2, (data) => ({ ...data, title: `${String(data.title).toUpperCase()}` })],
  [
    4,
    () => {
      throw new Error('cannot');
    },
  ],
]);

describe('migrations', () => {
  it('go step by step, and do not touch what they are given', () => {
    const old = deepFreeze({ version: 1, name: 'kit', other: [1] });
    expect(migrate(old, 1, 3, steps)).toEqual({ ok: true, value: { version: 3, title: 'KIT', other: [1] } });
  });

  it('leave a document of today alone', () => {
    const now = { version: 3 };
    expect(migrate(now, 3, 3, steps)).toEqual({ ok: true, value: now });
  });

  it('say at which version a step is missing or fails', () => {
    expect(migrate({ version: 3 }, 3, 4, steps)).toEqual({ ok: false, error: { at: 3 } });
    expect(migrate({ version: 4 }, 4, 5, steps)).toEqual({ ok: false, error: { at: 4 } });
  });
});
