import { estimate } from '../checks/load-words.ts';
import { count, figure } from '../checks/words.ts';
import type { Proposal } from '../planner/propose-wiring.ts';

const LEVEL_WORDS = [
  'what stays unlinked',
  'what stays without power',
  'the money',
  'the pieces without a price',
  'the number of ribbons',
  'the worst voltage loss',
] as const;

/** How good a proposal is known to be, in one sentence. */
export function proofWords({ optimal, proven, bound, score }: Proposal): string {
  if (optimal) return 'Proven: nothing does better, in the order in which it counts.';
  if (proven === 0)
    return `Not proven: there may be something better. It cannot cost less than ${figure(bound)}.`;
  const settled = LEVEL_WORDS.slice(0, proven);
  const open = LEVEL_WORDS[proven];
  const last = settled.length > 1 ? ` up to ${settled.at(-1)}` : '';
  return `Proven${last}${settled.length === 1 ? `: ${settled[0]}` : ''}; that ${open} could not be lower is not proven (${estimate(score.worstLossMv)} mV is lost at worst).`;
}

/** What a proposal comes to, in one sentence. */
export const scoreWords = ({ score, unlinked }: Proposal): string =>
  [
    unlinked.length === 0 ? 'Everything is linked and fed' : `${count(unlinked.length, 'module')} left`,
    `${score.ribbons} ribbons and leads`,
    score.cost > 0 || score.unpriced > 0
      ? `${figure(score.cost)} to spend${score.unpriced > 0 ? ` and ${count(score.unpriced, 'piece')} without a price` : ''}`
      : 'nothing to buy',
    `at most ${estimate(score.worstLossMv)} mV lost`,
  ].join(', ');
