import { describe, expect, it } from 'vitest';
import { countKinds, usesWords } from '../../../app/kinds/count-kinds.ts';
import { listedKinds, unknownWords } from '../../../app/stock/modules-page.tsx';
import { demoLayout, type ModuleKind } from '../../../src/index.ts';

const { kit: shoreline, takes } = demoLayout();
const spare: ModuleKind = {
  id: 'skerry',
  name: 'Skerry',
  widthHp: 6,
  draws: { '+12': null },
  headers: [{ id: 'in', bus: 'tide', role: 'member', xMm: 5, yMm: 5 }],
  notes: 'borrowed',
};
const kit = { ...shoreline, modules: [...shoreline.modules, spare] };
const counts = countKinds({ takes });

const listed = (filter: Parameters<typeof listedKinds>[2], find = '') =>
  listedKinds(kit, counts, filter, find).map(({ id }) => id);

describe('the page of modules', () => {
  it('counts where modules of a kind stand', () => {
    expect(usesWords(counts.get('cobble')?.takes ?? [])).toBe(
      '6 modules in Three jetties, 6 modules in One long jetty',
    );
    expect(usesWords(counts.get('kelp')?.takes ?? [])).toBe(
      '1 module in Three jetties, 1 module in One long jetty',
    );
    expect(counts.has('skerry')).toBe(false);
  });

  it('filters by use, by bus and by what is not known', () => {
    expect(listed('unused')).toEqual(['skerry']);
    expect(listed('used')).toHaveLength(shoreline.modules.length);
    expect(listed('bus tide')).toEqual(['harbour', 'jetty', 'skerry']);
    expect(listed('unknown')).toEqual(['kelp', 'skerry']);
    expect(listed('all')).toHaveLength(kit.modules.length);
  });

  it('finds by name, bus and notes, every word of it', () => {
    expect(listed('all', 'BORROWED')).toEqual(['skerry']);
    expect(listed('all', 'tide jet')).toEqual(['jetty']);
    expect(listed('used', 'skerry')).toEqual([]);
  });

  it('says what is not known, and what is only guessed', () => {
    expect(unknownWords(spare)).toBe('Not known: depth, current on +12 V, pin 1 of in');
    expect(unknownWords(kit.modules.find(({ id }) => id === 'kelp') as ModuleKind)).toBe(
      'Its figures are guessed',
    );
  });
});
