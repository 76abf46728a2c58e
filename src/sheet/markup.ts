/** A piece of HTML or SVG in which everything that came from a document is escaped already. */
export class Markup {
  readonly text: string;

  constructor(text: string) {
    this.text = text;
  }
}

/** What may stand in a template: text and figures are escaped, lists joined, nothing left out. */
export type MarkupPart = string | number | Markup | readonly MarkupPart[] | null | undefined | false;

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Characters that XML forbids: a drawing with one of them would not open. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: those are what is looked for.
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

/** Half of a pair without the other. */
const LONE_HALF = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Signs that turn round what follows them: "stripe down" must not read another way because of a name before it. */
const TURNING = /[\u202a-\u202e\u2066-\u2069]/g;

/** More marks on a letter than any script has: they would reach over the lines above. */
const HEAPED_MARKS = /(\p{M}{4})\p{M}+/gu;

const escaped = (text: string): string =>
  text
    .replace(TURNING, '')
    .replace(HEAPED_MARKS, '$1')
    .replace(FORBIDDEN, '\ufffd')
    .replace(LONE_HALF, '\ufffd')
    .replace(/[&<>"']/g, (sign) => ESCAPES[sign] as string);

function textOf(part: MarkupPart): string {
  if (part === null || part === undefined || part === false) return '';
  if (part instanceof Markup) return part.text;
  if (typeof part === 'string') return escaped(part);
  if (typeof part === 'number') return String(part);
  return part.map(textOf).join('');
}

/** HTML or SVG from a template; names that people typed cannot break out of it. */
export const markup = (strings: TemplateStringsArray, ...parts: readonly MarkupPart[]): Markup =>
  new Markup(strings.reduce((text, string, i) => `${text}${textOf(parts[i - 1])}${string}`));
