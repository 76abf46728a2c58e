import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/edit/edit.ts';
import { applied, littleLayout, module, refusalOf, takeOf } from '../support/little-layout.ts';

const layout = littleLayout({ modules: [module('a', 'cobble', 0), module('b', 'cobble', 5)] });

const move = (id: string, atHp: number): Edit => ({
  type: 'move-modules',
  take: 'take',
  moves: [{ module: id, row: 'top', atHp }],
});
const together = (...edits: readonly Edit[]) => ({ type: 'several', label: 'tidy up', edits }) as const;

describe('several', () => {
  it('counts each edit from the outcome of the one before', () => {
    const rename = { type: 'rename-module', take: 'take', module: 'a', label: 'First' } as const;
    const done = applied(layout, together(move('a', 20), rename, move('a', 30)));
    expect(takeOf(done).modules[0]).toEqual(module('a', 'cobble', 30, { label: 'First' }));
    expect(takeOf(done).modules[1]).toBe(takeOf(layout).modules[1]);
  });

  it('refuses all where one is refused', () => {
    expect(refusalOf(layout, together(move('a', 20), move('nobody', 3)))).toBe('There is no module "nobody"');
  });

  it('changes nothing where none does', () => {
    expect(applied(layout, together())).toBe(layout);
    expect(applied(layout, together(move('a', 0)))).toBe(layout);
  });
});
