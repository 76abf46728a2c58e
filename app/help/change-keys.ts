import type { Action } from '../actions/action.ts';
import type { KeyChoices } from '../actions/key-choices.ts';
import { keysOf } from '../actions/keys-of.ts';
import type { Shortcut } from '../actions/shortcut.ts';
import type { KeyPress } from '../actions/shortcuts.ts';
import { shortcutsOf } from '../actions/shortcuts-of.ts';

/** Keys that the page itself needs everywhere. */
const PAGE_KEYS = ['Escape', 'Tab', 'Enter', ' ', 'ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'];
const HELD = ['Control', 'Shift', 'Alt', 'Meta', 'AltGraph', 'CapsLock', 'Dead', 'Process', 'Unidentified'];

/** What browsers keep for themselves or what everybody expects of them; from memory. */
const BROWSER_WITH_CTRL = [...'lnqrtwf0123456789', 'Tab', 'F4'];
const BROWSER_ALONE = ['F5', 'F6', 'F7', 'F11', 'F12'];

/** Not to be changed: the keys of the drawing and of the clipboard. */
export const isFixed = ({ id, keysOnStageOnly, byClipboard }: Action): boolean =>
  keysOnStageOnly === true || byClipboard === true || id === 'let-go';

/** A press as a shortcut; `undefined` while only Shift and the like are held. */
export function shortcutFrom({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyPress): Shortcut | undefined {
  if (HELD.includes(key)) return undefined;
  const isSign = /^[^\p{L}\p{N}]$/u.test(key);
  return {
    key: key.length === 1 ? key.toLowerCase() : key,
    ...((ctrlKey || metaKey) && { mod: true as const }),
    ...(shiftKey && !isSign && { shift: true as const }),
    ...(altKey && { alt: true as const }),
  };
}

const isSame = (a: Shortcut, b: Shortcut): boolean =>
  a.key === b.key && !a.mod === !b.mod && !a.shift === !b.shift && !a.alt === !b.alt;

interface Wish {
  readonly actions: readonly Action[];
  readonly action: Action;
  readonly wanted: Shortcut;
  readonly choices: KeyChoices;
  readonly labelOf: (action: Action) => string;
}

/** Why an action cannot have this key; `undefined` where it can. */
export function whyNotKey({ actions, action, wanted, choices, labelOf }: Wish): string | undefined {
  const name = keysOf(wanted, false);
  if (PAGE_KEYS.includes(wanted.key)) return `${name} moves about on the page and cannot be changed.`;
  const isBrowsers = wanted.mod
    ? BROWSER_WITH_CTRL.includes(wanted.key)
    : BROWSER_ALONE.includes(wanted.key) || (wanted.alt && wanted.key === 'F4');
  if (isBrowsers) return `${name} belongs to the browser.`;
  if (choices.noLetters && wanted.key.length === 1 && !wanted.mod && !wanted.alt)
    return 'Single letters and signs are turned off: add Ctrl or Alt.';
  // Turned off is not given up: a letter comes back to its owner with the switch.
  const all = { ...choices, noLetters: false };
  const owner = actions.find(
    (one) => one.id !== action.id && shortcutsOf(one, all).some((key) => isSame(key, wanted)),
  );
  return owner && `${name} already does this: ${labelOf(owner)}.`;
}

/** The choices with another key for an action; without one, with its usual keys. */
export const withKey = (choices: KeyChoices, id: string, key?: Shortcut): KeyChoices => {
  const { [id]: _, ...others } = choices.own;
  return { ...choices, own: key ? { ...others, [id]: key } : others };
};
