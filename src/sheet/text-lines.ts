/*
 * Text on paper is cut into lines here and not by the browser, so that the height of everything is known before it is
 * printed, whatever letters the reader's machine has. Widths are those of a wide family of letters (DejaVu Sans, read
 * off and rounded up); narrower ones leave some room.
 */

const NARROWEST = /[ijl.,' |]/u;
const NARROW = /[;:!()[\]\sftrIJ/\\`-]/u;
const WIDE = /[mwMW@%\u2014\u2026\u0152\u0153\u00c6\u00e6]/u;
const BROAD = /[&#+=<>~\u2212\u2190-\u2193]/u;
const CAPITAL = /[A-Z]/u;
const MARK = /[\p{M}\p{Cf}]/u;

/** Width of a sign, in heights of its letters. */
function signWidth(sign: string): number {
  const code = sign.codePointAt(0) as number;
  if (MARK.test(sign)) return 0;
  if (NARROWEST.test(sign)) return 0.34;
  if (NARROW.test(sign)) return 0.42;
  if (WIDE.test(sign)) return 1.02;
  if (CAPITAL.test(sign)) return 0.8;
  if (BROAD.test(sign)) return 0.86;
  if (code < 0x80) return 0.64;
  if (code < 0x2e80) return code >= 0x600 && code < 0x2000 ? 1.1 : 0.9;
  if (code >= 0xfb50 && code < 0xfe00) return code >= 0xfdf0 ? 12 : 1.6;
  return code > 0xffff ? 1.45 : 1.1;
}

/** Bold letters are so much wider. */
const BOLD = 1.12;

const signs = new Intl.Segmenter('en', { granularity: 'grapheme' });

const signsOf = (text: string): string[] => Array.from(signs.segment(text), ({ segment }) => segment);

const widthOfSigns = (text: string): number => {
  let width = 0;
  for (const sign of text) width += signWidth(sign);
  return width;
};

export interface Letters {
  readonly sizeMm: number;
  readonly bold?: boolean;
}

/** How wide a text is at most, mm. */
export const textMm = (text: string, { sizeMm, bold }: Letters): number =>
  widthOfSigns(text) * sizeMm * (bold ? BOLD : 1);

/** What takes up less of a line than this share stands alone on none. */
const ALONE = 0.3;

/** Cuts a word that has no room on a line. */
function piecesOf(word: string, room: number): string[] {
  const pieces: string[] = [];
  let piece = '';
  let width = 0;
  for (const sign of signsOf(word)) {
    const wide = widthOfSigns(sign);
    if (piece !== '' && width + wide > room) {
      pieces.push(piece);
      piece = '';
      width = 0;
    }
    piece += sign;
    width += wide;
  }
  return piece === '' ? pieces : [...pieces, piece];
}

/** A text in lines of at most that width, broken between words, and within those that are too long; never cut off. */
export function linesOf(text: string, widthMm: number, letters: Letters): string[] {
  const room = widthMm / (letters.sizeMm * (letters.bold ? BOLD : 1));
  const lines: string[] = [];
  let line = '';
  let width = 0;
  const space = signWidth(' ');
  for (const word of text.split(/\s+/u).filter(Boolean)) {
    const wide = widthOfSigns(word);
    if (line !== '' && width + space + wide <= room) {
      line += ` ${word}`;
      width += space + wide;
      continue;
    }
    // A word that has no line to itself begins behind a sign that would else stand alone.
    const isLong = wide > room;
    const ahead = isLong && line !== '' && width + space < room * ALONE ? `${line} ` : '';
    if (line !== '' && ahead === '') lines.push(line);
    const pieces = isLong ? piecesOf(ahead + word, room) : [word];
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
    width = widthOfSigns(line);
  }
  return line === '' && lines.length > 0 ? lines : [...lines, line];
}
