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

  it('changes nothing where none is named', () => {
    expect(applied(layout, { type: 'remove-modules', take: 'take', modules: [] })).toBe(layout);
  });
});
