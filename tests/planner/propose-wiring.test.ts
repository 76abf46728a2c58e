import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { pressingNotes } from '../../src/checks/run.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Kit, Take } from '../../src/layout/layout.ts';
import { groupsOn } from '../../src/planner/all-groups.ts';
import { proposeArrangement } from '../../src/planner/arrange.ts';
import { Chooser } from '../../src/planner/choose.ts';
import { type Engine, engineOf, type Highs } from '../../src/planner/engine.ts';
import { judgeOf } from '../../src/planner/judge-choice.ts';
import { allLeads } from '../../src/planner/leads.ts';
import { columnsOf, modelOf } from '../../src/planner/model.ts';
import { type Proposal, proposeWiring } from '../../src/planner/propose-wiring.ts';
import { scoreOf } from '../../src/planner/score-of.ts';
import { taskOf } from '../../src/planner/task.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { runs } from '../support/runs.ts';
import { bestOfAll, compare, type Outcome } from './every-wiring.ts';
import { middleRacks } from './middle-racks.ts';
import { smallRacks } from './small-racks.ts';

/** Found among the middle-sized racks below, with seed 20261128. */
const BREAKS_OFF = new URL('../fixtures/rack-where-presolve-breaks-off.json', import.meta.url);

const engine: Engine = engineOf((await loadHighs()) as unknown as Highs);

function endOf<T>(run: Generator<unknown, T | undefined>): T {
  for (let step = run.next(); ; step = run.next()) {
    if (!step.done) continue;
    if (!step.value) throw new Error('the search came to no end');
    return step.value;
  }
}

const wired = (kit: Kit, take: Take): Proposal => endOf(proposeWiring(kit, take, engine));

const outcome = ({ unlinked, unfed, cost, ribbons, worstLossMv }: Proposal['score']): Outcome => [
  unlinked,
  unfed,
  cost,
  ribbons,
  worstLossMv,
];

/** The same choice as one program in whole numbers, nothing left out beforehand. */
function byProgram(kit: Kit, take: Take) {
  const task = taskOf(kit, take);
  const groups = [...task.free.keys()].flatMap((bus) => groupsOn(task, bus).groups);
  const model = modelOf(task, columnsOf(task, { groups, leads: allLeads(task).leads }));
  return endOf(new Chooser(task, model, engine, judgeOf(task, model)).run());
}

describe('a proposed wiring', () => {
  const isBest = (least: number, most: number) =>
    fc.property(smallRacks(least, most), ({ kit, take }) => {
      const proposal = wired(kit, take);
      const best = bestOfAll(kit, take);
      expect(
        best && compare(outcome(proposal.score), best),
        `${outcome(proposal.score)} beside ${best}`,
      ).toBe(0);
      expect(proposal.optimal).toBe(true);
      const conflicts = pressingNotes(deriveTake(kit, proposal.take));
      if (proposal.unlinked.length === 0) expect(conflicts).toEqual([]);
      expect(proposal.unlinked.every(({ why }) => /\(.+\)|others|no /.test(why))).toBe(true);
    });

  it('is the best of all that there are, in small racks', () => fc.assert(isBest(2, 4), runs(160)));

  it('is the best of all in racks of five to seven modules', () => fc.assert(isBest(5, 7), runs(45)));

  it('is compared with all there are, also where the checks are shown every way to lay a ribbon', () => {
    fc.assert(
      fc.property(smallRacks(2, 4), ({ kit, take }) => {
        expect(bestOfAll(kit, take, false)).toEqual(bestOfAll(kit, take));
      }),
      runs(4),
    );
  });

  const isWhatTheProgramFinds = ({ kit, take }: { readonly kit: Kit; readonly take: Take }): void => {
    const proposal = wired(kit, take);
    const program = byProgram(kit, take);
    expect(compare(outcome(proposal.score), outcome(program.score))).toBe(0);
    expect([proposal.proven, program.proven]).toEqual([6, 6]);
  };

  it('is what a program in whole numbers finds in small racks and in middle-sized ones', () => {
    fc.assert(fc.property(smallRacks(8, 12), isWhatTheProgramFinds), runs(4));
    fc.assert(fc.property(middleRacks, isWhatTheProgramFinds), runs(6));
  });

  it('is so, too, where HiGHS breaks off while it simplifies', () => {
    const { kit, take } = JSON.parse(readFileSync(BREAKS_OFF, 'utf8'));
    isWhatTheProgramFinds({ kit, take });
  });

  it('is never worse than what is wired already, and as good whatever that is', () => {
    fc.assert(
      fc.property(smallRacks(3, 7), ({ kit, take }) => {
        const otherwise = { ...kit, ribbons: kit.ribbons.map((each) => ({ ...each, owned: 1, price: 1 })) };
        const mine = wired(otherwise, take).take;
        const proposal = wired(kit, mine);
        const own = scoreOf(taskOf(kit, mine), mine);
        if (own) expect(compare(outcome(proposal.score), outcome(own))).toBeLessThanOrEqual(0);
        expect(compare(outcome(proposal.score), outcome(wired(kit, take).score))).toBe(0);
        expect(scoreOf(taskOf(kit, mine), proposal.take)).toEqual(proposal.score);
      }),
      runs(12),
    );
  });

  it.each(demoLayout().takes)('of the demo, $name, is not worse than its own', (take) => {
    const { kit } = demoLayout();
    const proposal = wired(kit, take);
    const own = scoreOf(taskOf(kit, take), take);
    if (own) expect(compare(outcome(proposal.score), outcome(own))).toBeLessThanOrEqual(0);
    expect(proposal.take.modules).toEqual(take.modules);
    expect(proposal.proven).toBeGreaterThanOrEqual(5);
  });

  it('keeps locked ribbons, and joins others to them', () => {
    const { kit, takes } = demoLayout();
    const [take] = takes as [Take];
    const locked = {
      ...take,
      ribbons: take.ribbons.map((each) => (each.id === 's1' ? { ...each, locked: true } : each)),
    };
    const proposal = wired(kit, locked);
    expect(proposal.take.ribbons.find(({ id }) => id === 's1')).toEqual(
      locked.ribbons.find(({ id }) => id === 's1'),
    );
    expect(proposal.unlinked).toEqual([]);
  });
});

describe('a proposed arrangement', () => {
  const { kit, takes } = demoLayout();
  const [take] = takes as [Take];

  it('links and feeds all of the demo without damage or fault, pinned modules where they were', () => {
    const pinned = {
      ...take,
      modules: take.modules.map((each) => (each.id === 'foghorn' ? { ...each, pinned: true } : each)),
    };
    const found = endOf(proposeArrangement(kit, pinned, engine));
    expect(found.unlinked).toEqual([]);
    expect(pressingNotes(deriveTake(kit, found.take))).toEqual([]);
    const at = (modules: Take['modules']) => modules.find(({ id }) => id === 'foghorn');
    expect(at(found.take.modules)).toEqual(at(pinned.modules));
    expect(found.rows).toBe(found.leastRows);
    expect(found.optimal).toBe(false);
    expect(found.proven).toBeGreaterThanOrEqual(4);
  }, 20_000);

  it('claims nothing that any order of modules side by side betters', () => {
    const claimed: number[] = [];
    fc.assert(
      fc.property(smallRacks(2, 3), ({ kit: small, take: rack }) => {
        const found = endOf(proposeArrangement(small, rack, engine));
        claimed.push(found.proven);
        expect(found.rows).toBeGreaterThanOrEqual(found.leastRows);
        const own = outcome(found.score);
        for (const modules of packings(rack)) {
          const other = outcome(wired(small, { ...rack, modules }).score);
          const rows = new Set(modules.map(({ row }) => row)).size;
          expect(rows).toBeGreaterThanOrEqual(found.leastRows);
          // Of the six numbers an outcome leaves out the pieces without a price.
          const most = Math.min(found.proven, 5) - (found.proven > 3 ? 1 : 0);
          const first = (numbers: Outcome): Outcome =>
            numbers.map((each, i) => (i < most ? each : 0)) as never;
          expect(compare(first(own), first(other)), `${own} beside ${other}`).toBeLessThanOrEqual(0);
          if (other[0] === own[0] && other[1] === own[1])
            expect(other[2]).toBeGreaterThanOrEqual(found.bound);
        }
      }),
      runs(10),
    );
    expect(Math.max(...claimed)).toBe(5);
  });
});

/** Modules side by side from the left, in every order, in one row or cut in two. */
function* packings({ modules }: Take): Generator<Take['modules']> {
  function* orders(left: Take['modules']): Generator<Take['modules']> {
    if (left.length === 0) yield [];
    for (const first of left)
      for (const rest of orders(left.filter((each) => each !== first))) yield [first, ...rest];
  }
  for (const order of orders(modules))
    for (let cut = 1; cut <= order.length; cut++)
      yield order.map((module, i) => ({
        ...module,
        row: i < cut ? 'upper' : 'lower',
        atHp: 5 * (i < cut ? i : i - cut),
      }));
}
