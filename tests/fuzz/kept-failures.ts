import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import fc from 'fast-check';
import type { runs } from '../support/runs.ts';

const FOLDER = new URL('../fixtures/fuzz/', import.meta.url);

type Sort = 'document' | 'link' | 'table';

/** Texts that once made something fail; they are tried for ever. */
export const keptFailures = (sort: Sort): readonly (readonly [name: string, text: string])[] =>
  readdirSync(FOLDER)
    .filter((name) => name.startsWith(`${sort}-`))
    .map((name) => [name, readFileSync(new URL(name, FOLDER), 'utf8')] as const);

/** Tries texts of a sort; one that fails is told with its seed, and becomes a fixture as short as it could be made. */
export function tryAll(
  sort: Sort,
  texts: fc.Arbitrary<string>,
  holds: (text: string) => void,
  how: ReturnType<typeof runs>,
): void {
  const details = fc.check(fc.property(texts, holds), how);
  if (!details.failed) return;
  const text = details.counterexample?.[0];
  if (text !== undefined) {
    const mark = createHash('sha256').update(text).digest('hex').slice(0, 12);
    writeFileSync(new URL(`${sort}-${mark}.txt`, FOLDER), text);
  }
  throw new Error(fc.defaultReportMessage(details) ?? 'it failed');
}
