import { describe, expect, it } from 'vitest';
import type { Layout, RibbonKind } from '../../src/layout/layout.ts';
import { applied, littleLayout, module, refusalOf, ribbon, seats, takeOf } from '../support/little-layout.ts';

const layout = littleLayout({
  modules: [module('a', 'cobble', 0), module('b', 'cobble', 5), module('c', 'cobble', 10)],
  ribbons: [
    ribbon('s', 'shore3', seats('a', 'b', 'c'), { twists: [0, 1], stripe: 'up' }),
    ribbon('x', 'extension', seats(['s', 2])),
    ribbon('l', 'lead', seats('c')),
  ],
});
const kindIn = ({ kit }: Layout, id: string) => kit.ribbons.find((kind) => kind.id === id) as RibbonKind;
const shore = kindIn(layout, 'shore3');
const reef: RibbonKind = {
  id: 'reef',
  name: 'Reef × 2',
  bus: 'shore',
  lay: 'flat',
  connectors: [{ atMm: 0 }, { atMm: 25.4 }],
};

describe('add-ribbon-kind', () => {
  it('adds a kind as the last, or behind another', () => {
    expect(applied(layout, { type: 'add-ribbon-kind', kind: reef }).kit.ribbons.at(-1)).toEqual(reef);
    const second = applied(layout, { type: 'add-ribbon-kind', kind: reef, after: 'shore3' });
    expect(second.kit.ribbons.map(({ id }) => id)).toEqual(['shore3', 'reef', 'extension', 'lead']);
  });

  it.each([
    [{ ...reef, id: 'lead' }, 'There is already a kind of ribbon "lead"'],
    [
      { ...reef, connectors: [{ atMm: 0 }] },
      'Reef × 2 cannot be kept so: connectors: needs at least 2 entries',
    ],
    [
      { ...reef, connectors: [{ atMm: 0 }, { atMm: 0 }] },
      'Reef × 2 cannot be kept so: connectors[1].atMm: places must rise; 0 comes before 0',
    ],
    [
      { ...reef, connectors: [{ atMm: 0 }, { atMm: 9, ways: 5 }] },
      'Reef × 2 cannot be kept so: connectors[1].ways: 5 ways on a ribbon of 4 conductors',
    ],
    [
      { ...reef, lay: 'loose' as const, bends: true },
      'Reef × 2 cannot be kept so: bends: a loose ribbon hangs freely; only a flat one bends',
    ],
  ])('refuses %j', (kind, words) => {
    expect(refusalOf(layout, { type: 'add-ribbon-kind', kind })).toBe(words);
  });
});

describe('change-ribbon-kind', () => {
  it('changes every ribbon of it and keeps what is not known', () => {
    const changed = applied(layout, {
      type: 'change-ribbon-kind',
      kind: { ...reef, id: 'shore3', bends: true },
    });
    expect(kindIn(changed, 'shore3')).toEqual({
      ...reef,
      id: 'shore3',
      bends: true,
      connectors: [{ atMm: 0, later: [0] }, { atMm: 25.4 }],
      later: null,
    });
  });

  it('takes lost connectors off, plugs in them too, and shortens its twists', () => {
    const changed = applied(layout, {
      type: 'change-ribbon-kind',
      kind: { ...shore, connectors: shore.connectors.slice(0, 2) },
    });
    expect(takeOf(changed).ribbons).toEqual([
      ribbon('s', 'shore3', seats('a', 'b'), { twists: [0], stripe: 'up' }),
      takeOf(layout).ribbons[2],
    ]);
    expect(takeOf(changed).ribbons[1]).toBe(takeOf(layout).ribbons[2]);
  });

  it('straightens what now hangs loose', () => {
    const changed = applied(layout, { type: 'change-ribbon-kind', kind: { ...shore, lay: 'loose' } });
    expect(takeOf(changed).ribbons[0]).toEqual(ribbon('s', 'shore3', seats('a', 'b', 'c')));
  });

  it('gives back the very layout where nothing changes', () => {
    expect(applied(layout, { type: 'change-ribbon-kind', kind: structuredClone(shore) })).toBe(layout);
  });
});

describe('remove-ribbon-kind', () => {
  it('takes a kind out that nobody uses, and says where one is used', () => {
    const added = applied(layout, { type: 'add-ribbon-kind', kind: reef });
    const removed = applied(added, { type: 'remove-ribbon-kind', kind: 'reef' });
    expect(removed.kit.ribbons).toEqual(layout.kit.ribbons);
    expect(refusalOf(layout, { type: 'remove-ribbon-kind', kind: 'lead' })).toBe(
      'Lead is in use: 1 ribbon in Take',
    );
  });
});
