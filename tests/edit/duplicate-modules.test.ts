import { describe, expect, it } from 'vitest';
import type { Take } from '../../src/layout/layout.ts';
import { applied, littleLayout, module, ribbon, row, seats, takeOf } from '../support/little-layout.ts';

/** What is new in a take after its modules of these ids were duplicated. */
function copies(parts: Partial<Take>, ...modules: readonly string[]) {
  const before = littleLayout(parts);
  const after = takeOf(applied(before, { type: 'duplicate-modules', take: 'take', modules }));
  const added = <T>(list: readonly T[], old: readonly T[]) => list.filter((item) => !old.includes(item));
  return {
    modules: added(after.modules, takeOf(before).modules),
    ribbons: added(after.ribbons, takeOf(before).ribbons),
    after,
    before: takeOf(before),
  };
}

const placesOf = (made: { readonly modules: Take['modules'] }) =>
  made.modules.map(({ row: rowId, atHp }) => [rowId, atHp]);

describe('duplicate-modules', () => {
  it('stands copies next to the originals on the right, spaced as they are', () => {
    const made = copies({ modules: [module('a', 'cobble', 3), module('b', 'gull', 10)] }, 'a', 'b');
    expect(placesOf(made)).toEqual([
      ['top', 15],
      ['top', 22],
    ]);
    expect(made.modules.map(({ id }) => id)).toEqual(['cobble-1', 'gull-1']);
  });

  it('looks further right for the first place that has room for all', () => {
    const modules = [module('a', 'cobble', 0), module('b', 'cobble', 8), module('x', 'boulder', 20)];
    expect(placesOf(copies({ modules }, 'a', 'b'))).toEqual([
      ['top', 35],
      ['top', 43],
    ]);
  });

  it('then looks left, from the originals on', () => {
    const modules = [module('a', 'cobble', 52), module('x', 'cobble', 44.5)];
    expect(placesOf(copies({ modules }, 'a'))).toEqual([['top', 39]]);
  });

  it('then in the other rows of the same height, from the top and the left', () => {
    const rows = [row('flat', 60, { heightU: 1 }), row('top', 9), row('low', 60), row('base', 60)];
    const modules = [module('a', 'cobble', 2.5), module('x', 'cobble', 0, { row: 'low' })];
    expect(placesOf(copies({ rows, modules }, 'a'))).toEqual([['low', 5.5]]);
  });

  it('goes to the very ends of a row', () => {
    const full = [
      module('a', 'cobble', 50),
      module('x', 'boulder', 5),
      module('y', 'boulder', 20),
      module('z', 'boulder', 35),
    ];
    expect(placesOf(copies({ modules: full }, 'a'))).toEqual([['top', 55]]);
    const fuller = [...full, module('b', 'cobble', 55)];
    expect(placesOf(copies({ modules: fuller }, 'a'))).toEqual([['top', 0]]);
  });

  it('does not stand copies among the originals', () => {
    const rows = [row('top', 31), row('low', 60)];
    const modules = [module('a', 'cobble', 0), module('b', 'cobble', 20)];
    expect(placesOf(copies({ rows, modules }, 'a', 'b'))).toEqual([
      ['low', 0],
      ['low', 20],
    ]);
  });

  it('keeps a group of several rows in those rows, or moves it as a whole', () => {
    const modules = [module('a', 'cobble', 0), module('b', 'cobble', 2, { row: 'low' })];
    expect(placesOf(copies({ modules }, 'a', 'b'))).toEqual([
      ['top', 7],
      ['low', 9],
    ]);
    const rows = [row('top', 8), row('low', 8), row('base', 60)];
    const down = copies({ rows, modules: [module('a', 'cobble', 0, { row: 'low' })] }, 'a');
    expect(placesOf(down)).toEqual([['top', 0]]);
  });

  it('stands past the last module where there is no room', () => {
    const rows = [row('top', 12)];
    const modules = [module('a', 'cobble', 0), module('x', 'cobble', 5.5)];
    expect(placesOf(copies({ rows, modules }, 'a'))).toEqual([['top', 11]]);
  });

  it('numbers labels on, and leaves copies free to move', () => {
    const modules = [
      module('a', 'cobble', 0, { label: 'Cobble', pinned: true }),
      module('b', 'cobble', 5, { label: 'Left' }),
      module('c', 'mark', 10),
    ];
    const made = copies({ modules }, 'a', 'b', 'c');
    expect(made.modules.map(({ label, pinned }) => [label, pinned])).toEqual([
      ['Cobble 2', undefined],
      ['Left 2', undefined],
      ['Mark 2 2', undefined],
    ]);
  });

  it('copies ribbons that hang on nothing else, with their joints', () => {
    const modules = ['a', 'b', 'x'].map((id, i) => module(id, 'cobble', 5 * i));
    const made = copies(
      {
        modules,
        ribbons: [
          ribbon('main', 'shore3', seats('a', null), { label: 'S1', stripe: 'up', locked: true }),
          ribbon('tail', 'extension', seats(['main', 1], 'b'), { label: 'Tail' }),
          ribbon('out', 'shore3', seats('b', 'x'), { label: 'S2' }),
          ribbon('led', 'lead', [
            { connector: 0, on: { module: 'a', header: 'shore' } },
            { connector: 1, on: { board: 'board', header: 'p1' } },
          ]),
          ribbon('end', 'extension', seats(['out', 2], 'a')),
          ribbon('spare', 'shore3', []),
        ],
      },
      'a',
      'b',
    );
    expect(made.ribbons).toEqual([
      { id: 'shore3-1', kind: 'shore3', label: 'S3', stripe: 'up', seats: seats('cobble-1', null) },
      {
        id: 'extension-1',
        kind: 'extension',
        label: 'Tail 2',
        seats: seats(['shore3-1', 1], 'cobble-2'),
      },
    ]);
    expect(made.after.ribbons.slice(0, 6).every((each, i) => each === made.before.ribbons[i])).toBe(true);
  });

  it('lets the list of ribbons be where none is copied, and everything where nothing is named', () => {
    const made = copies({ modules: [module('a', 'cobble', 0)] }, 'a');
    expect(made.after.ribbons).toBe(made.before.ribbons);
    const layout = littleLayout();
    expect(applied(layout, { type: 'duplicate-modules', take: 'take', modules: [] })).toBe(layout);
  });
});
