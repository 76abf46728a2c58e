import type { Kit, Take } from '../layout/layout.ts';
import { groupsOn } from './all-groups.ts';
import { withoutBeaten } from './beaten.ts';
import { Chooser, type Progress, type Score } from './choose.ts';
import { chooseQuickly } from './choose-quickly.ts';
import type { Engine } from './engine.ts';
import type { Group } from './groups.ts';
import { judgeOf } from './judge-choice.ts';
import { keepWhatDoes } from './keep-what-does.ts';
import { allLeads } from './leads.ts';
import { columnsOf, modelOf } from './model.ts';
import { compareScores, scoreOf } from './score-of.ts';
import { derivedOf, taskOf } from './task.ts';
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
  /** Numbers of the score that are proven, from the first. */
  readonly proven: number;
}

/** Above this a proof by the engine would keep people waiting too long; the plan at hand is given as not proven. */
const MOST_COLUMNS = 500;

/**
 * Wires a take anew with its modules where they stand. Ends without a value where the engine gives up.
 *
 * @param isTrial - one of many: what is found quickly will do
 */
export function* proposeWiring(
  kit: Kit,
  take: Take,
  engine: Engine,
  { isTrial = false } = {},
): Generator<Progress, Proposal | undefined> {
  const task = taskOf(kit, take);
  let complete = true;
  function* allGroups(isThorough: boolean): Generator<Progress, readonly Group[]> {
    const groups: Group[] = [];
    for (const bus of task.free.keys()) {
      yield { step: 'looking', found: groups.length };
      const found = groupsOn(task, bus, isThorough);
      for (const group of found.groups) groups.push(group);
      complete &&= found.complete;
    }
    return groups;
  }
  const groups = yield* allGroups(false);
  const leads = allLeads(task);
  complete &&= leads.complete;
  const columns = columnsOf(task, {
    groups: withoutBeaten(task, groups),
    leads: leads.leads,
  });
  yield { step: 'linking', found: columns.groups.length + columns.leads.length };
  const quick = chooseQuickly(task, columns);
  if (isTrial && !quick) return undefined;
  let chosen = quick?.chosen;
  const isSmall = columns.groups.length + columns.leads.length <= MOST_COLUMNS;
  if (!quick || (!quick.isSettled && isSmall && !isTrial)) {
    // What was left out might suit where nothing else does.
    const all = quick ? columns : columnsOf(task, { groups: yield* allGroups(true), leads: leads.leads });
    const model = modelOf(task, all);
    chosen = yield* new Chooser(task, model, engine, judgeOf(task, model)).run(
      quick && quick.chosen.proven >= 5 ? quick.chosen : undefined,
    );
  }
  if (!chosen) return undefined;
  const drawn = writeTake(task, chosen.choice).take;
  const proposed = isTrial ? drawn : keepWhatDoes(task, drawn);
  // As it is wired now it may be just as good, or better where ribbons are twisted, which no proposal does.
  const own = scoreOf(task, take);
  const score = scoreOf(task, proposed);
  const stays = own !== undefined && (score === undefined || compareScores(own, score) <= 0);
  const written = stays ? take : proposed;
  const isBeaten =
    own !== undefined && compareScores({ ...own, worstLossMv: 0 }, { ...chosen.score, worstLossMv: 0 }) < 0;
  const isSure = complete && !isBeaten && (score !== undefined || stays);
  const proven = isSure ? chosen.proven : 0;
  return {
    take: written,
    unlinked: whyUnlinked(task, derivedOf(task, written), groups),
    score: stays ? own : (score ?? chosen.score),
    bound: isSure ? chosen.bound : 0,
    optimal: proven === 6,
    proven,
  };
}
