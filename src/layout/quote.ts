const MOST_SHOWN = 60;

/** What would break a line, hide text or turn its order round: controls, format characters, separators. */
const UNSEEN = /[\p{C}\p{Zl}\p{Zp}]/gu;

const escaped = (character: string): string =>
  character.replace(/[\s\S]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);

/** A name from a file in quotes: on one line, nothing unseen in it, and not longer than a line can bear. */
export function quote(text: string): string {
  const start = [...text.slice(0, 2 * MOST_SHOWN)].slice(0, MOST_SHOWN).join('');
  const cut = start.length < text.length ? `${start}…` : text;
  return JSON.stringify(cut).replace(UNSEEN, escaped);
}

/** A sentence with words from a file in it, on one line and with nothing unseen. */
export const onOneLine = (text: string): string => text.replace(/\s+/g, ' ').replace(UNSEEN, escaped);

/** A value from a file in a few words; lists and objects by their sort only. */
export function sketch(value: unknown): string {
  if (value === null) return 'nothing (null)';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'string') return quote(value);
  if (typeof value === 'object') return 'an object';
  return typeof value === 'function' ? 'a function' : String(value);
}
