import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Note } from '../../src/checks/check.ts';
import {
  BOARD,
  example,
  kind,
  onBoard,
  onModule,
  powerHeader,
  ribbon,
  SUPPLY,
} from '../../src/checks/example.ts';
import { feedAll } from '../../src/checks/remedies/feeding.ts';
import { checkTake } from '../../src/checks/run.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { bigLayout } from '../support/big-take.ts';
import { runs } from '../support/runs.ts';
import { layoutWithLeads } from '../support/with-leads.ts';

const derive = (layout: Layout, at = 0) => deriveTake(layout.kit, layout.takes[at] ?? expect.fail('no take'));
const notes = (layout: Layout, at = 0): readonly Note[] => checkTake(derive(layout, at));
const of = (check: string, list: readonly Note[]): Note[] => list.filter((note) => note.check === check);

function fed(layout: Layout, at = 0) {
  const plan = feedAll(derive(layout, at));
  const done = plan.mend ? applyEdit(layout, plan.mend.edit) : { ok: true as const, value: layout };
  if (!done.ok) throw new Error(done.error.message);
  return { ...plan, after: done.value };
}

/** The demo's first take without its leads. */
function unfedDemo(): Layout {
  const demo = demoLayout();
  const [take] = demo.takes;
  if (!take) throw new Error('no take');
  return {
    ...demo,
    takes: [{ ...take, ribbons: take.ribbons.filter(({ label }) => !label?.startsWith('L')) }],
  };
}

describe('feeding all that need it', () => {
  it('gives each group of the demo one lead, and all is well', () => {
    const { after, chosen, unfed, mend } = fed(unfedDemo());
    expect(of('unpowered', notes(unfedDemo()))).toHaveLength(8);
    expect(notes(after).filter(({ level }) => level !== 'reminder')).toEqual([]);
    expect(mend?.label).toBe('Feed 8 groups by 8 leads');
    expect(unfed).toEqual([]);
    expect(chosen).toHaveLength(8);
    expect(chosen.join('\n')).toMatch(/Boulder 1 takes it for all \d: the shortest lead among them/);
    const [take] = after.takes;
    const owned = new Map(after.kit.ribbons.map(({ id, owned: n }) => [id, n ?? 0]));
    for (const { id } of after.kit.ribbons) {
      const used = take?.ribbons.filter(({ kind: own }) => own === id).length ?? 0;
      expect(used, id).toBeLessThanOrEqual(owned.get(id) ?? 0);
    }
  });

  it('is one step, and does nothing where nothing needs it', () => {
    expect(feedAll(derive(demoLayout())).mend).toBeUndefined();
    const { mend } = fed(unfedDemo());
    expect(mend?.edit.type).toBe('several');
  });

  it('buys where nothing owned is left, and says so', () => {
    const demo = unfedDemo();
    const none = {
      ...demo,
      kit: { ...demo.kit, ribbons: demo.kit.ribbons.map((each) => ({ ...each, owned: 0 })) },
    };
    expect(fed(none).chosen.every((words) => words.includes('(to buy)'))).toBe(true);
  });

  it('says what is missing where nothing can be done', () => {
    const dry = kind('dry', { draws: { '+12': 10 } });
    const wide = kind('wide', { draws: { '+12': 10 }, headers: [powerHeader({ bus: 'power16' })] });
    const five = kind('five', { draws: { '+5': 10 }, headers: [powerHeader()] });
    const words = (kindId: string, atHp: number, more: Parameters<typeof example>[0] = {}): string =>
      fed(example({ kinds: [dry, wide, five], modules: [['a', kindId, atHp]], ...more })).unfed.join(' ');
    expect(words('dry', 0)).toBe('dry has no power header.');
    // 300 − 20 mm along, 90 − 60 mm up, 40 mm to spare.
    expect(words('plain', 0)).toBe(
      'plain: no lead of the kit reaches: 350 mm needed, 10-way at the module, 10-way at the board.',
    );
    expect(words('plain', 40, { supplies: [] })).toContain('no free header on any board');
    expect(words('plain', 40, { supplies: [{ ...SUPPLY, ratings: { '-12': 100 } }] })).toContain(
      'no lead brings +12 V',
    );
    const taken = ribbon('r', 'lead', [onModule(1, 'a', 'power')]);
    expect(words('plain', 40, { ribbons: [taken] })).toBe('plain: every power header is in use.');
  });

  it('does not promise one header twice', () => {
    const two = example({
      supplies: [{ ...SUPPLY, boards: [{ ...BOARD, headers: BOARD.headers.slice(0, 1) }] }],
      modules: [
        ['a', 'plain', 40],
        ['b', 'plain', 50],
      ],
    });
    const { after, chosen, unfed } = fed(two);
    expect(chosen).toHaveLength(1);
    expect(unfed).toEqual(['plain (b): no free header on any board takes a lead that fits.']);
    expect(of('double-seat', notes(after))).toEqual([]);
  });

  it('leaves what is fed alone', () => {
    const one = example({
      modules: [
        ['a', 'plain', 40],
        ['b', 'plain', 50],
      ],
      ribbons: [ribbon('r', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
    });
    expect(fed(one).chosen).toHaveLength(1);
  });

  it('in any layout feeds what it says it feeds, and does no harm', () => {
    let leads = 0;
    const property = fc.property(layoutWithLeads, (layout) => {
      for (const at of layout.takes.keys()) {
        const before = notes(layout, at);
        const { after, chosen, unfed } = fed(layout, at);
        const now = notes(after, at);
        leads += chosen.length;
        expect(chosen.length + unfed.length).toBe(of('unpowered', before).length);
        expect(of('unpowered', now)).toHaveLength(of('unpowered', before).length - chosen.length);
        for (const check of [
          'double-feed',
          'joined-supplies',
          'missing-voltage',
          'double-seat',
          'lead-short',
          'no-host',
        ]) {
          expect(of(check, now).length, check).toBeLessThanOrEqual(of(check, before).length);
        }
        const damage = (list: readonly Note[]): number =>
          list.filter(({ level }) => level === 'damage').length;
        expect(damage(now)).toBeLessThanOrEqual(damage(before));
        expect([...chosen, ...unfed].join(' ')).not.toMatch(/undefined|NaN|\[object/);
      }
    });
    fc.assert(property, runs(200));
    expect(leads).toBeGreaterThan(20);
  });

  it('feeds a thousand modules in one go', () => {
    const big = bigLayout(1000);
    const [take] = big.takes;
    if (!take) throw new Error('no take');
    const kinds = new Map(big.kit.ribbons.map((each) => [each.id, each]));
    const bare = {
      ...big,
      takes: [{ ...take, ribbons: take.ribbons.filter((each) => kinds.get(each.kind)?.lay === 'flat') }],
    };
    const groups = of('unpowered', notes(bare)).length;
    expect(groups).toBeGreaterThan(100);
    const { after, chosen } = fed(bare);
    expect(chosen).toHaveLength(groups);
    expect(of('unpowered', notes(after))).toEqual([]);
  });
});
