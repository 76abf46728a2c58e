/** What most ids are: hundreds of them stand in the key of a reminder. */
const PLAIN = /^[A-Za-z0-9_.~-]*$/;

/**
 * Text as it stands in the key of a note, between its slashes. Ids may hold any text, half surrogate pairs included,
 * which the language's own escaping refuses.
 */
export const escapeKeyPart = (text: string): string =>
  PLAIN.test(text)
    ? text
    : text.replace(/[^A-Za-z0-9_.~-]/g, (unit) => `%${unit.charCodeAt(0).toString(16)}`);

/** The key of a note on one voltage, which ends in it, once that voltage is called otherwise; others as they are. */
export function renamedInKey(key: string, from: string, to: string): string {
  const parts = key.split('/');
  if (parts.length !== 3 || parts[2] !== escapeKeyPart(from)) return key;
  return [parts[0], parts[1], escapeKeyPart(to)].join('/');
}
