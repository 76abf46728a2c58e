import type { Kit, Take } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import { groupsOn } from './all-groups.ts';
import { Chooser, type Progress, type Score } from './choose.ts';
import type { Engine } from './engine.ts';
import type { Group } from './groups.ts';
import { judgeOf } from './judge-choice.ts';
import { allLeads } from './leads.ts';
import { modelOf } from './model.ts';
import { taskOf } from './task.ts';
import { type Unlinked, whyUnlinked } from './why.ts';
import { writeTake } from './write-take.ts';

/** A take that the program proposes, and how good it is known to be. */
export interface Proposal {
  /** With the id and the name of the take that it is made of. */
  readonly take: Take;
  readonly unlinked: readonly Unlinked[];
  readonly score: Score;
  /** No take of this sort with as few left unlinked costs less. */
  readonly bound: number;
  /** Proven: none is better in any number of the score without being worse in one before it. */
  readonly optimal: boolean;
}

/** Wires a take anew with its modules where they stand. Ends without a value where the engine gives up. */
export function* proposeWiring(kit: Kit, take: Take, engine: Engine): Generator<Progress, Proposal | undefined> {
  const task = taskOf(kit, take);
  const groups: Group[] = [];
  let complete = true;
  for (const bus of task.free.keys()) {
    yield { step: 'looking', found: groups.length };
    const found = groupsOn(task, bus);
    groups.push(...found.groups);
    complete &&= found.complete;
  }
  const leads = allLeads(task);
  complete &&= leads.complete;
  yield { step: 'looking', found: groups.length + leads.leads.length };
  const model = modelOf(task, { groups, leads: leads.leads });
  const chooser = new Chooser(task, model, engine, judgeOf(task, take, model));
  const chosen = yield* chooser.run();
  if (!chosen) return undefined;
  const written = writeTake(task, take, chosen.choice).take;
  const derived = deriveTake(kit, written);
  return {
    take: written,
    unlinked: whyUnlinked(task, derived, groups),
    score: chosen.score,
    bound: complete ? chosen.bound : 0,
    optimal: complete && chosen.proven === 6,
  };
}
