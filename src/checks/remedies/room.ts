import type { Edit } from '../../edit/edit.ts';
import { exceeds } from '../../geometry/exceeds.ts';
import type { PlacedModule, PlacedRow } from '../../geometry/place.ts';
import { mmToHp } from '../../geometry/rack.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend } from '../check.ts';
import { reachOf, totalMm } from '../depth.ts';
import { hp, list, namesOf } from '../words.ts';
import { followingLeads } from './new-lead.ts';
import { mend } from './remedy.ts';

/** Places closer than this are one place, HP. */
const NOISE_HP = 0.0005;

/** Places to try in one row. */
const MOST_PLACES = 3;

/** Other rows to try: the nearest with room. */
const MOST_ROWS = 3;

interface Stretch {
  readonly fromHp: number;
  readonly toHp: number;
}

const tidy = (value: number): number => Math.round(value * 1000) / 1000 + 0;

const standsOn = ({ module, facts }: PlacedModule): Stretch => ({
  fromHp: module.atHp,
  toHp: module.atHp + facts.kind.widthHp,
});

/** Pieces of a row that are taken, or where a board leaves too little depth for the module. */
function takenFor(
  module: PlacedModule,
  row: PlacedRow,
  group: readonly PlacedModule[],
  take: WholeTake,
): Stretch[] {
  const others = take.places.modules.filter((other) => other.row === row && !group.includes(other));
  const reach = reachOf(module, take);
  const boards = take.places.boards.filter(
    ({ board, row: own }) =>
      own === row &&
      (board.widthMm ?? 0) > 0 &&
      reach &&
      exceeds(totalMm(reach), row.row.depthMm - (board.riseMm ?? 0)),
  );
  return [
    ...others.map(standsOn),
    ...boards.map(({ board: { xMm, widthMm = 0 } }) => ({
      // Beside a board modules still go by half an HP.
      fromHp: Math.floor(mmToHp(xMm) * 2) / 2,
      toHp: Math.ceil(mmToHp(xMm + widthMm) * 2) / 2,
    })),
  ];
}

const fitsRow = (module: PlacedModule, row: PlacedRow, take: WholeTake): boolean => {
  const reach = reachOf(module, take);
  return module.facts.heightU === row.row.heightU && !(reach && exceeds(totalMm(reach), row.row.depthMm));
};

/**
 * How far modules of one row can go together, to places of a row where all have room: the nearest first, HP from
 * where they stand.
 */
export function shiftsWithRoom(
  group: readonly PlacedModule[],
  row: PlacedRow,
  take: WholeTake,
): readonly number[] {
  if (!group.every((module) => fitsRow(module, row, take))) return [];
  const ends: readonly Stretch[] = [
    { fromHp: Number.NEGATIVE_INFINITY, toHp: 0 },
    { fromHp: row.row.widthHp, toHp: Number.POSITIVE_INFINITY },
  ];
  const standing = group.map((module) => ({
    at: standsOn(module),
    taken: [...takenFor(module, row, group, take), ...ends],
  }));
  const hasRoom = (shift: number): boolean =>
    standing.every(({ at, taken }) =>
      taken.every(
        ({ fromHp, toHp }) => at.fromHp + shift >= toHp - NOISE_HP || at.toHp + shift <= fromHp + NOISE_HP,
      ),
    );
  // The end of a row is a place to go to only for what stands beyond it.
  const touching = standing.flatMap(({ at, taken }) =>
    taken.flatMap(({ fromHp, toHp }) => [
      ...(toHp > 0 || at.fromHp < 0 ? [toHp - at.fromHp] : []),
      ...(fromHp < row.row.widthHp || at.toHp > row.row.widthHp ? [fromHp - at.toHp] : []),
    ]),
  );
  const shifts = new Set([0, ...touching].filter(Number.isFinite).map(tidy));
  return [...shifts].sort((a, b) => Math.abs(a) - Math.abs(b) || a - b).filter(hasRoom);
}

const rowName = ({ row, index }: PlacedRow): string => row.name || `row ${index + 1}`;

/** Modules of one row that flat ribbons join, the module among them: moved together they keep their ribbons. */
export function ribbonMates(module: PlacedModule, take: WholeTake): PlacedModule[] {
  const mates = new Set([module]);
  const flat = take.wiring.ribbons.filter(({ facts }) => facts.flat);
  for (let grew = true; grew; ) {
    grew = false;
    for (const { uses } of flat) {
      const owners = uses.flat().flatMap(({ on, conducts }) => {
        if (!conducts || on.type !== 'header' || on.header.owner.type !== 'module') return [];
        return on.header.owner.row === module.row ? [on.header.owner] : [];
      });
      if (!owners.some((owner) => mates.has(owner))) continue;
      for (const owner of owners) {
        if (mates.has(owner)) continue;
        mates.add(owner);
        grew = true;
      }
    }
  }
  return [...mates];
}

/** A move with the words for it. */
interface Move {
  readonly modules: readonly PlacedModule[];
  readonly row: PlacedRow;
  readonly shiftHp: number;
  readonly push?: boolean;
}

function moveEdit({ modules, row, shiftHp, push }: Move, take: WholeTake): Edit {
  const moves = modules.map(({ id, module }) => ({
    module: id,
    row: row.row.id,
    atHp: tidy(module.atHp + shiftHp),
  }));
  return { type: 'move-modules', take: take.take.id, moves, ...(push && { push }) };
}

function moveWords({ modules, row, shiftHp, push }: Move): string {
  const [first] = modules as readonly [PlacedModule];
  const elsewhere = first.row !== row;
  const place =
    modules.length === 1
      ? ` to ${hp(tidy(first.module.atHp + shiftHp))}${elsewhere ? ` of ${rowName(row)}` : ''}`
      : `${shiftHp === 0 ? '' : ` ${hp(Math.abs(shiftHp))} to the ${shiftHp > 0 ? 'right' : 'left'}`}${elsewhere ? ` into ${rowName(row)}` : ''}, seen from the front`;
  return `Move ${namesOf(modules)}${place}${push ? ' and push the neighbours along' : ''}`;
}

/** A move; where it leaves leads too short, also the move with other leads. */
export function* moveMends(move: Move, take: WholeTake): Generator<Mend> {
  if (move.modules.some(({ module }) => module.pinned)) return;
  const edits = [moveEdit(move, take)];
  const words = moveWords(move);
  const longer = followingLeads(take, edits);
  if (!longer) yield mend(words, edits);
  else yield mend(`${words}, with ${list(longer.names)}`, longer.edits);
}

/** Every way to bring modules to the nearest places with room, in their row and then in others. */
export function* toRoom(group: readonly PlacedModule[], take: WholeTake): Generator<Mend> {
  const [first] = group;
  if (!first) return;
  const away = (row: PlacedRow): number => Math.abs(row.index - first.row.index);
  let rows = 0;
  for (const row of [...take.places.rows].sort((a, b) => away(a) - away(b) || a.index - b.index)) {
    const shifts = shiftsWithRoom(group, row, take).filter((shift) => row !== first.row || shift !== 0);
    if (shifts.length > 0 && rows++ > MOST_ROWS) return;
    for (const shiftHp of shifts.slice(0, MOST_PLACES))
      yield* moveMends({ modules: group, row, shiftHp }, take);
  }
}

/** Puts a module at a place, else all that flat ribbons join with it, else pushes whatever stands there. */
export function* shifted(module: PlacedModule, shiftHp: number, take: WholeTake): Generator<Mend> {
  const mates = ribbonMates(module, take);
  yield* moveMends({ modules: [module], row: module.row, shiftHp }, take);
  if (mates.length > 1) yield* moveMends({ modules: mates, row: module.row, shiftHp }, take);
  yield* moveMends({ modules: [module], row: module.row, shiftHp, push: true }, take);
}
