import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveTake } from '../../src/electrical/solution.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Take } from '../../src/layout/layout.ts';
import { benchSheet, factsOf, pagesOf } from '../../src/sheet/bench-sheet.ts';
import { revisionOf } from '../../src/sheet/revision.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { runs } from '../support/runs.ts';
import { strangeLayout } from '../support/strange-layout.ts';

const MINUS = '\u2212';
const paper = 'a4';
const body = (id: string): string =>
  pagesOf(factsOf(demoLayout(), '', { paper }))
    .filter((page) => page.id === id)
    .map((page) => page.body.text)
    .join('');

/** Texts of the cells, row by row. */
const cells = (html: string): string[][] =>
  Array.from(html.matchAll(/<tr [^>]*>(.*?)<\/tr>/gs), ([, row]) =>
    Array.from((row as string).matchAll(/<t[dh][^>]*>(.*?)<\/t[dh]>/gs), ([, cell]) =>
      (cell as string).replace(/<br>/g, ' ').replace(/<[^>]+>/g, ''),
    ),
  );

describe('the sheet', () => {
  it('bears number, side, revision and cautions on every page', () => {
    const html = benchSheet(demoLayout(), '', { paper });
    const pages = html.split('<section').slice(1);
    const { kit, takes } = demoLayout();
    const code = revisionOf(deriveTake(kit, takes[0] as Take));
    pages.forEach((page, i) => {
      expect(page).toContain(`page ${i + 1} of ${pages.length}`);
      expect(page).toContain(code);
      expect(page).toMatch(/class="side">(SEEN FROM THE (FRONT|REAR)|ANY SIDE)</);
      expect(page).toContain('Switch off, unplug and wait before wiring.');
      expect(page).toContain('Extra-low-voltage wiring only');
    });
  });

  it('leaves out what is not asked for', () => {
    const ids = pagesOf(factsOf(demoLayout(), '', { paper, pages: new Set(['rear', 'labels']) })).map(
      ({ id }) => id,
    );
    expect(ids).toEqual(['rear', 'labels']);
  });

  it('is made of any layout that opens', () => {
    fc.assert(
      fc.property(strangeLayout, (layout) => {
        for (const { id } of layout.takes) {
          const html = benchSheet(layout, id, { paper: 'letter' });
          expect(html).not.toMatch(/NaN|<script/);
        }
      }),
      runs(25),
    );
  });
});

describe('the table of feeds', () => {
  const rows = cells(body('feeds'));

  it('has a line for each lead that feeds, with what hangs on it', () => {
    expect(rows.filter(([, lead]) => /^L\d$/.test(lead ?? ''))).toHaveLength(8);
    expect(rows).toContainEqual([
      'Board 1, header 2, stripe down',
      'L2',
      '400',
      'Boulder 1, header power, stripe down',
      'Jetty A, Cobble 1, Cobble 2 and Boulder 1',
    ]);
  });

  it('expects what the solver says, and leaves room for the meter', () => {
    const { kit, takes } = demoLayout();
    const take = takes[0] as Take;
    const { modules, supplies } = solveTake(deriveTake(kit, take));
    const [id] = Object.keys(modules);
    const name = take.modules.find((module) => module.id === id)?.label ?? '';
    const at = modules[id as string] ?? {};
    const volts = ((at['-12'] ?? 0) - (at.GND ?? 0)).toFixed(2).replace('-', MINUS);
    const row = rows.find(([module, line]) => module?.startsWith(name) && line === `${MINUS}12 V`);
    expect(row?.[3]).toBe(volts);
    expect(row?.slice(-2)).toEqual(['', '']);
    const drawn = Object.values(supplies)[0]?.['+12'] ?? 0;
    expect(rows.find(([, line]) => line === '+12 V')?.[2]).toBe(String(Math.round(drawn)));
  });
});

describe('labels', () => {
  it('are two for each ribbon in use, each half saying the same', () => {
    const used = demoLayout().takes[0]?.ribbons.filter(({ seats }) => seats.length > 0).length ?? 0;
    expect(body('labels').match(/class="label"/g)).toHaveLength(2 * used);
    expect(body('labels').match(/L2 · 1/g)).toHaveLength(2);
  });
});

describe('the gig card', () => {
  it('is one page, with what feeds what, who is host, and what is wrong', () => {
    expect(body('gig-card')).toContain('+12 V 1600 mA');
    expect(body('gig-card')).toContain('host Jetty A');
    const second = pagesOf(factsOf(demoLayout(), demoLayout().takes[1]?.id ?? '', { paper })).filter(
      ({ id }) => id === 'gig-card',
    );
    expect(second).toHaveLength(1);
    expect(second[0]?.body.text).toContain('would do damage');
  });
});
