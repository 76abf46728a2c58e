/*
 * Guesses at how names go on. Every machine must guess the same, so names with letters beyond the Latin ones are left
 * alone: which of those are letters, and which are small, is known better by newer machines. Long texts are no names.
 */

const LONGEST = 200;
/** The end of the Latin letters that every machine changes between small and capital alike. */
const LAST_PLAIN = '\u024f';

const isPlain = (text: string): boolean =>
  text.length <= LONGEST && [...text].every((letter) => letter <= LAST_PLAIN);

/** With one of its numbers raised by one, or else with the letter after its last one, where that stands alone. */
function raised(text: string | undefined, number: RegExp): string | undefined {
  if (text === undefined || text.length > LONGEST) return undefined;
  const [digits] = number.exec(text) ?? [];
  if (digits !== undefined) {
    if (digits.length > 9) return undefined;
    return text.replace(number, String(Number(digits) + 1).padStart(digits.length, '0'));
  }
  const [last] = /(?<![a-z])[a-y]$/i.exec(text) ?? [];
  return last && text.slice(0, -1) + String.fromCharCode(last.charCodeAt(0) + 1);
}

/** `cobble-3` → `cobble-4`, `Jetty A` → `Jetty B`. */
export const next = (text: string | undefined): string | undefined => raised(text, /\d+(?=\D*$)/);

/** By its first number: `Bus, 2 at 5` → `Bus, 3 at 5`. */
export const nextByFirst = (text: string | undefined): string | undefined => raised(text, /\d+/);

/** `Upper row` → `upper-row`, as ids are made of names. */
export const idOf = (name: string | undefined): string | undefined =>
  name === undefined || !isPlain(name)
    ? undefined
    : (name.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []).join('-');

/** `jetty-a` → `Jetty A`. */
export const nameOf = (id: string | undefined): string | undefined =>
  id === undefined || !isPlain(id)
    ? undefined
    : id
        .split('-')
        .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
        .join(' ');
