import { fail, ok, type Result } from '../../src/index.ts';

/** What the browser keeps between visits; small, and never part of a layout. */
export interface Preferences {
  /** `undefined` where nothing was kept. */
  read(key: string): Result<unknown, string>;
  write(key: string, value: unknown): Result<void, string>;
}

const PREFIX = 'ribbonwright.';

/** Even to ask for the storage throws where the browser forbids it, so it is asked for anew each time. */
export function browserPreferences(storage: () => Storage = () => window.localStorage): Preferences {
  return {
    read(key) {
      try {
        const text = storage().getItem(PREFIX + key);
        return ok(text === null ? undefined : (JSON.parse(text) as unknown));
      } catch (error) {
        return fail(String(error));
      }
    },
    write(key, value) {
      try {
        storage().setItem(PREFIX + key, JSON.stringify(value));
        return ok(undefined);
      } catch (error) {
        return fail(String(error));
      }
    },
  };
}
