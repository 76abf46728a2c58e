import type { Shortcut } from './shortcut.ts';

/** What the user has made of the keys; kept on the device. */
export interface KeyChoices {
  /** By the action's id. */
  readonly own: Readonly<Record<string, Shortcut>>;
  /** Letters, figures and signs alone start nothing (WCAG 2.2, 2.1.4). */
  readonly noLetters: boolean;
}

export const USUAL_KEYS: KeyChoices = { own: {}, noLetters: false };

/** Whether it is typed without Ctrl or Alt: a voice or a slip types it as well. */
const isLetter = ({ key, mod, alt }: Shortcut): boolean => key.length === 1 && !mod && !alt;

interface WithKeys {
  readonly id: string;
  readonly shortcuts?: readonly Shortcut[];
}

/** The keys of an action as they are now. */
export function shortcutsOf(
  { id, shortcuts = [] }: WithKeys,
  { own, noLetters }: KeyChoices,
): readonly Shortcut[] {
  const chosen = own[id] ? [own[id]] : shortcuts;
  return noLetters ? chosen.filter((shortcut) => !isLetter(shortcut)) : chosen;
}
