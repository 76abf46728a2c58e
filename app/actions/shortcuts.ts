import { type KeyChoices, USUAL_KEYS, type WithKeys } from './key-choices.ts';
import type { Shortcut } from './shortcut.ts';
import { shortcutsOf } from './shortcuts-of.ts';

/** What a browser says of a key press, as far as it matters here. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

const keyOf = ({ key }: KeyPress): string => (key.length === 1 ? key.toLowerCase() : key);

/** On many keyboards a sign is typed with Shift. */
const isSign = (key: string): boolean => /^[^\p{L}\p{N}]$/u.test(key);

const fits = (press: KeyPress, { key, mod, shift, alt }: Shortcut): boolean =>
  keyOf(press) === key &&
  (press.ctrlKey || press.metaKey) === (mod === true) &&
  (press.shiftKey === (shift === true) || isSign(key)) &&
  press.altKey === (alt === true);

/** Whether a press is one of the keys of something. */
export const isKeyOf = (one: WithKeys, press: KeyPress, choices: KeyChoices): boolean =>
  shortcutsOf(one, choices).some((shortcut) => fits(press, shortcut));

export const actionFor = <T extends WithKeys>(
  all: readonly T[],
  press: KeyPress,
  choices: KeyChoices = USUAL_KEYS,
): T | undefined => all.find((one) => isKeyOf(one, press, choices));
