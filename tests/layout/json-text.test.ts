import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultOfJson, sizeOfJson } from '../../src/layout/json-text.ts';
import { FIXTURE } from '../support/fixture.ts';
import { runs } from '../support/runs.ts';

/** The language's own reader knows what JSON is (ECMA-262, JSON.parse). */
function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

/** A text that is JSON but for a slip or two of the pen. */
const slips = fc
  .tuple(
    fc.oneof(fc.json(), fc.constant(FIXTURE)),
    fc.array(
      fc.tuple(fc.nat(), fc.nat({ max: 2 }), fc.constantFrom(...'{}[],:"\\/0123.eE+-u tfn\n\t\u0001x')),
      { maxLength: 2 },
    ),
  )
  .map(([text, changes]) =>
    changes.reduce((changed, [where, drop, insert]) => {
      const at = where % (changed.length + 1);
      return changed.slice(0, at) + (drop === 2 ? '' : insert) + changed.slice(at + drop);
    }, text),
  );

describe('the fault of a text', () => {
  it.each([
    ['', 1, 1, undefined],
    ['  ', 1, 3, undefined],
    ['{"a": 1,}', 1, 9, '}'],
    ['{"a": 1\n "b": 2}', 2, 2, '"'],
    ['[1, 2', 1, 6, undefined],
    ['[1, 02]', 1, 6, '2'],
    ['[1.]', 1, 3, '.'],
    ['{\r\n  a: 1}', 2, 3, 'a'],
    ['[tru]', 1, 5, ']'],
    ['["a\nb"]', 1, 4, '\n'],
    ['["\\x"]', 1, 3, '\\'],
    ['{} {}', 1, 4, '{'],
    ['[1}', 1, 3, '}'],
    ['[😀]', 1, 2, '😀'],
    ["{'a': 1}", 1, 2, "'"],
    ['NaN', 1, 1, 'N'],
  ])('%j: line %d, column %d', (text, line, column, found) => {
    expect(faultOfJson(text)).toEqual({ line, column, ...(found !== undefined && { found }) });
  });

  it('is there exactly where the language does not read the text', () => {
    fc.assert(
      fc.property(slips, (text) => {
        expect(faultOfJson(text) === undefined).toBe(isJson(text));
      }),
      runs(2000),
    );
  });

  it('is found in a text of any depth and any length of string', () => {
    expect(faultOfJson('['.repeat(1_000_000))).toEqual({ line: 1, column: 1_000_001 });
    expect(faultOfJson(`"${'a\\n'.repeat(1_000_000)}`)).toEqual({ line: 1, column: 3_000_002 });
  });
});

describe('the size of a text', () => {
  it.each([
    ['1', 0],
    ['[]', 1],
    ['{"a": [{"b": []}]}', 4],
    ['"[[[\\"[["', 0],
    ['["\\\\", [1]]', 2],
  ])('%s is %d deep', (text, depth) => {
    expect(sizeOfJson(text).depth).toBe(depth);
  });

  it('counts no fewer values than there are, and at most twice as many', () => {
    const count = (value: unknown): number =>
      typeof value === 'object' && value !== null
        ? Object.values(value).reduce<number>((sum, inner) => sum + count(inner), 1)
        : 1;
    fc.assert(
      fc.property(fc.json(), (text) => {
        const values = count(JSON.parse(text));
        expect(sizeOfJson(text).values).toBeGreaterThanOrEqual(values);
        expect(sizeOfJson(text).values).toBeLessThanOrEqual(2 * values);
      }),
    );
  });
});
