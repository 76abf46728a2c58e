import { type Issue, pathOf, quote } from './issue.ts';

/**
 * Caps for documents that were made to be slow. The largest case of the benchmark (10,000 modules) takes a
 * tenth of these.
 */
const MOST_CHARACTERS = 32_000_000;
const MOST_VALUES = 4_000_000;
const DEEPEST = 64;

const QUOTE = 34;
const BACKSLASH = 92;
const OPENING = new Set([91, 123]);
const CLOSING = new Set([93, 125]);

/**
 * What is wrong with a text before it is parsed: too long, or nested so deeply that parsing it could fail for
 * want of stack. Strings are skipped, as they may hold brackets.
 */
export function textTooBig(text: string): string | undefined {
  if (text.length > MOST_CHARACTERS) return `longer than ${MOST_CHARACTERS / 1e6} million characters`;
  let depth = 0;
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (inString) {
      if (code === BACKSLASH) i++;
      else if (code === QUOTE) inString = false;
    } else if (code === QUOTE) inString = true;
    else if (OPENING.has(code)) {
      depth++;
      if (depth > DEEPEST) return `nested deeper than ${DEEPEST} levels`;
    } else if (CLOSING.has(code)) depth--;
  }
  return undefined;
}

/** Keys that name parts of every object of the language; a program that copies them may be led astray. */
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

interface Place {
  readonly value: object;
  readonly keys: readonly (string | number)[];
}

/** What is wrong with parsed data before it is judged: too many values, too deep, or keys that no file may use. */
export function dataTrouble(data: unknown): { tooBig: string } | { issue: Issue } | undefined {
  const open: Place[] = [];
  let values = 0;
  const look = (value: unknown, keys: readonly (string | number)[]): void => {
    if (typeof value === 'object' && value !== null) open.push({ value, keys });
  };
  look(data, []);
  for (let place = open.pop(); place; place = open.pop()) {
    const { value, keys } = place;
    if (keys.length > DEEPEST) return { tooBig: `nested deeper than ${DEEPEST} levels` };
    const entries = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
    values += entries.length;
    if (values > MOST_VALUES) return { tooBig: `holds more than ${MOST_VALUES / 1e6} million values` };
    for (const [key, child] of entries) {
      if (typeof key === 'string' && FORBIDDEN.has(key)) {
        return { issue: { path: pathOf(keys), message: `a key may not be called ${quote(key)}` } };
      }
      look(child, [...keys, key]);
    }
  }
  return undefined;
}
