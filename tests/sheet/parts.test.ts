import { expect, test } from 'vitest';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Kit, RibbonKind } from '../../src/layout/layout.ts';
import { partsListOf } from '../../src/sheet/parts.ts';
import { partsCsv } from '../../src/sheet/parts-csv.ts';
import { deriveTake } from '../../src/wiring/derive.ts';

const demo = demoLayout();

/** The demo's first take, with some kinds of ribbon changed. */
function listWith(change: Readonly<Record<string, Partial<RibbonKind>>>) {
  const kit: Kit = {
    ...demo.kit,
    ribbons: demo.kit.ribbons.map((kind) => ({ ...kind, ...change[kind.id] })),
  };
  return partsListOf(deriveTake(kit, demo.takes[0] ?? expect.fail()));
}

const lineFor = (name: string, { lines }: ReturnType<typeof listWith>) =>
  lines.find((line) => line.name === name) ?? expect.fail(name);

test('a kind is needed as often as the take has it, and to be bought where too few are owned', () => {
  const list = listWith({ 'lead-16-150': { owned: 1 } });
  expect(lineFor('Cobble', list)).toMatchObject({ sort: 'module', needed: 6, owned: 6, toBuy: 0, cost: 0 });
  // Three of 4.00 each are needed, one is owned.
  expect(lineFor('Lead 16-way, 150 mm', list)).toMatchObject({
    needed: 3,
    owned: 1,
    toBuy: 2,
    price: 4,
    cost: 8,
  });
  expect(list.cost).toBe(8);
});

test('an owned lead that is longer and alike takes its place, the shortest that does, each once', () => {
  // Three of 150 mm missing; of 250 mm three are owned and one is in use, of 400 mm three and one.
  const list = listWith({ 'lead-16-150': { owned: 0 } });
  expect(lineFor('Lead 16-way, 150 mm', list).substitutes).toEqual([
    { name: 'Lead 16-way, 250 mm', count: 2, longerByMm: 100 },
    { name: 'Lead 16-way, 400 mm', count: 1, longerByMm: 250 },
  ]);
  // A shorter one never does, nor one with fewer contacts at an end.
  const longest = listWith({ 'lead-16-400': { owned: 0 }, 'lead-16-600': { owned: 0 } });
  expect(lineFor('Lead 16-way, 400 mm', longest).substitutes).toEqual([]);
});

test('one spare lead is promised to one only', () => {
  const list = listWith({
    'lead-16-150': { owned: 0 },
    'lead-16-250': { owned: 0 },
    'lead-16-400': { owned: 2 },
    'lead-16-600': { owned: 0 },
  });
  const promised = list.lines.flatMap(({ substitutes }) => substitutes);
  // One of two of 400 mm is in use.
  expect(promised.map(({ name, count }) => [name, count])).toEqual([['Lead 16-way, 400 mm', 1]]);
});

test('what has no price or is not counted is named and in no sum', () => {
  const list = listWith({ 'shore-5': { owned: 0 }, 'tide-3': { owned: undefined as unknown as number } });
  expect(list.unpriced).toEqual(['Shore, 5 at 5 HP']);
  expect(list.uncounted).toEqual(['Tide, 3 bending', 'Supply', 'Board 1', 'Board 2']);
  expect(lineFor('Tide, 3 bending', list)).not.toHaveProperty('toBuy');
  expect(list.cost).toBe(0);
});

test('ribbons that are not owned are told as material', () => {
  // One of 101.6 mm, cut 115 mm, five sockets; two leads 16 to 10 of 400 mm, cut 435 mm, ends folded.
  const { materials } = listWith({ 'shore-5': { owned: 0 }, 'lead-10-400': { owned: 0 } });
  expect(materials).toEqual([
    { name: 'Ribbon, 10 conductors, AWG 28', amount: 115, unit: 'mm' },
    { name: 'Ribbon, 16 conductors, AWG 28', amount: 870, unit: 'mm' },
    { name: 'Socket, 10 contacts', amount: 7, unit: 'pieces' },
    { name: 'Socket, 16 contacts', amount: 2, unit: 'pieces' },
    { name: 'Strain relief clip, 16 contacts', amount: 2, unit: 'pieces' },
    { name: 'Strain relief clip, 10 contacts', amount: 2, unit: 'pieces' },
  ]);
});

/** Reads a table of text as RFC 4180 has it. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  for (const match of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/g)) {
    if (rows.length === 0 || match.index === 0) rows.push([]);
    rows.at(-1)?.push(match[1]?.replaceAll('""', '"') ?? match[2] ?? '');
    if (match[3] === '\r\n') rows.push([]);
  }
  return rows.slice(0, -1);
}

test('as a table of text it holds every line, whatever names hold, and nothing a table program would reckon with', () => {
  const names = ['=1+1', '+12 lead', '-x', '@sum', '\uff1d1', 'a "quoted", one', 'two\r\nlines', "it's"];
  const used = new Set(demo.takes[0]?.ribbons.map(({ kind }) => kind));
  const ids = demo.kit.ribbons.filter(({ id }) => used.has(id)).map(({ id }) => id);
  const list = listWith(Object.fromEntries(names.map((name, i) => [ids[i] ?? '', { name }])));
  const rows = readCsv(partsCsv(list));
  expect(rows).toHaveLength(1 + list.lines.length + list.materials.length);
  expect(new Set(rows.map(({ length }) => length))).toEqual(new Set([8]));
  const cells = rows.flat();
  expect(cells.filter((cell) => /^[=+\-@\t\r\uff1d]/.test(cell))).toEqual([]);
  for (const name of names)
    expect(cells.map((cell) => cell.replace(/^'(?=[=+\-@\uff1d])/, ''))).toContain(name);
});
