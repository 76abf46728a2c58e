import { boardBudgets } from '../../electrical/budget.ts';
import { exceeds } from '../../geometry/exceeds.ts';
import type { About, Check, Examples } from '../check.ts';
import { BOARD, example, onBoard, onModule, ribbon, SUPPLY } from '../example.ts';
import { beyond, boardSpot, inDraws, ma } from '../load-words.ts';
import { lineName } from '../words.ts';

export const about: About = {
  title: 'Board overloaded',
  why: 'The tracks, terminals and lead of a board heat up beyond what they were made for.',
  source: 'common practice, no source',
};

export const boardOverload: Check = {
  id: 'board-overload',
  level: 'damage',
  whole: true,
  find: inDraws(function* (power) {
    for (const { board, voltage, ma: drawn, allowedMa } of boardBudgets(power)) {
      if (!exceeds(drawn, allowedMa)) continue;
      yield {
        subjects: [{ type: 'board', id: board.id }],
        part: voltage,
        headline: `${board.name} is overloaded on ${lineName(voltage)}`,
        detail: `${beyond(drawn, allowedMa)} are drawn from it. Take ${ma(drawn - allowedMa)} off it.`,
        remedy: 'Move some leads to another board.',
        measure: { ma: drawn, allowed: allowedMa },
        spots: [boardSpot(board)],
      };
    }
  }),
};

/** One module that draws 60 mA. */
const limited = (limitMa: number) =>
  example({
    supplies: [{ ...SUPPLY, boards: [{ ...BOARD, limits: { '+12': limitMa } }] }],
    modules: [['a', 'plain', 40]],
    ribbons: [ribbon('r', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });

export const examples: Examples = { good: () => limited(60), bad: () => limited(59.9) };
