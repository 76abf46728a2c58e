import { describe, expect, it } from 'vitest';
import { applied, littleLayout, module, refusalOf, takeOf } from '../support/little-layout.ts';

const layout = littleLayout({ modules: [module('a', 'cobble', 0, { label: 'Left' })] });

describe('rename-layout', () => {
  const rename = (title: string) => ({ type: 'rename-layout', title }) as const;

  it('changes the title, without blanks around it', () => {
    expect(applied(layout, rename(' Headland ')).title).toBe('Headland');
    expect(applied(layout, rename('Shoreline '))).toBe(layout);
  });

  it('is refused without one', () => {
    expect(refusalOf(layout, rename(' '))).toBe('A layout needs a title');
  });
});

describe('rename-take', () => {
  const rename = (name: string) => ({ type: 'rename-take', take: 'take', name }) as const;

  it('changes the name', () => {
    expect(takeOf(applied(layout, rename('Regrouped'))).name).toBe('Regrouped');
    expect(applied(layout, rename('Take'))).toBe(layout);
  });

  it('is refused without one', () => {
    expect(refusalOf(layout, rename(''))).toBe('A take needs a name');
  });
});

describe('rename-module', () => {
  const rename = (label: string | null) =>
    ({ type: 'rename-module', take: 'take', module: 'a', label }) as const;
  const labelAfter = (label: string | null) => takeOf(applied(layout, rename(label))).modules[0];

  it('changes the label or takes it away', () => {
    expect(labelAfter('Right ')).toMatchObject({ label: 'Right' });
    expect(labelAfter(null)).toEqual(module('a', 'cobble', 0));
    expect(labelAfter(' ')).toEqual(module('a', 'cobble', 0));
    expect(applied(layout, rename('Left'))).toBe(layout);
  });
});
