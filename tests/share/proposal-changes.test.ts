import { describe, expect, it } from 'vitest';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Take } from '../../src/layout/layout.ts';
import { proposalChanges } from '../../src/share/proposal-changes.ts';
import { pressingFigures, sideBySide } from '../../src/share/side-by-side.ts';

const { kit, takes } = demoLayout();
const [first, second] = takes as [Take, Take];

const without = (take: Take, id: string): Take => ({
  ...take,
  ribbons: take.ribbons.filter((ribbon) => ribbon.id !== id),
});

/** The same ribbon under another name, as if it had been laid anew. */
const anew = (take: Take, id: string, label: string): Take => ({
  ...take,
  ribbons: take.ribbons.map((ribbon) => (ribbon.id === id ? { ...ribbon, id: 'new', label } : ribbon)),
});

const told = (mine: Take, proposed: Take): string[] =>
  proposalChanges(kit, mine, proposed).map(({ what, why }) => `${what}: ${why}`);

describe('what a proposal changes, and why', () => {
  it('tells of nothing where nothing changes', () => expect(told(first, first)).toEqual([]));

  it('tells what a ribbon links and what it takes the place of', () => {
    expect(told(first, anew(first, 's1', 'S9'))).toEqual([
      expect.stringMatching(/^S9 laid: links .+ to Jetty A$/),
      'S1 taken out: S9 takes its place',
    ]);
  });

  it('tells who was not linked, and who had no power', () => {
    const [laid] = told(without(first, 's1'), first);
    expect(laid).toMatch(/^S1 laid: links .+ were not linked$/);
    const lead = first.ribbons.find(({ label }) => label === 'L5');
    const [fed] = told(without(first, lead?.id ?? ''), first);
    expect(fed).toMatch(/^L5 laid: feeds Foghorn, .+ mV lost at most; Foghorn had no power$/);
  });

  it('gives the fault in which a ribbon takes part', () => {
    expect(told(second, without(second, 's1'))).toEqual([
      'S1 taken out: because S1, connector 4 lands one pin row off Cobble 3',
    ]);
  });

  it('says for whom a module moved', () => {
    const modules = first.modules.map((each) =>
      each.id === 'foghorn' ? { ...each, atHp: each.atHp + 1 } : each,
    );
    expect(told(first, { ...first, modules })).toEqual([
      expect.stringMatching(/^Foghorn moved .+: makes room$/),
    ]);
  });

  it('calls less lost no merit where fewer are fed', () => {
    const dark = { ...first, ribbons: first.ribbons.slice(0, 6) };
    const beside = sideBySide({ kit, take: first }, { kit, take: dark });
    const loss = beside.figures.find(({ what }) => what === 'Worst voltage loss');
    expect(loss).toMatchObject({ theirs: '0 mV' });
    expect(loss?.better).toBeUndefined();
    expect(pressingFigures(beside).map(({ what }) => what)).toContain('Modules without power');
    const fewer = sideBySide({ kit, take: first }, { kit, take: second }).figures;
    expect(fewer.find(({ what }) => what === 'Ribbons and leads')?.better).toBe('theirs');
  });
});
