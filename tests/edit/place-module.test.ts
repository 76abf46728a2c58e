import { describe, expect, it } from 'vitest';
import { freshModuleId } from '../../src/edit/fresh.ts';
import type { PlaceModule } from '../../src/edit/place-module.ts';
import { applied, littleLayout, module, takeOf } from '../support/little-layout.ts';

const place = (more: Partial<PlaceModule> = {}): PlaceModule => ({
  type: 'place-module',
  take: 'take',
  kind: 'cobble',
  row: 'top',
  atHp: 10,
  ...more,
});

describe('place-module', () => {
  it('puts a module where it is asked to, named after its kind', () => {
    const after = applied(littleLayout(), place());
    expect(takeOf(after).modules).toEqual([
      { id: 'cobble-1', kind: 'cobble', row: 'top', atHp: 10, label: 'Cobble' },
    ]);
  });

  it('counts on from those that are there, filling gaps, under the id told beforehand', () => {
    let layout = littleLayout();
    for (let i = 0; i < 3; i++) layout = applied(layout, place({ atHp: 5 * i }));
    expect(takeOf(layout).modules.map(({ label }) => label)).toEqual(['Cobble', 'Cobble 2', 'Cobble 3']);
    layout = applied(layout, { type: 'remove-modules', take: 'take', modules: ['cobble-2'] });
    expect(freshModuleId(takeOf(layout), 'cobble')).toBe('cobble-2');
    expect(takeOf(applied(layout, place())).modules.at(-1)).toMatchObject({
      id: 'cobble-2',
      label: 'Cobble 2',
    });
  });

  it('counts a module without a label as one that bears the name of its kind', () => {
    const layout = littleLayout({ modules: [module('mine', 'cobble', 0)] });
    expect(takeOf(applied(layout, place())).modules.at(-1)).toMatchObject({
      id: 'cobble-1',
      label: 'Cobble 2',
    });
  });

  it('leaves a kind its own number', () => {
    const layout = applied(
      applied(littleLayout(), place({ kind: 'mark' })),
      place({ kind: 'mark', atHp: 20 }),
    );
    expect(takeOf(layout).modules.map(({ label }) => label)).toEqual(['Mark 2', 'Mark 2 2']);
  });

  it('overlaps what is there, or has it give way', () => {
    const layout = littleLayout({ modules: [module('a', 'cobble', 12)] });
    expect(takeOf(applied(layout, place())).modules.map(({ atHp }) => atHp)).toEqual([12, 10]);
    expect(takeOf(applied(layout, place({ push: true }))).modules.map(({ atHp }) => atHp)).toEqual([15, 10]);
  });

  it('rounds float noise away and nothing else', () => {
    const at = (atHp: number) => takeOf(applied(littleLayout(), place({ atHp }))).modules[0]?.atHp;
    expect(at(0.1 + 0.2)).toBe(0.3);
    expect(at(7.2504)).toBe(7.25);
    expect(at(7.254)).toBe(7.254);
    expect(at(-0.0001)).toBe(0);
  });
});
