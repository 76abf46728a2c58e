import type { Address } from '../../app/platform/address.ts';
import type { Clipboard, ClipboardEar } from '../../app/platform/clipboard.ts';
import type { Clock } from '../../app/platform/clock.ts';
import type { Files } from '../../app/platform/files.ts';
import type { Preferences } from '../../app/platform/preferences.ts';
import { ok } from '../../src/index.ts';

/** Time passes only when a test says so. */
export function fakeClock(): Clock & { pass(ms: number): void } {
  let now = 0;
  let waiting: { readonly at: number; readonly then: () => void }[] = [];
  return {
    after(ms, then) {
      const entry = { at: now + ms, then };
      waiting.push(entry);
      return () => {
        waiting = waiting.filter((other) => other !== entry);
      };
    },
    pass(ms) {
      now += ms;
      const due = waiting.filter(({ at }) => at <= now);
      waiting = waiting.filter(({ at }) => at > now);
      for (const { then } of due) then();
    },
  };
}

/** Keeps for as long as the page lives. */
export function fakePreferences(kept: Record<string, unknown> = {}): Preferences {
  return {
    read: (key) => ok(kept[key]),
    write: (key, value) => {
      kept[key] = value;
      return ok(undefined);
    },
  };
}

/** A clipboard of the test's own: `press` sends what the browser would send for its keys. */
export function fakeClipboard(): Clipboard & {
  text: string | null;
  press(key: 'copy' | 'cut' | 'paste'): void;
} {
  let ear: ClipboardEar | null = null;
  return {
    text: null,
    put(text) {
      this.text = text;
    },
    kept() {
      return this.text;
    },
    listen(other) {
      ear = other;
      return () => {
        ear = null;
      };
    },
    press(key) {
      if (key === 'paste') ear?.pasted(this.text ?? '');
      else this.text = (key === 'copy' ? ear?.copied() : ear?.cut()) ?? this.text;
    },
  };
}

/** Hands out one text and keeps what is saved. */
export function fakeFiles(text: string | null = null): Files & { readonly saved: Map<string, string> } {
  const saved = new Map<string, string>();
  return {
    saved,
    pick: async () => ok(text),
    read: async (file) => ok(await file.text()),
    save: async (title, content) => {
      saved.set(title, content);
      return ok(true);
    },
  };
}

/** An address of the test's own; `go` puts something else behind its sign. */
export function fakeAddress(page = 'https://example.org/rack/'): Address & { go(fragment: string): void } {
  let fragment = '';
  const ears = new Set<() => void>();
  return {
    whole: () => page + fragment,
    clear: () => {
      fragment = '';
    },
    listen(changed) {
      ears.add(changed);
      return () => ears.delete(changed);
    },
    go(other) {
      fragment = other;
      for (const changed of ears) changed();
    },
  };
}
