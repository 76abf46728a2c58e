import type { Shortcut } from './shortcut.ts';

/** What the user has made of the keys; kept on the device. */
export interface KeyChoices {
  /** By the action's id. */
  readonly own: Readonly<Record<string, Shortcut>>;
  /** Letters, figures and signs alone start nothing (WCAG 2.2, 2.1.4). */
  readonly noLetters: boolean;
}

export const USUAL_KEYS: KeyChoices = { own: {}, noLetters: false };

/** What of an action its keys depend on. */
export interface WithKeys {
  readonly id: string;
  readonly shortcuts?: readonly Shortcut[];
}
