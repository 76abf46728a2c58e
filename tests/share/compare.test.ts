import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/edit/apply.ts';
import type { Edit } from '../../src/edit/edit.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { compareLayouts, compareTakes, isKin } from '../../src/share/compare.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { runs } from '../support/runs.ts';

const mine = demoLayout();
const take = 'three-jetties';

function edited(...edits: Edit[]): Layout {
  return edits.reduce((layout, edit) => {
    const done = applyEdit(layout, edit);
    if (!done.ok) throw new Error(done.error.message);
    return done.value;
  }, mine);
}

const wordsOf = (theirs: Layout): string[] => compareLayouts(mine, theirs).map(({ words }) => words);

describe('what differs', () => {
  it.each<[string, Edit[], string[]]>([
    ['nothing', [], []],
    [
      'a module moved',
      [{ type: 'move-modules', take, moves: [{ module: 'gull-1', row: 'upper', atHp: 73 }] }],
      ['Gull 1 moved from 72 to 73 HP.'],
    ],
    [
      'a module in another row',
      [{ type: 'move-modules', take, moves: [{ module: 'gull-1', row: 'lower', atHp: 0 }] }],
      ['Gull 1 moved from 72 to Lower row, 0 HP.'],
    ],
    ['a ribbon taken out', [{ type: 'remove-ribbons', take, ribbons: ['s3'] }], ['S3 taken out.']],
    [
      'a ribbon turned',
      [{ type: 'label-ribbon', take, ribbon: 's3', label: 'Low shore' }],
      ['S3 is called Low shore.'],
    ],
    ['a take more and the title', [{ type: 'rename-layout', title: 'Tour' }], ['It is called Tour.']],
    ['a take gone', [{ type: 'remove-take', take: 'one-long-jetty' }], ['Without the take One long jetty.']],
    [
      'a module gone with its lead',
      [{ type: 'remove-modules', take, modules: ['kelp'] }],
      ['Kelp removed.', 'L7 taken out.'],
    ],
  ])('%s', (_, edits, words) => {
    expect(wordsOf(edited(...edits))).toEqual(words);
  });

  it('of kinds, by the fields that people know', () => {
    const modules = mine.kit.modules.map((kind) =>
      kind.id === 'gull' ? { ...kind, depthMm: 27, price: 80 } : kind,
    );
    const theirs = { ...mine, kit: { ...mine.kit, modules: [...modules.filter(({ id }) => id !== 'kelp')] } };
    expect(wordsOf(theirs)).toEqual([
      'Without the kind of module Kelp.',
      'Gull has another depth and price.',
    ]);
  });

  it('between two takes of one layout', () => {
    const [first, second] = mine.takes;
    if (!first || !second) throw new Error('two takes');
    const words = compareTakes({ kit: mine.kit, take: first }, { kit: mine.kit, take: second }).map(
      (one) => one.words,
    );
    expect(words).toContain('Cobble 3 moved from 60 to 25.5 HP.');
    expect(words).toContain('T3 taken out.');
  });

  it('is nothing between zeros of either sign, which plain JSON does not tell apart', () => {
    const mine = { ...demoLayout(), later: [-0] };
    expect(compareLayouts(mine, JSON.parse(JSON.stringify(mine)))).toEqual([]);
  });

  it('is nothing between a layout and its copy, and told from either side', () => {
    fc.assert(
      fc.property(arbitraryLayout, arbitraryLayout, (a, b) => {
        expect(compareLayouts(a, JSON.parse(JSON.stringify(a)))).toEqual([]);
        const turned = { added: 'removed', removed: 'added', changed: 'changed' } as const;
        const there = compareLayouts(a, b).map(({ sort, change, id, take: at }) =>
          [sort, turned[change], id, at].join(),
        );
        const back = compareLayouts(b, a).map(({ sort, change, id, take: at }) =>
          [sort, change, id, at].join(),
        );
        expect(there.sort()).toEqual(back.sort());
      }),
      runs(40),
    );
  });
});

describe('kin', () => {
  it('are a layout and its copy, and two copies of one', () => {
    const of = (id?: string, parent?: string): Layout => ({
      ...mine,
      ...(id && { id }),
      ...(parent && { parent }),
    });
    expect(isKin(of('a'), of('a'))).toBe(true);
    expect(isKin(of('a'), of('b', 'a'))).toBe(true);
    expect(isKin(of('b', 'a'), of('a'))).toBe(true);
    expect(isKin(of('b', 'a'), of('c', 'a'))).toBe(true);
    expect(isKin(of('a'), of('b'))).toBe(false);
    expect(isKin(of(), of())).toBe(false);
  });
});
