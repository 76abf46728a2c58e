import { describe, expect, it } from 'vitest';
import { applied, littleLayout, module, ribbon, seats, takeOf } from '../support/little-layout.ts';

const layout = littleLayout({
  modules: ['a', 'b', 'c', 'd'].map((id, i) => module(id, 'cobble', 5 * i)),
  ribbons: [
    ribbon('both', 'shore3', seats('a', 'b')),
    ribbon('main', 'shore3', seats('c', null)),
    ribbon('tail', 'extension', seats(['main', 1], null)),
    ribbon('long', 'extension', seats(['tail', 1], 'd')),
    ribbon('kept', 'shore3', seats('c'), { locked: true }),
    ribbon('spare', 'shore3', []),
  ],
});
const { ribbons } = takeOf(layout);

const remove = (...modules: readonly string[]) =>
  takeOf(applied(layout, { type: 'remove-modules', take: 'take', modules }));

describe('remove-modules', () => {
  it('takes modules away with the seats on them', () => {
    const after = remove('a');
    expect(after.modules.map(({ id }) => id)).toEqual(['b', 'c', 'd']);
    expect(after.ribbons[0]?.seats).toEqual([{ connector: 1, on: { module: 'b', header: 'shore' } }]);
    expect(after.ribbons.slice(1).every((each, i) => each === ribbons[i + 1])).toBe(true);
  });

  it('pulls out a ribbon that is left without any seat, and so on along its joints', () => {
    const after = remove('c').ribbons;
    expect(after.map(({ id }) => id)).toEqual(['both', 'long', 'kept', 'spare']);
    expect(after[1]?.seats).toEqual([{ connector: 1, on: { module: 'd', header: 'shore' } }]);
  });

  it('leaves a locked one and one that never had a seat', () => {
    const after = remove('a', 'b', 'c', 'd').ribbons;
    expect(after.map(({ id, seats: left }) => [id, left.length])).toEqual([
      ['kept', 0],
      ['spare', 0],
    ]);
    expect(after[1]).toBe(ribbons[5]);
  });

  it('pulls out a lead that is left with nothing but its board, unless it is locked', () => {
    const onBoard = (id: string, module: string, more = {}) =>
      ribbon(
        id,
        'lead',
        [{ connector: 0, on: { board: 'board', header: 'p1' } }, ...seats(null, module)],
        more,
      );
    const fed = littleLayout({
      modules: ['a', 'b', 'c'].map((id, i) => module(id, 'cobble', 5 * i)),
      ribbons: [
        onBoard('fed-a', 'a'),
        onBoard('locked', 'a', { locked: true }),
        onBoard('fed-b', 'b'),
        ribbon('further', 'extension', seats(['fed-c', 1], 'c')),
        ribbon('fed-c', 'lead', [{ connector: 0, on: { board: 'board', header: 'p1' } }]),
      ],
    });
    const removed = (...modules: string[]) =>
      takeOf(applied(fed, { type: 'remove-modules', take: 'take', modules })).ribbons;
    expect(removed('a').map(({ id }) => id)).toEqual(['locked', 'fed-b', 'further', 'fed-c']);
    expect(removed('a')[0]?.seats).toEqual([{ connector: 0, on: { board: 'board', header: 'p1' } }]);
    expect(removed('c').map(({ id }) => id)).toEqual(['fed-a', 'locked', 'fed-b']);
  });

  it('leaves a lead that feeds another module, and one that ties two headers of boards', () => {
    const board = (header: string) => ({ board: 'board', header });
    const fed = littleLayout({
      modules: [module('a', 'cobble', 0), module('b', 'cobble', 5)],
      ribbons: [
        ribbon('two', 'shore3', [{ connector: 2, on: board('p1') }, ...seats('a', 'b')]),
        ribbon('tie', 'shore3', [
          { connector: 1, on: board('p1') },
          { connector: 2, on: board('p1') },
          ...seats('a'),
        ]),
        ribbon('drawn', 'lead', [{ connector: 0, on: board('p1') }]),
      ],
    });
    const after = takeOf(applied(fed, { type: 'remove-modules', take: 'take', modules: ['a'] })).ribbons;
    expect(after.map(({ id, seats: left }) => [id, left.length])).toEqual([
      ['two', 2],
      ['tie', 2],
      ['drawn', 1],
    ]);
    expect(after[2]).toBe(takeOf(fed).ribbons[2]);
  });

  it('changes nothing where none is named', () => {
    expect(applied(layout, { type: 'remove-modules', take: 'take', modules: [] })).toBe(layout);
  });
});
