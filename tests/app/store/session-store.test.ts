import { describe, expect, test } from 'vitest';
import { FIRST_SESSION, KEPT_IN } from '../../../app/store/session.ts';
import { createSessionStore } from '../../../app/store/session-store.ts';
import { fail } from '../../../src/layout/result.ts';
import { fakePreferences } from '../fakes.ts';

describe('the session', () => {
  test('every key says where it is kept', () => {
    expect(Object.keys(KEPT_IN).sort()).toEqual(Object.keys(FIRST_SESSION).sort());
  });

  test('starts as it was left, for the keys that the browser keeps', () => {
    const kept: Record<string, unknown> = {};
    const first = createSessionStore(fakePreferences(kept));
    first.setState({ theme: 'dim', push: true, side: 'front', focus: 'overlap/module:a+module:b' });
    expect(kept).toEqual({ theme: 'dim', push: true });
    const next = createSessionStore(fakePreferences(kept)).getState();
    expect(next).toEqual({ ...FIRST_SESSION, theme: 'dim', push: true });
  });

  test('takes nothing from the browser that is not its own kind', () => {
    const kept = { theme: 'neon', push: 'yes', halfHp: null };
    expect(createSessionStore(fakePreferences(kept)).getState()).toEqual(FIRST_SESSION);
  });

  test('works where the browser keeps nothing', () => {
    const store = createSessionStore({ read: () => fail('forbidden'), write: () => fail('forbidden') });
    store.setState({ theme: 'dark' });
    expect(store.getState().theme).toBe('dark');
  });
});
