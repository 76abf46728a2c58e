import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseTable, tableFile, tableToPaste } from '../../app/stock/table-text.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Kit, Layout, ModuleKind } from '../../src/layout/layout.ts';
import { emptyKit, emptyLayout } from '../../src/layout/starter.ts';
import { badCellWords, readTable, seemsHeaded } from '../../src/table/read-table.ts';
import { choicesFor, type RowChoice, tableEdit } from '../../src/table/table-edit.ts';
import { TABLE_LIMITS } from '../../src/table/table-limits.ts';
import { templateTable, writeTable } from '../../src/table/write-table.ts';
import { runs } from '../support/runs.ts';

const demo = demoLayout();
/** The demo's voltages and buses, and no kind of module yet. */
const BARE: Kit = { ...demo.kit, modules: [], ribbons: [] };

const AS_FOUND = { hasHeadings: true, byHand: new Map<number, string | null>() };

function cellsOf(text: string) {
  const parsed = parseTable(text);
  if (!parsed.ok) throw new Error(parsed.error);
  return parsed.value;
}

const read = (text: string, kit: Kit = BARE, reading = AS_FOUND) => readTable(kit, cellsOf(text), reading);

const kindsIn = (text: string, kit: Kit = BARE): readonly ModuleKind[] => {
  const { rows, bad, refused } = read(text, kit);
  expect([refused, ...bad.map(badCellWords)]).toEqual([undefined]);
  return rows.flatMap(({ changed, made }) => changed ?? made ?? []);
};

const badIn = (text: string, kit: Kit = BARE): string[] => read(text, kit).bad.map(badCellWords);

const fixture = (name: string): string =>
  readFileSync(new URL(`../fixtures/tables/${name}`, import.meta.url), 'utf8');

const PEBBLE: ModuleKind = {
  id: 'pebble',
  name: 'Pebble',
  widthHp: 5,
  depthMm: 32.5,
  draws: { '+12': 35, '-12': null },
  headers: [{ id: 'shore', bus: 'shore', role: 'member', xMm: 12.7, yMm: 38, pin1: 'down' }],
  owned: 6,
  notes: 'two lines\nin one cell',
};
const DUNE: ModuleKind = {
  id: 'dune',
  name: 'Dune',
  widthHp: 10.5,
  draws: { '+12': 120, '-12': 60 },
  headers: [],
};

describe('one table in every dialect', () => {
  it.each(['comma.csv', 'semicolon-decimal-comma.csv', 'tab.txt', 'bom-crlf.csv', 'cr.csv'])('%s', (name) => {
    expect(kindsIn(fixture(name))).toEqual([PEBBLE, DUNE]);
  });
});

describe('columns', () => {
  it.each([
    ['Name,Width (HP),Depth (cm)', 'A,5,3.2', { widthHp: 5, depthMm: 32 }],
    ['Module;HP;Depth in mm', 'A;5;32', { widthHp: 5, depthMm: 32 }],
    ['kind\tTE\tDEPTH, MM', 'A\t5\t32', { widthHp: 5, depthMm: 32 }],
    ['Name,Width,Depth behind the panel', 'A,5 HP,1.5 in', { widthHp: 5, depthMm: 38.1 }],
    ['Name,Width,+12 V (mA),-12V', 'A,5,40,"30 mA"', { draws: { '+12': 40, '-12': 30 } }],
    ['Name,Width,Current at +12 V (A)', 'A,5,"0.2"', { draws: { '+12': 200 } }],
    ['Name,Width,12V,draws from −12 V', 'A,5,40,?', { draws: { '+12': 40, '-12': null } }],
    ['Name,Width,One costs,I own', 'A,5,€ 12.50,3', { price: 12.5, owned: 3 }],
    ['Name,Width,Colour,Figures are', 'A,5,#3f6f8c,guessed', { color: '#3f6f8c', known: 'guessed' }],
    [
      'Name,Width,Bus,x,y,Pin 1',
      'A,5,Shore,12.7,38,lower',
      { headers: [{ id: 'shore', bus: 'shore', role: 'member', xMm: 12.7, yMm: 38, pin1: 'down' }] },
    ],
    [
      'Name,Width,Header 1,Header 1 role,Header 1: x (mm),Header 1 from bottom,H2 bus,h2 x,h2 y,pin 1 of header 2,Header 2 boxed',
      'A,5,shore,host,10,38,"Power, 10-way",20,60,left,yes',
      {
        headers: [
          { id: 'shore', bus: 'shore', role: 'host', xMm: 10, yMm: 38 },
          {
            id: 'power-10',
            bus: 'power-10',
            role: 'member',
            xMm: 20,
            yMm: 60,
            axis: 'horizontal',
            pin1: 'left',
            keyed: true,
          },
        ],
      },
    ],
  ])('%s', (headings, row, facts) => {
    expect(kindsIn(`${headings}\n${row}`)).toEqual([
      { id: 'a', name: 'A', widthHp: 5, draws: {}, headers: [], ...facts },
    ]);
  });

  it('are matched by hand as well, with no headings at all', () => {
    const byHand = new Map<number, string | null>([
      [0, 'widthHp'],
      [1, 'name'],
    ]);
    const { rows } = read('5,Pebble,left out', BARE, { hasHeadings: false, byHand });
    expect(rows.map(({ made }) => made?.widthHp)).toEqual([5]);
    expect(seemsHeaded(BARE, cellsOf('5,Pebble'))).toBe(false);
    expect(seemsHeaded(BARE, cellsOf('\nWidth,Thing'))).toBe(true);
    expect(read('5,Pebble').refused).toBe('No column holds names: say which one does');
  });

  it('that say the same are told by the first, and left out by hand', () => {
    const { columns } = read('Name,Width,Width\nA,5,6');
    expect(columns.map(({ letter, field }) => `${letter} ${field?.key}`)).toEqual([
      'A name',
      'B widthHp',
      'C undefined',
    ]);
    const second = new Map<number, string | null>([
      [1, null],
      [2, 'widthHp'],
    ]);
    expect(
      read('Name,Width,Width\nA,5,6', BARE, { hasHeadings: true, byHand: second }).rows[0]?.made?.widthHp,
    ).toBe(6);
  });
});

describe('a bad cell', () => {
  const H = 'Name,Width (HP),Depth (mm),Header 1 bus,Header 1 x,Header 1 y,Header 1 pin 1,Owned';
  it.each([
    ['A,5.2,,,,,,', 'Row 2, column B (Width (HP)): “5.2”, it is not a width: from 0.5 HP on, in halves.'],
    ['A,,,,,,,', 'Row 2, column B (Width (HP)): empty, A needs a width.'],
    ['A,5,deep,,,,,', 'Row 2, column C (Depth (mm)): “deep”, it is not a depth: from 0 mm on.'],
    ['A,5,-1,,,,,', 'Row 2, column C (Depth (mm)): “-1”, it is not a depth: from 0 mm on.'],
    [
      'A,5,3 ft,,,,,',
      'Row 2, column C (Depth (mm)): “3 ft”, the unit “ft” is not understood here; mm, cm, m, in are.',
    ],
    [
      'A,5,,Shoer,1,2,,',
      'Row 2, column D (Header 1 bus): “Shoer”, no bus has this name; did you mean "Shore"?',
    ],
    ['A,5,,,1,2,,', 'Row 2, column D (Header 1 bus): empty, header 1 needs its bus.'],
    ['A,5,,Shore,1,,,', 'Row 2, column F (Header 1 y): empty, header 1 needs its y.'],
    [
      'A,5,,Shore,1,2,aside,',
      'Row 2, column G (Header 1 pin 1): “aside”, it is not “down”, “up”, “left” or “right”.',
    ],
    ['A,5,,,,,,2.5', 'Row 2, column H (Owned): “2.5”, it is not a count: a whole number from 0.'],
    [',5,,,,,,', 'Row 2, column A (Name): empty, a kind needs a name.'],
    [
      'A,5,"1,250",,,,,',
      'Row 2, column C (Depth (mm)): “1,250”, it could be 1.25 or 1250; write it so that it can be one only.',
    ],
  ])('%s', (row, words) => {
    expect(badIn(`${H}\n${row}`)).toEqual([words]);
  });

  it('is counted as the spreadsheet counts: empty rows and quoted line breaks included', () => {
    const text = 'Name,Width,Notes\r\nA,5,"one\r\ntwo"\r\n\r\nB,five,\r\nC,6,\r\nA,7,\r\n';
    expect(badIn(text)).toEqual([
      'Row 4, column B (Width): “five”, it is not a width: from 0.5 HP on, in halves.',
      'Row 6, column A (Name): “A”, row 2 tells of the same kind.',
    ]);
    expect(badIn(text.replace('five', '4'))).toEqual([
      'Row 6, column A (Name): “A”, row 2 tells of the same kind.',
    ]);
  });

  it('keeps all the others out', () => {
    const { rows, bad } = read('Name,Width\nA,5\nB,x\nC,5');
    expect([rows.length, bad.length]).toEqual([0, 1]);
  });

  it('may lie over its unit', () => {
    expect(badIn('Name,Width,Depth (ft)\nA,5,3')).toEqual([
      'Row 2, column C (Depth (ft)): “3”, the unit “ft” is not understood here; mm, cm, m, in are.',
    ]);
  });
});

describe('a row whose kind there is', () => {
  const layout: Layout = { ...emptyLayout(demo.kit), kit: demo.kit };
  const doneTo = (text: string, chosen: ReadonlyMap<number, RowChoice> = new Map()) => {
    const { edit } = tableEdit(layout.kit, read(text, layout.kit).rows, chosen);
    if (!edit) return layout;
    const done = applyEdit(layout, edit);
    if (!done.ok) throw new Error(done.error.message);
    return done.value;
  };
  const cobble = (of: Layout) => of.kit.modules.find(({ id }) => id === 'cobble');

  it('is changed by what the table tells, and keeps the rest: header ids, and keys that nobody knows', () => {
    const changed = cobble(doneTo('Name,Price\nCobble,12.5'));
    expect(changed).toEqual({ ...cobble(layout), price: 12.5 });
    const moved = cobble(
      doneTo(
        'Name,Header 1 bus,Header 1 x,Header 1 y,Header 2 bus,Header 2 x,Header 2 y\nCobble,Shore,13,38,"Power, 10-way",12.7,91',
      ),
    );
    expect(moved?.headers.map(({ id, xMm, pin1 }) => [id, xMm, pin1])).toEqual([
      ['shore', 13, 'down'],
      ['power', 12.7, 'down'],
    ]);
  });

  it('may be made a kind of its own, or left', () => {
    const text = 'Name,Width\nCobble,6';
    const made = doneTo(text, new Map([[2, 'new']]));
    expect(made.kit.modules.at(-1)).toMatchObject({ id: 'cobble-2', name: 'Cobble 2', widthHp: 6 });
    expect(cobble(made)?.widthHp).toBe(5);
    expect(doneTo(text, new Map([[2, 'leave']]))).toBe(layout);
    expect(doneTo(text).kit.modules.find(({ id }) => id === 'cobble')?.widthHp).toBe(6);
  });

  it('is left where the table says nothing new, and cannot be made anew without a width', () => {
    const [same] = read('Name,Width\nCobble,5', layout.kit).rows;
    expect(same && choicesFor(same)).toEqual(['leave', 'new']);
    const [priced] = read('Name,Price\nCobble,5', layout.kit).rows;
    expect(priced && choicesFor(priced)).toEqual(['change', 'leave']);
  });
});

describe('a table that was made to be slow', () => {
  it('is refused with a reason', () => {
    expect(read(`Name,Width\n${'A,5\n'.repeat(TABLE_LIMITS.rows)}`).refused).toMatch(/more than 2001 rows/);
    expect(read(`Name${',x'.repeat(TABLE_LIMITS.columns)}`).refused).toMatch(
      /Row 1 has more than 1000 cells/,
    );
    expect(read(`Name\n${'x'.repeat(TABLE_LIMITS.cell + 1)}`).refused).toMatch(/A cell in row 2/);
    expect(parseTable('x'.repeat(TABLE_LIMITS.characters + 1))).toEqual({
      ok: false,
      error: 'The table is too long to be one of modules.',
    });
    expect(parseTable('Name,Notes\nA,"never closed')).toEqual({
      ok: false,
      error: 'Row 2: a quotation mark is opened and never closed.',
    });
    expect(read(' \n\n').refused).toBe('There is nothing in it');
    expect(read('Name,Width\n').refused).toBe('There is no row under the headings');
  });
});

describe('written and read again', () => {
  /** What a cell can hold: it is read without the space around it, and empty it says nothing. */
  const text = fc
    .oneof(
      fc.string({ maxLength: 12, unit: 'grapheme' }),
      fc.constantFrom(
        '=1+1',
        '+12',
        '-3',
        '@home',
        "'=x",
        "'",
        "''-",
        'a;b',
        'a,b',
        'a\tb',
        'say "so"',
        'two\nlines',
        'two\r\nlines',
        '?',
        'none',
        '\uFEFFmark',
      ),
    )
    .map((each) => each.trim())
    .filter((each) => each !== '' && !/[\ud800-\udfff]/.test(each.normalize()));
  const some = <K extends string, V>(key: K, value: fc.Arbitrary<V>) =>
    fc
      .option(value, { nil: undefined })
      .map((each) => (each === undefined ? {} : ({ [key]: each } as { [P in K]: V })));
  const merge = (...parts: fc.Arbitrary<object>[]) =>
    fc.tuple(...parts).map((all) => Object.assign({}, ...all));
  const mm = fc.oneof(
    fc.integer({ min: -99_999, max: 99_999 }).map((n) => n / 1000),
    fc.constantFrom(1.234, 1234.5, 0.125, 1e-7),
  );
  const notNegative = mm.map(Math.abs);
  const ends = fc.constantFrom(
    {},
    { pin1: 'down' },
    { axis: 'vertical', pin1: 'up' },
    { axis: 'horizontal' },
    { axis: 'horizontal', pin1: 'left' },
  );
  const header = (id: string) =>
    merge(
      fc.record({
        id: fc.constant(id),
        bus: fc.constantFrom(...BARE.buses.map((bus) => bus.id)),
        role: fc.constantFrom('host', 'member'),
        xMm: mm,
        yMm: mm,
      }),
      ends,
      some('name', text),
      some('zMm', mm),
      some('keyed', fc.boolean()),
      some('passes', fc.boolean()),
      some('isolated', fc.boolean()),
      some('counts', fc.nat({ max: 3 })),
    );
  const kind = (at: number) =>
    merge(
      text.map((name) => ({ id: `k${at}`, name: `${name} ${at}` })),
      fc.integer({ min: 1, max: 99 }).map((halves) => ({ widthHp: halves / 2 })),
      fc.record({
        draws: fc.dictionary(fc.constantFrom(...BARE.voltages.map(({ id }) => id)), fc.option(notNegative), {
          noNullPrototype: true,
        }),
      }),
      fc
        .nat({ max: 3 })
        .chain((n) =>
          fc.tuple(...Array.from({ length: n }, (_, i) => header(`h${i}`))).map((headers) => ({ headers })),
        ),
      some('heightU', fc.constantFrom(1, 3, 6)),
      some('depthMm', notNegative),
      some('depthIs', fc.constantFrom('with-plugs', 'without-plugs')),
      some('owned', fc.nat({ max: 99 })),
      some('price', notNegative),
      some('color', text),
      some('notes', text),
      some('known', fc.constantFrom('measured', 'published', 'guessed')),
    ) as fc.Arbitrary<ModuleKind>;
  const kinds = fc
    .integer({ min: 1, max: 5 })
    .chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => kind(i))));

  it('gives the same kinds, in every dialect', () => {
    const writers = [
      (list: readonly ModuleKind[]) => tableFile(writeTable(BARE, list, '.'), ','),
      (list: readonly ModuleKind[]) => tableFile(writeTable(BARE, list, ','), ';'),
      (list: readonly ModuleKind[]) => tableToPaste(writeTable(BARE, list, ',')),
    ];
    fc.assert(
      fc.property(kinds, fc.constantFrom(...writers), (list, write) => {
        expect(kindsIn(write(list))).toEqual(list);
      }),
      runs(150),
    );
  });

  it('says of the demo what the demo says', () => {
    expect(kindsIn(tableFile(writeTable(demo.kit, demo.kit.modules, ','), ';'))).toEqual(demo.kit.modules);
  });

  // Cells beginning with = + - @, tab or line end: common practice against formulas in tables, no source.
  it('has an apostrophe before text that a spreadsheet would carry out, and none before numbers', () => {
    const risky: ModuleKind = {
      ...PEBBLE,
      name: '=1+1',
      notes: '@home',
      color: '-2',
      headers: PEBBLE.headers.map((each) => ({ ...each, xMm: -3 })),
    };
    const cells = writeTable(BARE, [risky], '.');
    expect(cells[1]).toEqual(expect.arrayContaining(["'=1+1", "'@home", "'-2", '-3', '35', '?']));
    for (const cell of cells.flat()) expect(cell).not.toMatch(/^[=+@\t\r\n]|^-(?!\d)/);
  });

  it('is a template that can be read as it is', () => {
    const cells = templateTable(emptyKit(), 2, ',');
    const { rows, bad } = readTable(emptyKit(), cells, AS_FOUND);
    expect(bad.map(badCellWords)).toEqual([]);
    expect(rows.map(({ made }) => made?.name)).toEqual(['Cobble']);
  });
});
