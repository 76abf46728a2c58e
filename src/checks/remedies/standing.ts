import type { PlacedModule } from '../../geometry/place.ts';
import { mmToHp } from '../../geometry/rack.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend } from '../check.ts';
import { modulesOf } from './cause.ts';
import type { Remedy } from './remedy.ts';
import { moveMends, ribbonMates, shiftsWithRoom, toRoom } from './room.ts';

/** Modules in the wrong place: to the nearest one with room and depth, alone or with all that ribbons join to it. */
function* elsewhere(module: PlacedModule, take: WholeTake): Generator<Mend> {
  yield* toRoom([module], take);
  const mates = ribbonMates(module, take);
  if (mates.length > 1) yield* toRoom(mates, take);
}

/** Neighbours that push others along, by as much as two modules share. */
function* apart([left, right]: readonly [PlacedModule, PlacedModule], take: WholeTake): Generator<Mend> {
  const { row } = left;
  const shared = left.module.atHp + left.facts.kind.widthHp - right.module.atHp;
  yield* moveMends({ modules: [right], row, shiftHp: shared, push: true }, take);
  yield* moveMends({ modules: [left], row, shiftHp: -shared, push: true }, take);
}

export const overlap: Remedy = function* (note, take) {
  const [a, b] = modulesOf(note, take).sort((one, other) => one.leftMm - other.leftMm);
  if (!a || !b) return;
  const nearest = (module: PlacedModule): number =>
    Math.abs(shiftsWithRoom([module], module.row, take)[0] ?? Number.POSITIVE_INFINITY);
  const [first, second] = nearest(a) < nearest(b) ? [a, b] : [b, a];
  // Each place costs a take derived anew: the others are looked for only where these do not mend it.
  const rooms = [toRoom([first], take), toRoom([second], take)];
  for (const room of rooms) {
    const nearestRoom = room.next();
    if (!nearestRoom.done) yield nearestRoom.value;
  }
  yield* apart([a, b], take);
  for (const room of rooms) yield* room;
  for (const module of [first, second]) {
    const mates = ribbonMates(module, take);
    if (mates.length > 1) yield* toRoom(mates, take);
  }
};

/** Into the row again, or to where the row is deep enough or the panel fits. */
export const misplaced: Remedy = function* (note, take) {
  const [module] = modulesOf(note, take);
  if (!module) return;
  yield* elsewhere(module, take);
  for (const shiftHp of homeShifts(module)) {
    yield* moveMends({ modules: [module], row: module.row, shiftHp, push: true }, take);
  }
};

/** Back to the end of the row that a module stands beyond. */
function homeShifts({ module, facts, row }: PlacedModule): number[] {
  const most = row.row.widthHp - facts.kind.widthHp;
  const home = Math.min(Math.max(0, module.atHp), most);
  return most >= 0 && home !== module.atHp ? [home - module.atHp] : [];
}

/** Beside the board, pushing neighbours where that makes room; then wherever there is depth. */
export const overBoard: Remedy = function* (note, take) {
  const [module] = modulesOf(note, take);
  const board = note.subjects.find(({ type }) => type === 'board');
  const placed = board && take.places.boardById.get(board.id)?.board;
  if (!module) return;
  yield* elsewhere(module, take);
  if (!placed) return;
  const { atHp } = module.module;
  const { widthHp } = module.facts.kind;
  const leftOf = Math.floor(mmToHp(placed.xMm) * 2) / 2 - widthHp - atHp;
  const rightOf = Math.ceil(mmToHp(placed.xMm + (placed.widthMm ?? 0)) * 2) / 2 - atHp;
  for (const shiftHp of [leftOf, rightOf].sort((a, b) => Math.abs(a) - Math.abs(b))) {
    yield* moveMends({ modules: [module], row: module.row, shiftHp, push: true }, take);
  }
};
