import { execFileSync } from 'node:child_process';

/** What a PDF holds, read by Debian's poppler (package poppler-utils). */
export interface ReadPdf {
  /** By page, without white space, in the order in which it was printed. */
  readonly texts: readonly string[];
  /** By page, mm. */
  readonly sizes: readonly { readonly widthMm: number; readonly heightMm: number }[];
}

const MM_PER_POINT = 25.4 / 72;

function poppler(command: string, args: readonly string[]): string {
  try {
    return execFileSync(command, args, { encoding: 'utf8', maxBuffer: 2 ** 26 });
  } catch (reason) {
    if ((reason as NodeJS.ErrnoException).code !== 'ENOENT') throw reason;
    throw new Error(`${command} is missing: install poppler-utils.`);
  }
}

/** Without white space: where a line breaks is no part of a name. */
export const bare = (text: string): string => text.replace(/\s+/gu, '');

export function readPdf(file: string): ReadPdf {
  const info = poppler('pdfinfo', ['-f', '1', '-l', '9999', file]);
  const sizes = Array.from(
    info.matchAll(/^Page\s+\d+ size:\s+([\d.]+) x ([\d.]+) pts/gm),
    ([, width, height]) => ({
      widthMm: Number(width) * MM_PER_POINT,
      heightMm: Number(height) * MM_PER_POINT,
    }),
  );
  const text = poppler('pdftotext', ['-raw', '-enc', 'UTF-8', file, '-']);
  return { sizes, texts: text.split('\f').slice(0, sizes.length).map(bare) };
}

/** A word of a PDF and the middle of its box, from the top left corner of its page. */
export interface Word {
  readonly text: string;
  readonly xMm: number;
  readonly yMm: number;
}

/** The words of each page. */
export function readWords(file: string): readonly (readonly Word[])[] {
  const pages = poppler('pdftotext', ['-bbox', '-enc', 'UTF-8', file, '-']).split('<page ').slice(1);
  const word = /<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)</g;
  const middle = (a: string | undefined, b: string | undefined): number =>
    ((Number(a) + Number(b)) / 2) * MM_PER_POINT;
  return pages.map((page) =>
    Array.from(page.matchAll(word), ([, left, top, right, bottom, text = '']) => ({
      text,
      xMm: middle(left, right),
      yMm: middle(top, bottom),
    })),
  );
}
