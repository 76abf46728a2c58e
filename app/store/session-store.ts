import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Preferences } from '../platform/preferences.ts';
import { FIRST_SESSION, KEPT_IN, type Session } from './session.ts';

export type SessionStore = StoreApi<Session>;

const KEYS = Object.keys(KEPT_IN) as (keyof Session)[];

/** What a kept value must be to be taken for a key's own; anything may stand in a browser's storage. */
const FITS: Partial<Record<keyof Session, (value: unknown) => boolean>> = {
  benchName: (value) => typeof value === 'string',
  theme: (value) => ['auto', 'light', 'dark', 'dim'].includes(value as string),
  halfHp: (value) => typeof value === 'boolean',
  listOpen: (value) => typeof value === 'boolean',
  // Looked at closely by `soundKeys` when the first key can be pressed.
  keys: (value) => value instanceof Object,
  push: (value) => typeof value === 'boolean',
};

function readKept(preferences: Preferences): Partial<Session> {
  const kept: Record<string, unknown> = {};
  for (const key of KEYS) {
    if (KEPT_IN[key] !== 'browser') continue;
    const read = preferences.read(key);
    if (read.ok && FITS[key]?.(read.value)) kept[key] = read.value;
  }
  return kept;
}

/** The session of one visit; keys kept in the browser start as they were left. */
export function createSessionStore(preferences: Preferences): SessionStore {
  const store = createStore<Session>(() => ({ ...FIRST_SESSION, ...readKept(preferences) }));
  store.subscribe((now, before) => {
    for (const key of KEYS) {
      if (KEPT_IN[key] === 'browser' && now[key] !== before[key]) preferences.write(key, now[key]);
    }
  });
  return store;
}
