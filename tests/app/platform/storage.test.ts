import { describe, expect, test } from 'vitest';
import { browserShelf } from '../../../app/platform/storage.ts';

/** As much of the browser's store as the shelf asks of it; each connection may be bad in its own way. */
function factoryOf(...connections: readonly (string | null)[]): {
  factory: () => IDBFactory;
  opened: () => number;
} {
  let count = 0;
  const soon = (then: () => void): void => void setTimeout(then, 0);
  const connection = (fault: string | null) => ({
    close() {},
    transaction() {
      if (fault === 'InvalidStateError') throw new DOMException('closing', fault);
      const transaction = {
        error: fault && new DOMException('no', fault),
        oncomplete: () => {},
        onabort: () => {},
        objectStore: () => ({
          put() {},
          get() {
            const request = { result: { id: 'a' }, onsuccess: () => {} };
            soon(() => request.onsuccess());
            return request;
          },
        }),
      };
      setTimeout(() => (fault ? transaction.onabort() : transaction.oncomplete()), 5);
      return transaction;
    },
  });
  const open = () => {
    const fault = connections[count++] ?? null;
    const request = {
      result: connection(fault),
      error: null as unknown,
      onsuccess: () => {},
      onerror: () => {},
    };
    soon(() => {
      if (fault !== 'VersionError') return request.onsuccess();
      request.error = new DOMException('newer', fault);
      request.onerror();
    });
    return request;
  };
  return { factory: () => ({ open }) as unknown as IDBFactory, opened: () => count };
}

describe('the shelf', () => {
  test('gives what is there', async () => {
    const { factory, opened } = factoryOf(null);
    const shelf = browserShelf(factory);
    expect(await shelf.read('a')).toEqual({ ok: true, value: { id: 'a' } });
    await shelf.read('a');
    expect(opened()).toBe(1);
  });

  test('opens a connection anew that has died, once', async () => {
    const dying = factoryOf('InvalidStateError', null);
    expect((await browserShelf(dying.factory).read('a')).ok).toBe(true);
    const dead = factoryOf('InvalidStateError', 'InvalidStateError', null);
    expect(await browserShelf(dead.factory).read('a')).toEqual({ ok: false, error: 'blocked' });
    expect(dead.opened()).toBe(2);
  });

  test.each([
    ['QuotaExceededError', 'full'],
    ['VersionError', 'newer'],
    ['DataError', 'broken'],
  ])('%s: %s', async (name, fault) => {
    const shelf = browserShelf(factoryOf(name).factory);
    expect(await shelf.change('a', () => ({ id: 'a' }))).toEqual({ ok: false, error: fault });
    expect((await shelf.read('a')).ok).toBe(true);
  });

  test('never throws where the browser forbids even to ask', async () => {
    const shelf = browserShelf(() => {
      throw new DOMException('forbidden', 'SecurityError');
    });
    expect(await shelf.all()).toEqual({ ok: false, error: 'blocked' });
    shelf.putNow({ id: 'a' });
    const without = browserShelf(() => undefined as unknown as IDBFactory);
    expect(await without.all()).toEqual({ ok: false, error: 'blocked' });
  });
});
