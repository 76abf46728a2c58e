import { exceeds } from '../../geometry/exceeds.ts';
import type { PlacedBoard, PlacedModule } from '../../geometry/place.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { reachOf, reachWords, totalMm } from '../depth.ts';
import { BOARD, example, SUPPLY } from '../example.ts';
import { moduleSpot } from '../spots.ts';
import { mm, moduleSubject } from '../words.ts';

const coversSame = (module: PlacedModule, { board }: PlacedBoard): boolean =>
  exceeds(board.xMm + (board.widthMm ?? 0), module.leftMm) && exceeds(module.rightMm, board.xMm);

export const about: About = {
  title: 'Module standing on a board',
  why: 'Where a board stands on the floor of the case there is less depth; a deep module presses on live headers.',
  source: 'common practice, no source',
};

export const overBoard: Check = {
  id: 'over-board',
  level: 'fault',
  *find(take: DerivedTake) {
    const boards = take.places.boards.filter(({ board }) => (board.widthMm ?? 0) > 0);
    if (boards.length === 0) return;
    for (const module of take.places.modules) {
      const reach = reachOf(module, take);
      if (!reach || exceeds(totalMm(reach), module.row.row.depthMm)) continue;
      for (const board of boards) {
        const allowed = module.row.row.depthMm - (board.board.riseMm ?? 0);
        if (board.row !== module.row || !coversSame(module, board) || !exceeds(totalMm(reach), allowed))
          continue;
        yield {
          subjects: [moduleSubject(module), { type: 'board', id: board.id }],
          headline: `${module.name} would stand on ${board.name}`,
          detail: `It needs ${reachWords(reach, mm)}; above the board there are ${mm(allowed)}.`,
          remedy: 'Move the module beside the board, or the board to another place.',
          measure: { depthMm: totalMm(reach), allowedMm: allowed },
          spots: [moduleSpot(module)],
        };
      }
    }
  },
};

const risen = (riseMm: number) =>
  example({
    supplies: [{ ...SUPPLY, boards: [{ ...BOARD, xMm: 0, widthMm: 50, riseMm }] }],
    modules: [['a', 'voice', 0]],
  });

export const examples: Examples = { good: () => risen(30), bad: () => risen(31) };
