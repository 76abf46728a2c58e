import fc from 'fast-check';
import type { Layout } from '../../src/layout/layout.ts';
import { arbitraryLayout } from './arbitrary-layout.ts';

/*
 * Layouts that open and are as strange as a layout can be: unknown keys at any object, any text where people write,
 * ids that nobody would think of, halves of characters, negative zeros, figures with all their digits.
 */

type Data = Record<string, unknown>;

const oddText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.constantFrom(
    '',
    '\u0000',
    '\ud800',
    'a\udc00b',
    '\udc00\ud800',
    'Ünïcode ✓ 🥁',
    '…'.repeat(40),
    '__proto__',
    '0',
  ),
);

const oddNumber = fc.oneof(
  fc.constantFrom(
    -0,
    0.1 + 0.2,
    1e-7,
    -123.456789,
    999_999_999,
    5e-324,
    1 / 3,
    76.19999999999999,
    2 ** 29 + 0.5,
  ),
  fc.double({ min: -1e9, max: 1e9, noNaN: true }),
);

const anyData = fc
  .jsonValue({ maxDepth: 3 })
  .filter((data) => !/"(__proto__|constructor|prototype)":/.test(JSON.stringify(data)));

const unknownKey = fc
  .oneof(
    fc.constantFrom('later', 'zz', '', '0', 'toString', 'hasOwnProperty', 'length', 'é', '\ud800'),
    fc.string({ maxLength: 6 }),
  )
  .filter((key) => !['__proto__', 'constructor', 'prototype'].includes(key));

/** Keys of the format: one of these at the wrong object could make the document mean something else. */
const KNOWN_KEYS = new Set(
  'format version id parent title notes kit takes voltages buses modules ribbons limits volts dropMv name pinout membersPerHost widthHp heightU depthMm depthIs draws headers owned price color known bus role xMm yMm zMm axis pin1 keyed passes isolated counts lay bends awg connectors atMm type ways face key rows supplies accepted built why facts case gapMm ratings boards row widthMm riseMm lead dxMm dyMm lengthMm kind atHp label pinned locked stripe twists seats connector on module board header ribbon seatToleranceMm skewMm bendRadiusMm connectorBodyMm ribbonMm plugMm leadAllowanceMm headroom contactMa contactMilliohm ambientC groundShiftMv'.split(
    ' ',
  ),
);

const PROSE = ['name', 'title', 'notes', 'label', 'color', 'case', 'why', 'facts'];
const FIGURES = ['xMm', 'yMm', 'zMm', 'atHp', 'dxMm', 'dyMm'];
const IDS = ['id', 'bus', 'kind', 'row', 'module', 'board', 'header', 'ribbon'];
/** By voltage: a key here is no unknown one. */
const RECORDS = ['draws', 'ratings'];

/** Every object of a document with the key that it stands at. */
function objectsIn(value: unknown, at = ''): { readonly object: Data; readonly at: string }[] {
  if (typeof value !== 'object' || value === null) return [];
  if (Array.isArray(value)) return value.flatMap((item) => objectsIn(item, at));
  const below = Object.entries(value).flatMap(([key, item]) =>
    KNOWN_KEYS.has(key) ? objectsIn(item, key) : [],
  );
  return [{ object: value as Data, at }, ...below];
}

export const strangeLayout: fc.Arbitrary<Layout> = fc
  .record({
    plain: arbitraryLayout,
    prefix: fc.oneof(
      fc.constant(''),
      oddText.filter((text) => text.length < 20),
    ),
    unknown: fc.array(fc.tuple(fc.nat(), unknownKey, anyData), { maxLength: 6 }),
    texts: fc.array(oddText, { minLength: 1, maxLength: 8 }),
    figures: fc.array(oddNumber, { minLength: 1, maxLength: 8 }),
    changes: fc.integer({ min: 2, max: 12 }),
    built: fc.option(fc.dictionary(unknownKey, anyData), { nil: undefined }),
    accepted: fc.option(
      fc.array(fc.record({ key: oddText, why: oddText }, { requiredKeys: ['key'] }), { maxLength: 4 }),
      {
        nil: undefined,
      },
    ),
    names: fc.record({ id: oddText.filter(Boolean), parent: oddText.filter(Boolean) }, { requiredKeys: [] }),
  })
  .map(({ plain, prefix, unknown, texts, figures, changes, built, accepted, names }) => {
    const layout = { ...JSON.parse(JSON.stringify(plain)), ...names };
    for (const take of layout.takes) {
      if (built) take.built = { ...built };
      if (accepted) take.accepted = accepted;
    }
    const objects = objectsIn(layout);
    objects.forEach(({ object, at }, i) => {
      if (RECORDS.includes(at) || at === 'built') return;
      for (const key of Object.keys(object)) {
        const value = object[key];
        if (IDS.includes(key) && at !== 'voltages' && typeof value === 'string' && object !== layout)
          object[key] = prefix + value;
        if (i % changes !== 0) continue;
        if (PROSE.includes(key) && typeof value === 'string') object[key] = texts[i % texts.length];
        if (FIGURES.includes(key) && typeof value === 'number') object[key] = figures[i % figures.length];
      }
    });
    for (const [place, key, data] of unknown) {
      const { object, at } = objects[place % objects.length] as { object: Data; at: string };
      if (!RECORDS.includes(at) && !KNOWN_KEYS.has(key)) object[key] = data;
    }
    return layout as Layout;
  });
