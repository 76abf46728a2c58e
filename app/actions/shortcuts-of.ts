import { type KeyChoices, USUAL_KEYS, type WithKeys } from './key-choices.ts';
import type { Shortcut } from './shortcut.ts';

/** Whether it is typed without Ctrl or Alt: a voice or a slip types it as well. */
const isLetter = ({ key, mod, alt }: Shortcut): boolean => key.length === 1 && !mod && !alt;

/** The keys of an action as they are now. */
export function shortcutsOf(
  { id, shortcuts = [] }: WithKeys,
  { own, noLetters }: KeyChoices,
): readonly Shortcut[] {
  const chosen = own[id] ? [own[id]] : shortcuts;
  return noLetters ? chosen.filter((shortcut) => !isLetter(shortcut)) : chosen;
}

/** What was kept as choices of keys; the usual keys where it is none. */
export function soundKeys(kept: unknown): KeyChoices {
  const { own, noLetters } = (kept ?? {}) as Record<string, unknown>;
  const isSound =
    typeof noLetters === 'boolean' &&
    own instanceof Object &&
    Object.values(own).every((shortcut) => typeof shortcut?.key === 'string');
  return isSound ? (kept as KeyChoices) : USUAL_KEYS;
}
