import { describe, expect, it } from 'vitest';
import { allAtOnce } from '../../src/checks/all-at-once.ts';
import { searchBetterFeeds } from '../../src/checks/remedies/better-feeds.ts';
import { takeAfter } from '../../src/checks/remedies/outcome.ts';
import { editsOf } from '../../src/checks/remedies/remedy.ts';
import { checkTake } from '../../src/checks/run.ts';
import { worstLossMv } from '../../src/electrical/best-feed.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { bigLayout } from '../support/big-take.ts';

const derive = ({ kit, takes: [take] }: Layout) => deriveTake(kit, take ?? expect.fail('no take'));

const better = (layout: Layout) => allAtOnce(searchBetterFeeds(derive(layout)));

/** The same with leads of another length. */
const withLeads = (layout: Layout, atMm: number): Layout => ({
  ...layout,
  kit: {
    ...layout.kit,
    ribbons: layout.kit.ribbons.map((kind) =>
      kind.id === 'lead-10-600'
        ? { ...kind, connectors: kind.connectors.map((each) => (each.atMm > 0 ? { ...each, atMm } : each)) }
        : kind,
    ),
  },
});

describe('better feeds', () => {
  it('are offered for each group once, with the loss that comes true when they are taken', () => {
    const layout = bigLayout(12);
    const take = derive(layout);
    const offers = better(layout);
    expect(offers).toHaveLength(2);
    for (const { mend, nowMv, thenMv, from, to } of offers) {
      expect(from).toContain('Boulder');
      expect(to).toContain('Cobble');
      const island = take.supplyNet.islands.find(({ modules }) => modules.some(({ name }) => name === to));
      const modules = new Set((island ?? expect.fail('no island')).modules.map(({ id }) => id));
      const after = takeAfter(take, editsOf(mend)) ?? expect.fail('refused');
      expect(worstLossMv(take, modules)).toBe(nowMv);
      expect(worstLossMv(after, modules)).toBeCloseTo(thenMv, 9);
      expect(nowMv - thenMv).toBeGreaterThanOrEqual(1);
      const severe = checkTake(after).filter(({ level }) => level !== 'reminder');
      expect(severe.length).toBeLessThanOrEqual(
        checkTake(take).filter(({ level }) => level !== 'reminder').length,
      );
    }
  });

  it('are not offered where the lead would not reach, nor for less than a millivolt', () => {
    const fedAt = (leadMm: number): string[] => better(withLeads(bigLayout(24), leadMm)).map(({ to }) => to);
    expect(fedAt(600)).toEqual([0, 1, 2, 3].map((group) => `Cobble (c3-${group})`));
    // The board lies over the second and third group: of the others the lead reaches the Boulder of one and no Cobble.
    const short = checkTake(derive(withLeads(bigLayout(24), 300))).filter(
      ({ check }) => check === 'lead-short',
    );
    expect(short).toHaveLength(1);
    expect(fedAt(300)).toEqual(['Cobble (c3-1)', 'Cobble (c3-2)']);
    // Jetty A's group would gain 0.3 mV.
    expect(better(demoLayout())).toEqual([]);
  });
});
