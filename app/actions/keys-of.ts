import type { Shortcut } from './shortcut.ts';

const NAMES: Readonly<Record<string, string>> = {
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  Delete: 'Del',
  Escape: 'Esc',
};

/** A shortcut as it is printed on keys. */
export function keysOf({ key, mod, shift, alt }: Shortcut, apple: boolean): string {
  const name = NAMES[key] ?? (key.length === 1 ? key.toUpperCase() : key);
  if (apple) return `${alt ? '⌥' : ''}${shift ? '⇧' : ''}${mod ? '⌘' : ''}${name}`;
  return [...(mod ? ['Ctrl'] : []), ...(alt ? ['Alt'] : []), ...(shift ? ['Shift'] : []), name].join('+');
}
