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
describe('remove-ribbons', () => {
  const removeRibbons = (...ids: readonly string[]) =>
    takeOf(applied(layout, { type: 'remove-ribbons', take: 'take', ribbons: ids })).ribbons;

  it('takes ribbons away, locked ones too, and lets the modules be', () => {
    expect(removeRibbons('both', 'kept').map(({ id }) => id)).toEqual(['main', 'tail', 'long', 'spare']);
  });

  it('drops the plugs of others in them, and those others where nothing else holds them', () => {
    const after = removeRibbons('main');
    expect(after.map(({ id }) => id)).toEqual(['both', 'long', 'kept', 'spare']);
    expect(after[1]?.seats).toHaveLength(1);
  });

  it('changes nothing where none is named', () => {
    expect(applied(layout, { type: 'remove-ribbons', take: 'take', ribbons: [] })).toBe(layout);
  });
});
