import type { Action } from './action.ts';
import { type KeyChoices, USUAL_KEYS } from './key-choices.ts';
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

export const actionFor = (
  actions: readonly Action[],
  press: KeyPress,
  choices: KeyChoices = USUAL_KEYS,
): Action | undefined =>
  actions.find((action) => shortcutsOf(action, choices).some((shortcut) => fits(press, shortcut)));
