import { estimate } from '../checks/load-words.ts';
import { count, figure } from '../checks/words.ts';
import type { Arrangement } from '../planner/arrange.ts';
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
export function proofWords(proposal: Proposal | Arrangement): string {
  const { optimal, proven, bound, score } = proposal;
  if ('rows' in proposal && proposal.rows > proposal.leastRows)
    return `Not proven: ${count(proposal.leastRows, 'row')} might do, and there may be something better.`;
  if (optimal) return 'Proven: nothing does better, in the order in which it counts.';
  if (proven === 0) {
    const least = bound > 0 ? ` It cannot cost less than ${figure(bound)}.` : '';
    return `Not proven: there may be something better.${least}`;
  }
  const settled = LEVEL_WORDS.slice(0, proven);
  const open = LEVEL_WORDS[proven];
  const best = settled.length > 1 ? `${settled[0]} down to ${settled.at(-1)}` : settled[0];
  const loss = proven === 5 ? ` of ${estimate(score.worstLossMv)} mV` : '';
  const places = 'rows' in proposal ? ' wherever modules stand, rows included,' : '';
  return `Proven to be the best there is${places} in ${best}. Whether ${open}${loss} could be less is not proven.`;
}

const spending = ({ cost, unpriced }: Proposal['score']): string => {
  const money = cost > 0 ? [`${figure(cost)} to spend`] : [];
  const pieces = unpriced > 0 ? [`${count(unpriced, 'piece')} to buy whose price is not known`] : [];
  return [...money, ...pieces].join(' and ') || 'nothing to buy';
};

const missing = ({ unlinked, unfed }: Proposal['score']): string[] => [
  ...(unlinked > 0 ? [`${count(unlinked, 'module')} not linked`] : []),
  ...(unfed > 0 ? [`${count(unfed, 'module')} without power`] : []),
];

/** What a proposal comes to, in one sentence. */
export const scoreWords = ({ score }: Proposal): string =>
  [
    ...(score.unlinked + score.unfed > 0 ? missing(score) : ['Everything is linked and fed']),
    `${score.ribbons} ribbons and leads`,
    spending(score),
    `at most ${estimate(score.worstLossMv)} mV lost`,
  ].join(', ');
