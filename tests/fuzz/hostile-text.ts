import fc from 'fast-check';
import { demoLayout } from '../../src/layout/demo.ts';
import { linkOf } from '../../src/share/link.ts';
import { FIXTURE } from '../support/fixture.ts';
import { linkAround, linkAroundData } from '../support/link-around.ts';

/*
 * Documents and links that somebody changed: bytes that are gone, doubled or turned, and values that nobody expects in a
 * place where another one should be. All of them follow from numbers, so that a shrunk failure can be walked again.
 */

const DEMO = JSON.stringify(demoLayout());
const TEXTS = [FIXTURE, DEMO];

/** What stands where something else should. */
const NASTY: readonly unknown[] = [
  null,
  true,
  -1,
  0.1 + 0.2,
  1e308,
  -0,
  2 ** 53,
  '',
  'x'.repeat(3000),
  '\u202eright to left\u2066',
  '\ud800',
  '__proto__',
  'constructor',
  '</script><script>alert(1)</script>',
  [],
  {},
  [[[[[[[[[[]]]]]]]]]],
  { id: 'a', kind: {} },
  Array.from({ length: 500 }, (_, i) => i),
  { draws: { '+12': 1e9 }, headers: null },
];

const CUTS = [
  '',
  '{',
  '}',
  '[',
  ']',
  '"',
  ',',
  ':',
  '\\u0000',
  '1e999',
  'null',
  '\u2028',
  '{"__proto__":{"x":1}}',
];

type Numbers = readonly number[];

/** A walk into the data, and what is put there. */
function withNastyValue(text: string, [at = 0, what = 0, how = 0, ...steps]: Numbers): string {
  const data: unknown = JSON.parse(text);
  let holder = data as Record<string, unknown>;
  for (const step of steps) {
    const inner = Object.values(holder).filter((value) => typeof value === 'object' && value !== null);
    if (inner.length === 0) break;
    holder = inner[step % inner.length] as Record<string, unknown>;
  }
  const keys = Object.keys(holder);
  const key = keys[at % Math.max(1, keys.length)] ?? 'later';
  const deeds = [
    () => {
      holder[key] = NASTY[what % NASTY.length];
    },
    () => {
      if (Array.isArray(holder)) holder.push(...structuredClone(holder));
      else delete holder[key];
    },
    () => {
      holder[JSON.stringify(NASTY[what % NASTY.length]).slice(0, 60)] = holder[key];
    },
    () => {
      if (Array.isArray(holder)) holder.reverse();
      else holder[key] = holder[keys[what % keys.length] ?? ''];
    },
  ];
  deeds[how % deeds.length]?.();
  return JSON.stringify(data);
}

function damaged(text: string, [how = 0, at = 0, long = 0, what = 0]: Numbers): string {
  const from = at % (text.length + 1);
  const to = Math.min(text.length, from + (long % 200));
  const put = CUTS[what % CUTS.length] ?? '';
  const ways = [
    () => text.slice(0, from),
    () => text.slice(0, from) + put + text.slice(to),
    () => text.slice(0, to) + text.slice(from, to) + text.slice(to),
    () => text.slice(from),
    () => text.slice(0, from) + String.fromCharCode(long % 65_536) + text.slice(from + 1),
    () => put.repeat((long * 37) % 20_000) + text,
  ];
  return ways[how % ways.length]?.() ?? text;
}

const number = fc.nat({ max: 99_999 });
const numbers = fc.array(number, { minLength: 4, maxLength: 9 });

/** A document with one to three faults in it, or with none left. */
export const hostileDocument: fc.Arbitrary<string> = fc
  .tuple(fc.constantFrom(...TEXTS), fc.array(fc.tuple(fc.boolean(), numbers), { minLength: 1, maxLength: 3 }))
  .map(([text, faults]) =>
    faults.reduce((before, [isText, how], i) => {
      // What is no JSON any more has no values to change.
      if (isText && i === faults.length - 1) return damaged(before, how);
      return withNastyValue(before, how);
    }, text),
  );

const REAL = (() => {
  const link = linkOf(demoLayout());
  return link.ok ? link.value : '';
})();

/** A link that is damaged, or one whose sum is right and whose content is not. */
export const hostileLink: fc.Arbitrary<string> = fc.oneof(
  numbers.map((how) => damaged(REAL, how)),
  fc.uint8Array({ maxLength: 400 }).map(linkAround),
  fc.tuple(fc.constantFrom(...TEXTS), numbers).map(([text, how]) => {
    const data = JSON.parse(withNastyValue(text, how));
    try {
      return linkAroundData(data);
    } catch {
      // What cannot even be written is no link that anybody has.
      return REAL.slice(0, 40);
    }
  }),
);

const cell = fc.oneof(
  fc.constantFrom(
    '',
    '?',
    'none',
    '0',
    '-1',
    '1,5',
    '1.234',
    '1e9',
    '=1+1',
    '@a',
    "'x",
    '"',
    'HP',
    'Name',
    '\u202e',
    '\u0000',
    '+12 V',
  ),
  fc.string({ maxLength: 12, unit: 'binary' }),
  fc.integer().map(String),
);

/** A table as a spreadsheet might have saved it, with quotes that may not close. */
export const hostileTable: fc.Arbitrary<string> = fc
  .tuple(
    fc.constantFrom(',', ';', '\t'),
    fc.constantFrom('\n', '\r\n', '\r'),
    fc.constantFrom('', 'Name,Width HP,+12 V mA\n', 'Name;Width;Depth\r\n', '\ufeff'),
    fc.array(fc.array(cell, { maxLength: 8 }), { maxLength: 8 }),
  )
  .map(([between, end, head, rows]) => head + rows.map((row) => row.join(between)).join(end));
