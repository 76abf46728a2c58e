import fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Kit, Take } from '../../src/layout/layout.ts';
import { type Engine, engineOf, type Highs } from '../../src/planner/engine.ts';
import { type Proposal, proposeWiring } from '../../src/planner/propose-wiring.ts';
import { checkTake } from '../../src/checks/run.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { runs } from '../support/runs.ts';
import { bestOfAll, compare, type Outcome } from './every-wiring.ts';
import { smallRacks } from './small-racks.ts';

const engine: Engine = engineOf((await loadHighs()) as unknown as Highs);

function finished(kit: Kit, take: Take, by: Engine = engine): Proposal {
  const run = proposeWiring(kit, take, by);
  for (let step = run.next(); ; step = run.next()) {
    if (!step.done) continue;
    if (!step.value) throw new Error('the search came to no end');
    return step.value;
  }
}

const outcomeOf = ({ score }: Proposal): Outcome => [
  score.unlinked,
  score.unfed,
  score.cost,
  score.ribbons,
  score.worstLossMv,
];

describe('a proposed wiring', () => {
  it('is the best of all that there are, in small racks', () => {
    let optimal = 0;
    let all = 0;
    fc.assert(
      fc.property(smallRacks(5), ({ kit, take }) => {
        const proposal = finished(kit, take);
        const best = bestOfAll(kit, take);
        all++;
        if (proposal.optimal) optimal++;
        expect(best && compare(outcomeOf(proposal), best), `${outcomeOf(proposal)} beside ${best}`).toBe(0);
      }),
      runs(150),
    );
    expect(optimal / all).toBeGreaterThan(0.9);
  });
});
void demoLayout; void checkTake; void deriveTake;
