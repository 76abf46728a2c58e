/** One thing that makes a document unusable, and where it stands. */
export interface Issue {
  /** As in `takes[0].modules[3].kind`; empty for the document itself. */
  readonly path: string;
  readonly message: string;
}

const MOST_QUOTED = 60;

/** A name from a file in quotes: on one line, and not longer than a line can bear. */
export function quote(text: string): string {
  const cut = text.length > MOST_QUOTED ? `${text.slice(0, MOST_QUOTED)}…` : text;
  return JSON.stringify(cut).replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, ' ');
}

const PLAIN_KEY = /^[A-Za-z_$][\w$]*$/;

/** A path of keys and indices as people write it. */
export const pathOf = (keys: readonly (string | number)[]): string =>
  keys.reduce<string>((path, key) => {
    if (typeof key === 'number') return `${path}[${key}]`;
    if (!PLAIN_KEY.test(key)) return `${path}[${quote(key)}]`;
    return path === '' ? key : `${path}.${key}`;
  }, '');

export const didYouMean = (near: string | undefined): string =>
  near === undefined ? '' : `; did you mean ${quote(near)}?`;
