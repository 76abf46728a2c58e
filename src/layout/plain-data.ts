import { IssueList } from './issue.ts';
import { OPEN_LIMITS } from './open-limits.ts';
import { quote, sketch } from './quote.ts';

/** Keys that name parts of every object of the language; a program that copies them may be led astray. */
const REFUSED_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/** What there may be too much of in data. */
export type Excess = 'depth' | 'values';

/**
 * Looks whether data is what JSON can say, of bounded size, with finite numbers and without keys that no file may
 * use. Gives what there is too much of, else the issues, if any.
 */
export function surveyData(data: unknown): Excess | IssueList {
  const survey = new Survey();
  return survey.look(data) ?? survey.issues;
}

class Survey {
  readonly issues = new IssueList();
  readonly #path: (string | number)[] = [];
  #values = 0;

  look(value: unknown): Excess | undefined {
    if (++this.#values > OPEN_LIMITS.values.most) return 'values';
    if (!isJson(value)) this.#report(value);
    if (typeof value !== 'object' || value === null) return undefined;
    if (this.#path.length >= OPEN_LIMITS.depth.most) return 'depth';
    return Array.isArray(value)
      ? this.#lookInto(value.keys(), value)
      : this.#lookInto(Object.keys(value), value);
  }

  #lookInto(keys: Iterable<string | number>, holder: object): Excess | undefined {
    for (const key of keys) {
      this.#path.push(key);
      if (REFUSED_KEYS.has(key as string)) {
        this.issues.add(this.#path, () => `a key may not be called ${quote(String(key))}`);
      }
      const excess = this.look(holder[key as keyof typeof holder]);
      if (excess) return excess;
      this.#path.pop();
    }
    return undefined;
  }

  #report(value: unknown): void {
    const wanted = typeof value === 'number' ? 'a finite number' : 'something that JSON can say';
    this.issues.add(this.#path, () => `must be ${wanted}, not ${sketch(value)}`);
  }
}

function isJson(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value === 'object') return value === null || Array.isArray(value) || isPlainObject(value);
  return typeof value === 'string' || typeof value === 'boolean';
}

/** Plain objects of any realm: no dates, maps, or objects of a class. */
function isPlainObject(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === null || Object.getPrototypeOf(prototype) === null;
}
