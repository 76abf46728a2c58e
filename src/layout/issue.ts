import { quote } from './quote.ts';

/** One thing that makes a document unusable, and where it stands. */
export interface Issue {
  /** As in `takes[0].modules[3].kind`; empty for the document itself. */
  readonly path: string;
  readonly message: string;
}

/** Keys and indices that lead from the document to a place in it. */
export type Path = readonly (string | number)[];

/** Longer keys stand in quotes, which cut them. */
const PLAIN_KEY = /^[A-Za-z_$][\w$]{0,39}$/;

function step(key: string | number): string {
  if (typeof key === 'number') return `[${key}]`;
  return PLAIN_KEY.test(key) ? `.${key}` : `[${quote(key)}]`;
}

const pathText = (path: Path): string => path.map(step).join('').replace(/^\./, '');

const MOST_KEPT = 50;

/** Counts issues and keeps the first: one broken kind can break a thousand modules. */
export class IssueList {
  readonly kept: Issue[] = [];
  /** Where those that are kept stand. */
  readonly places: Path[] = [];
  total = 0;

  /** Words are made only where they are kept, as looking for what was meant takes time. */
  add(path: Path, words: () => string): void {
    this.total++;
    if (this.kept.length >= MOST_KEPT) return;
    this.kept.push({ path: pathText(path), message: words() });
    this.places.push(path);
  }
}
