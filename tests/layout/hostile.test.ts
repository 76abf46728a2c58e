import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeFailure, openDocument, openLayout, writeLayout } from '../../src/document.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { OPEN_LIMITS } from '../../src/layout/open-limits.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { layRibbon } from '../../src/wiring/lay-ribbon.ts';
import { changed, FIXTURE, type Path } from '../support/fixture.ts';

/** What opening says of data; prints how long that took, which no test may depend on. */
function said(data: unknown, name?: string): string {
  const start = performance.now();
  const opened = typeof data === 'string' ? openLayout(data) : openDocument(data);
  if (name) console.log(`${name}: ${((performance.now() - start) / 1000).toFixed(2)} s`);
  if (opened.ok) return 'opens';
  const line = describeFailure(opened.error);
  expect(line).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
  expect(line.length).toBeLessThan(2_000);
  return line;
}

const list = <T>(length: number, item: (i: number) => T): T[] => Array.from({ length }, (_, i) => item(i));

describe('a list where an object should be', () => {
  it.each([
    [['kit', 'modules', 0, 'draws']],
    [['kit', 'limits']],
    [['takes', 0, 'supplies', 0, 'ratings']],
    [['takes', 0, 'supplies', 0, 'boards', 0, 'limits']],
    [['takes', 0, 'built']],
  ] as [Path][])('%j is refused, even an empty one', (path) => {
    expect(said(changed(path, []))).toMatch(/: must be an object, not a list$/);
  });
});

describe('what a loose ribbon says by default', () => {
  it('may be written out', () => {
    expect(said(changed(['takes', 0, 'ribbons', 1, 'stripe'], 'down'))).toBe('opens');
    expect(said(changed(['takes', 0, 'ribbons', 1, 'twists'], [0]))).toBe('opens');
    expect(said(changed(['kit', 'ribbons', 1, 'bends'], false))).toBe('opens');
  });

  it('is written out by the program itself, whose leads open again', () => {
    const demo = demoLayout();
    const take = demo.takes[0];
    if (!take) throw new Error('no take');
    const bare: Layout = {
      ...demo,
      takes: [{ ...take, ribbons: take.ribbons.filter(({ id }) => id !== 'l8') }],
    };
    const derived = deriveTake(bare.kit, bare.takes[0] ?? take);
    const header = derived.places.moduleById.get('gull-2')?.headers.find(({ id }) => id === 'power');
    const laid = header && layRibbon(derived, 'lead-16-150', header);
    if (!laid) throw new Error('not laid');
    const kind = 'lead-16-150';
    const edited = applyEdit(bare, { type: 'add-ribbon', take: take.id, kind, prefix: 'L', ...laid });
    expect(edited.ok && openLayout(writeLayout(edited.value))).toEqual({
      ok: true,
      value: edited.ok && edited.value,
    });
  });
});

describe('data that JSON cannot say', () => {
  it.each([
    [
      'a number past all bounds, where nobody knows the key',
      FIXTURE.replace('"later": {', '"later": { "x": 1e999,'),
    ],
    ['a function', changed(['later'], () => 1)],
    ['a date', changed(['takes', 0, 'built'], new Date(0))],
    ['a big integer', changed(['later'], 1n)],
    ['nothing in a list', changed(['later'], [undefined])],
    ['not a number', changed(['takes', 0, 'modules', 0, 'atHp'], Number.NaN)],
  ])('%s is refused', (_, data) => {
    expect(said(data)).toMatch(/must be (a finite number|something that JSON can say), not /);
  });

  it('goes round in circles and is refused', () => {
    const round: Record<string, unknown> = JSON.parse(FIXTURE);
    round.later = round;
    expect(said(round)).toContain('nested deeper than 64 levels');
  });

  it('doubles at each step and is refused', () => {
    let bomb: unknown = 1;
    for (let i = 0; i < 50; i++) bomb = [bomb, bomb];
    expect(said(changed(['later'], bomb), '2^50 values')).toContain('more than 4 million values');
  });
});

describe('a document made to be slow', () => {
  it('of nothing but issues is refused without keeping them all', () => {
    const seats = list(300, () => ({ connector: 'x', on: { module: 1 } }));
    const ribbons = list(1_000, (i) => ({ id: `${i}`, kind: 'lead', seats }));
    const line = said(changed(['takes', 0, 'ribbons'], ribbons), '600,000 issues');
    expect(line).toMatch(
      /^takes\[0\]\.ribbons\[0\]\.seats\[0\]\.connector: must be a number.* \(and \d+ more\)$/,
    );
  });

  it('of names that are all much alike is refused without comparing each with each', () => {
    const id = (letter: string, i: number): string => letter.repeat(35) + `${i}`.padStart(5, '0');
    const document = changed(
      ['takes', 0, 'modules'],
      list(20_000, (i) => ({ id: id('a', i), kind: 'cobble', row: 'upper', atHp: 0 })),
    ) as { takes: { ribbons: unknown }[] };
    const [take] = document.takes;
    if (!take) throw new Error('no take');
    take.ribbons = list(20_000, (i) => ({
      id: `${i}`,
      kind: 'lead',
      seats: [{ connector: 0, on: { module: id('b', i), header: 'power' } }],
    }));
    expect(said(document, '20,000 near misses among 20,000 names')).toMatch(/ \(and 19999 more\)$/);
  });

  it('counts what is amiss in all, and tells the first of it', () => {
    const modules = list(700, (i) => ({ id: `m${i}`, kind: 'nothing', row: 'upper', atHp: 0 }));
    const opened = openDocument({
      ...demoLayout(),
      takes: [{ ...(changed([], 0) as Layout).takes[0], modules }],
    });
    if (opened.ok || opened.error.kind !== 'invalid') throw new Error('opened');
    expect(opened.error.issues.length).toBeGreaterThanOrEqual(50);
    expect(opened.error.total).toBeGreaterThanOrEqual(700);
  });
});

describe('names made to mislead', () => {
  it.each([
    ['\u202Egnirts', '"\\u202egnirts"'],
    ['a\u0000\u007F\u0085\u2028', '"a\\u0000\\u007f\\u0085\\u2028"'],
    ['\uFEFF\u{E0041}', '"\\ufeff\\udb40\\udc41"'],
    ['\uD800', '"\\ud800"'],
    ['x'.repeat(900), `"${'x'.repeat(60)}…"`],
    ['😀'.repeat(90), `"${'😀'.repeat(60)}…"`],
  ])('%j are shown as they are', (name, shown) => {
    expect(said(changed(['takes', 0, 'modules', 0, 'kind'], name))).toBe(
      `takes[0].modules[0].kind: no module kind ${shown}`,
    );
  });

  it.each(['toString', 'hasOwnProperty', '__proto__', 'constructor', 'length'])(
    'a reference to %s finds nothing of the language',
    (name) => {
      for (const path of [
        ['takes', 0, 'modules', 0, 'kind'],
        ['takes', 0, 'modules', 0, 'row'],
        ['takes', 0, 'ribbons', 0, 'kind'],
        ['kit', 'ribbons', 0, 'bus'],
        ['takes', 0, 'ribbons', 0, 'seats', 0, 'on', 'header'],
      ]) {
        expect(said(changed(path, name))).toContain(`"${name}"`);
      }
    },
  );

  it.each(['toString', 'valueOf', 'length', ' ', '', '10', 'é'])('an unknown key %j is kept', (key) => {
    const document = JSON.parse(FIXTURE);
    for (const holder of [document, document.kit.modules[0], document.takes[0].ribbons[0].seats[0].on]) {
      holder[key] = { [key]: [{}] };
    }
    const opened = openDocument(document);
    expect(opened.ok && JSON.parse(writeLayout(opened.value))).toEqual(document);
  });
});

describe('numbers', () => {
  it.each([-0, 5e-324, 1 / 3, -1e9, 123456789.123])('%d comes back as it was', (atHp) => {
    const opened = openDocument(changed(['takes', 0, 'modules', 0, 'atHp'], atHp));
    if (!opened.ok) throw new Error(describeFailure(opened.error));
    const again = openLayout(writeLayout(opened.value));
    expect(again.ok && again.value.takes[0]?.modules[0]?.atHp).toBe(atHp);
  });

  it('of any size are kept where nobody knows the key', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (number) => {
        const opened = openDocument(changed(['later'], number));
        expect(opened.ok && openLayout(writeLayout(opened.value))).toEqual(opened);
      }),
    );
  });
});

it('a document with any number of seats of the sorts that are looked for last opens', () => {
  const demo = demoLayout();
  const ribbons = list(OPEN_LIMITS.ribbons.most, (i) => ({
    id: `r${i}`,
    kind: 'lead-16-150',
    seats: [
      { connector: 0, on: { board: 'board-1', header: '1' } },
      { connector: 1, on: { ribbon: `r${Math.max(0, i - 1)}`, connector: 0 } },
    ],
  }));
  const takes = demo.takes.slice(0, 1).map((take) => ({ ...take, ribbons }));
  expect(said({ ...demo, takes }, '40,000 seats on boards and in ribbons')).toBe('opens');
});

it('as many modules and ribbons as are read open, and are written', () => {
  const document = changed(
    ['takes', 0, 'modules'],
    list(OPEN_LIMITS.modules.most, (i) => ({ id: `m${i}`, kind: 'cobble', row: 'upper', atHp: 5 * i })),
  ) as { takes: { ribbons: unknown }[] };
  const [take] = document.takes;
  if (!take) throw new Error('no take');
  take.ribbons = list(OPEN_LIMITS.ribbons.most, (i) => ({
    id: `r${i}`,
    kind: 'shore-2',
    seats: [0, 1].map((connector) => ({
      connector,
      on: { module: `m${(i + connector) % 2}`, header: 'shore' },
    })),
  }));
  const text = writeLayout(document as unknown as Layout);
  expect(said(text, `${text.length} characters`)).toBe('opens');
});
