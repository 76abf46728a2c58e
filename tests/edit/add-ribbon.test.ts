import { describe, expect, it } from 'vitest';
import type { AddRibbon } from '../../src/edit/add-ribbon.ts';
import { freshRibbonId } from '../../src/edit/fresh.ts';
import { applied, littleLayout, module, ribbon, seats, takeOf } from '../support/little-layout.ts';

const layout = littleLayout({
  modules: [module('a', 'cobble', 0), module('b', 'cobble', 5)],
  ribbons: [ribbon('shore3-1', 'shore3', [], { label: 'S1' }), ribbon('x', 'shore3', [], { label: 'S3' })],
});

const add = (more: Partial<AddRibbon> = {}): AddRibbon => ({
  type: 'add-ribbon',
  take: 'take',
  kind: 'shore3',
  seats: seats('a', 'b'),
  prefix: 'S',
  ...more,
});

const added = (edit: AddRibbon) => takeOf(applied(layout, edit)).ribbons.at(-1);

describe('add-ribbon', () => {
  it('lays a ribbon with its seats, under the id told beforehand and the next free label', () => {
    expect(added(add())).toEqual({ id: 'shore3-2', kind: 'shore3', label: 'S2', seats: seats('a', 'b') });
    expect(freshRibbonId(takeOf(layout), 'shore3')).toBe('shore3-2');
  });

  it('counts each prefix by itself', () => {
    expect(added(add({ kind: 'lead', prefix: 'L' }))?.label).toBe('L1');
  });

  it('takes a stripe, a label and joints that it is given', () => {
    const tail = add({ kind: 'extension', seats: seats(['shore3-1', 2]), stripe: 'up', label: 'Tail' });
    expect(added(tail)).toEqual({
      id: 'extension-1',
      kind: 'extension',
      label: 'Tail',
      stripe: 'up',
      seats: seats(['shore3-1', 2]),
    });
  });
});
