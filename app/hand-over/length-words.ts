/** Beyond this some chats cut a link in two, or do not take it as one (common practice, no source). */
const LONG_LINK = 2000;

/**
 * A QR code of version 25 holds so many bytes with a fair reserve against dirt (ISO/IEC 18004, table 7, level M); the
 * marks of denser ones are too small for many cameras.
 */
export const MOST_IN_QR = 997;

const thousands = (count: number): string => count.toLocaleString('en-GB');

/** How long a link is, and what to think of it. */
export function lengthWords({ length }: string): { readonly text: string; readonly isLong: boolean } {
  const text = `${thousands(length)} characters.`;
  if (length <= LONG_LINK) return { text, isLong: false };
  return { text: `${text} Some chats cut links this long: a file is safer.`, isLong: true };
}

/** Why there is no QR code for a link; undefined where there is one. */
export const noQrWords = ({ length }: string): string | undefined =>
  length <= MOST_IN_QR
    ? undefined
    : `Too long for a QR code: it holds ${thousands(MOST_IN_QR)} characters, the link has ${thousands(length)}.`;
