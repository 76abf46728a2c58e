import fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { checkTake } from '../../src/checks/run.ts';
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
import { smallRacks } from './small-racks.ts';

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
  return endOf(new Chooser(task, model, engine, judgeOf(task, take, model)).run());
}

describe('a proposed wiring', () => {
  const isBest = (most: number) =>
    fc.property(smallRacks(most), ({ kit, take }) => {
      const proposal = wired(kit, take);
      const best = bestOfAll(kit, take);
      expect(
        best && compare(outcome(proposal.score), best),
        `${outcome(proposal.score)} beside ${best}`,
      ).toBe(0);
      expect(proposal.optimal).toBe(true);
      const conflicts = checkTake(deriveTake(kit, proposal.take)).filter(({ level }) => level !== 'reminder');
      if (proposal.unlinked.length === 0) expect(conflicts).toEqual([]);
      expect(proposal.unlinked.every(({ why }) => /\(.+\)|others|no /.test(why))).toBe(true);
    });

  it('is the best of all that there are, in small racks', () => fc.assert(isBest(4), runs(110)));

  it('is the best of all in racks of up to seven modules', () => fc.assert(isBest(7), runs(6)));

  it('is what a program in whole numbers finds in middle-sized racks', () => {
    fc.assert(
      fc.property(smallRacks(9), ({ kit, take }) => {
        const proposal = wired(kit, take);
        const program = byProgram(kit, take);
        expect(compare(outcome(proposal.score), outcome(program.score))).toBe(0);
      }),
      runs(6),
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
    const conflicts = checkTake(deriveTake(kit, found.take)).filter(({ level }) => level !== 'reminder');
    expect(conflicts).toEqual([]);
    const at = (modules: Take['modules']) => modules.find(({ id }) => id === 'foghorn');
    expect(at(found.take.modules)).toEqual(at(pinned.modules));
    expect(found.rows).toBe(found.leastRows);
    expect(found.optimal).toBe(false);
  }, 20_000);
});
