import type { KeyChoices } from '../actions/key-choices.ts';
import { keysOf } from '../actions/keys-of.ts';
import type { Shortcut } from '../actions/shortcut.ts';
import type { KeyPress } from '../actions/shortcuts.ts';
import { shortcutsOf } from '../actions/shortcuts-of.ts';
import type { Keyed } from './key-list.ts';

/** Keys that the page itself needs everywhere. */
const PAGE_KEYS = ['Escape', 'Tab', 'Enter', ' ', 'ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'];
const HELD = ['Control', 'Shift', 'Alt', 'Meta', 'AltGraph', 'CapsLock', 'Dead', 'Process', 'Unidentified'];

/** What browsers keep for themselves or what everybody expects of them; from memory. */
const BROWSER_WITH_CTRL = [...'lnqrtwf0123456789', 'Tab', 'F4'];
const BROWSER_ALONE = ['F5', 'F6', 'F7', 'F11', 'F12'];

/** Not to be changed: arrows and Escape, which the whole page goes by, and the clipboard's, which the browser tells of. */
export const isFixed = ({ shortcuts = [], byClipboard }: Keyed): boolean =>
  byClipboard === true || shortcuts.some(({ key }) => PAGE_KEYS.includes(key));

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
  readonly of: Keyed;
  readonly all: readonly Keyed[];
  readonly wanted: Shortcut;
  readonly choices: KeyChoices;
  /** Whether keys are printed the Apple way. */
  readonly apple: boolean;
}

/** Whether keys of both can count at once: while a ribbon is drawn no command listens that would not while dragging. */
const meet = (a: Keyed, b: Keyed): boolean =>
  a.isHeld === b.isHeld || a.whileDragging === true || b.whileDragging === true;

/** What has a key already. Turned off is not given up: a letter comes back to its owner with the switch. */
function ownerOf({ of, all, wanted, choices, apple }: Wish): string | undefined {
  const lettersOn = { ...choices, noLetters: false };
  const owner = all.find(
    (one) =>
      one.id !== of.id && meet(of, one) && shortcutsOf(one, lettersOn).some((key) => isSame(key, wanted)),
  );
  return owner && `${keysOf(wanted, apple)} already does this: ${owner.label}.`;
}

/** Why an action cannot have this key; `undefined` where it can. */
export function whyNotKey(wish: Wish): string | undefined {
  const { wanted, choices, apple } = wish;
  const name = keysOf(wanted, apple);
  if (PAGE_KEYS.includes(wanted.key)) return `${name} moves about on the page and cannot be changed.`;
  const isBrowsers = wanted.mod
    ? BROWSER_WITH_CTRL.includes(wanted.key)
    : BROWSER_ALONE.includes(wanted.key) || (wanted.alt && wanted.key === 'F4');
  if (isBrowsers) return `${name} belongs to the browser.`;
  if (choices.noLetters && wanted.key.length === 1 && !wanted.mod && !wanted.alt)
    return 'Single letters and signs are turned off: add Ctrl or Alt.';
  return ownerOf(wish);
}

/** Why something cannot have its usual keys again; `undefined` where it can. */
export const whyNotUsual = (wish: Omit<Wish, 'wanted'>): string | undefined =>
  wish.of.shortcuts?.map((wanted) => ownerOf({ ...wish, wanted })).find(Boolean);

/** The choices with another key for an action; without one, with its usual keys. */
export const withKey = (choices: KeyChoices, id: string, key?: Shortcut): KeyChoices => {
  const { [id]: _, ...others } = choices.own;
  return { ...choices, own: key ? { ...others, [id]: key } : others };
};
