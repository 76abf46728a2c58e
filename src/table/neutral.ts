/** What a spreadsheet takes for a formula or a command, wide signs too, with whatever apostrophes stand before it. */
const RISKY = /^'*[=+\-@\t\r\n＝＋－＠]/u;

/** Text that a spreadsheet shows and does not carry out. */
export const neutralised = (text: string): string => (RISKY.test(text) ? `'${text}` : text);

/** The text before it was neutralised. */
export const restored = (text: string): string =>
  /^'+[=+\-@\t\r\n＝＋－＠]/u.test(text) ? text.slice(1) : text;
