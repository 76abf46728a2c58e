import { describe, expect, test } from 'vitest';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { factsOf, pagesOf } from '../../src/sheet/bench-sheet.ts';
import type { SheetOptions, SheetPage, SheetPageId } from '../../src/sheet/sheet-page.ts';
import { fortyModules } from '../support/forty-modules.ts';

const OWN: readonly SheetPageId[] = [
  'parts',
  'cuts',
  'strips',
  'continuity',
  'order',
  'power-up',
  'fault-finding',
];

function pagesFor(layout: Layout, options: Partial<SheetOptions> = {}): readonly SheetPage[] {
  const [take] = layout.takes;
  const facts = factsOf(layout, take?.id ?? '', { paper: 'a4', pages: new Set(OWN), ...options });
  return pagesOf(facts);
}

const HOSTILE = '<script>alert("x")</script> & \'y\' \u202e=1+1 ';

/** Every name of the demo made as bad as a name can be. */
function hostile(): Layout {
  const bad = <T extends { readonly name?: string }>(thing: T): T => ({
    ...thing,
    name: HOSTILE + (thing.name ?? ''),
  });
  const demo = demoLayout();
  return {
    ...demo,
    title: HOSTILE,
    kit: { ...demo.kit, modules: demo.kit.modules.map(bad), ribbons: demo.kit.ribbons.map(bad) },
    takes: demo.takes.map((take) => ({
      ...take,
      name: HOSTILE,
      rows: take.rows.map(bad),
      supplies: take.supplies.map((supply) => ({ ...bad(supply), boards: supply.boards.map(bad) })),
      modules: take.modules.map((module) => ({ ...module, label: `${HOSTILE}${module.id}` })),
      ribbons: take.ribbons.map((ribbon) => ({ ...ribbon, label: `${HOSTILE}${ribbon.id}` })),
    })),
  };
}

/** Elements that have no end. */
const VOID = new Set(['br', 'col', 'img', 'hr', 'meta']);

/** What keeps a piece of markup from being well formed. */
function badlyFormed(text: string): string[] {
  const open: string[] = [];
  const found: string[] = [];
  let rest = text;
  const tag = /<(\/?)([a-z][a-z0-9-]*)((?:\s+[a-zA-Z:-]+="[^"<>]*")*)\s*(\/?)>/;
  for (let match = tag.exec(rest); match; match = tag.exec(rest)) {
    const before = rest.slice(0, match.index);
    if (/[<>]/.test(before)) found.push(`a bare sign in "${before.slice(-40)}"`);
    const [whole, ends, name = '', , closes] = match;
    if (ends) {
      const last = open.pop();
      if (last !== name) found.push(`</${name}> ends <${last}>`);
    } else if (!closes && !VOID.has(name)) open.push(name);
    rest = rest.slice(match.index + whole.length);
  }
  if (/[<>]/.test(rest)) found.push(`a bare sign in "${rest.slice(0, 40)}"`);
  return [...found, ...open.map((name) => `<${name}> has no end`)];
}

describe.each([
  ['the demo', demoLayout()],
  ['forty modules', fortyModules()],
  ['names that would break out', hostile()],
])('%s', (_, layout) => {
  const pages = pagesFor(layout, { everyPiece: true });

  test('has pages of each sort', () => {
    expect(new Set(pages.map(({ id }) => id))).toEqual(new Set(OWN));
  });

  test('is well-formed on every page, with nothing that runs', () => {
    for (const { id, body } of pages) {
      expect([id, badlyFormed(body.text)]).toEqual([id, []]);
      expect(body.text).not.toMatch(/<script|\son[a-z]+=|javascript:/i);
    }
  });
});

test('a check of markup finds what is wrong', () => {
  expect(badlyFormed('<p><b>x</p></b>')).not.toEqual([]);
  expect(badlyFormed('<p>1 < 2</p>')).not.toEqual([]);
  expect(badlyFormed('<p>')).not.toEqual([]);
  expect(badlyFormed('<p class="a">x<br><i/></p>')).toEqual([]);
});

const textOf = (pages: readonly SheetPage[], id: SheetPageId): string =>
  pages
    .filter((page) => page.id === id)
    .map(({ body }) => body.text.replaceAll(/<[^>]*>/g, ' '))
    .join(' ');

test('every ribbon is on each page that is about ribbons, and every module is screwed in', () => {
  const layout = demoLayout();
  const pages = pagesFor(layout, { everyPiece: true });
  for (const id of ['cuts', 'strips', 'continuity', 'order'] as const) {
    const text = textOf(pages, id);
    for (const { label } of layout.takes[0]?.ribbons ?? [])
      expect(text).toMatch(new RegExp(`\\b${label}\\b`));
  }
  for (const { label } of layout.takes[0]?.modules ?? [])
    expect(textOf(pages, 'order')).toContain(`Screw in ${label}`);
});

test('a cut list of a take whose ribbons are all owned says so, and lists all of them when asked to', () => {
  expect(textOf(pagesFor(demoLayout()), 'cuts')).toBe('');
  expect(textOf(pagesFor(demoLayout()), 'parts')).toContain('nothing is to be cut');
  expect(textOf(pagesFor(demoLayout(), { pages: new Set(['cuts']) }), 'cuts')).toContain(
    'nothing is to be cut',
  );
  expect(textOf(pagesFor(demoLayout(), { everyPiece: true }), 'cuts')).toContain('Every piece');
});

/** Millimetres on paper for each millimetre of the drawing, of every drawing on some pages. */
const scales = (pages: readonly SheetPage[]): number[] =>
  pages
    .flatMap(({ body }) => [
      ...body.text.matchAll(/<svg [^>]*width="([\d.]+)mm"[^>]*viewBox="\S+ \S+ ([\d.]+) /g),
    ])
    .map(([, width, shown]) => Number(width) / Number(shown));

test('strips are drawn in true scale, and larger for a printer that prints too small', () => {
  const strips = (barMm?: number): readonly SheetPage[] =>
    pagesFor(demoLayout(), { pages: new Set(['strips'] as const), ...(barMm !== undefined && { barMm }) });
  const plain = scales(strips());
  expect(plain.length).toBeGreaterThan(10);
  for (const scale of plain) expect(scale).toBeCloseTo(1, 4);
  // A printer that makes 98 mm of 100 makes 100 of 100 / 0.98.
  for (const scale of scales(strips(98))) expect(scale * 0.98).toBeCloseTo(1, 4);
});

test('no strip is wider than its page, on either paper', () => {
  for (const [paper, roomMm] of [
    // 297 and 279.4 mm less 10 mm at either edge.
    ['a4', 277],
    ['letter', 259.4],
  ] as const) {
    for (const barMm of [90, 100, 110]) {
      const pages = pagesFor(demoLayout(), { paper, barMm, pages: new Set(['strips'] as const) });
      const widths = pages.flatMap(({ body }) => [...body.text.matchAll(/<svg [^>]*width="([\d.]+)mm"/g)]);
      for (const [, width] of widths) expect(Number(width)).toBeLessThanOrEqual(roomMm + 0.001);
    }
  }
});
