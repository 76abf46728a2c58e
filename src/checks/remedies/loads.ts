import { feedChoices } from '../../electrical/best-feed.ts';
import type { PlacedBoard, PlacedHeader, PlacedModule } from '../../geometry/place.ts';
import type { JointTarget } from '../../wiring/laid-ribbon.ts';
import { onHeader } from '../../wiring/landing.ts';
import type { Island } from '../../wiring/supply-net.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend, Note } from '../check.ts';
import { mv } from '../load-words.ts';
import { targetName } from '../words.ts';
import { modulesOf, ribbonsOf } from './cause.ts';
import { headersUnder, isFree, otherKinds } from './lay-anew.ts';
import { boardHeaderName } from './new-lead.ts';
import { notesOf, takeAfter } from './outcome.ts';
import { editsOf, mend, type Remedy } from './remedy.ts';

/** Headers to try beside the one on which an island is fed. */
const MOST_FEEDS = 4;

/** The islands that a note is about: those of its modules, and of the modules that its ribbons sit on. */
function islandsOf(note: Note, take: WholeTake): ReadonlySet<Island> {
  const under = ribbonsOf(note, take)
    .flatMap(headersUnder)
    .flatMap(({ owner }) => (owner.type === 'module' ? [owner] : []));
  return new Set(
    [...modulesOf(note, take), ...under].map((module: PlacedModule) => take.supplyNet.islandOf(module)),
  );
}

/** The one lead of an island at another of its modules, and what the module that loses most loses now and then. */
export interface FeedElsewhere {
  readonly mend: Mend;
  readonly from: JointTarget;
  readonly to: PlacedHeader;
  readonly nowMv: number;
  readonly thenMv: number;
}

/** The lead at another module of the island, the best first. Whether it reaches that far is another matter. */
export function* feedElsewhere(take: WholeTake, island: Island): Generator<FeedElsewhere> {
  const choices = feedChoices(take, island);
  if (!choices || !isFree(choices.seat.ribbon)) return;
  const { seat, worstMv: nowMv, others } = choices;
  for (const { header, worstMv: thenMv } of others.slice(0, MOST_FEEDS)) {
    const on = onHeader(header);
    const label = `Seat ${seat.ribbon.name} on ${targetName({ type: 'header', header })}, not on ${targetName(seat.on)}`;
    const why = `Estimated, the module that loses most then loses ${mv(thenMv)} and not ${mv(nowMv)}.`;
    const { id } = seat.ribbon;
    yield {
      mend: mend(
        label,
        [{ type: 'seat-connector', take: take.take.id, ribbon: id, connector: seat.connector, on }],
        why,
      ),
      from: seat.on,
      to: header,
      nowMv,
      thenMv,
    };
  }
}

/** The last of a key: for a ground shift, its group. */
const groupIn = ({ key }: Note): string | undefined => key.split('/').at(-1);

/** Of mends of a ground shift those after which no other pair of the group is too far apart. */
export const groundShift: Remedy = function* (note, take) {
  for (const each of feedBetter(note, take)) {
    const after = takeAfter(take, editsOf(each));
    const left = after ? notesOf(after).filter(({ check }) => check === note.check) : [];
    if (!left.some((other) => groupIn(other) === groupIn(note))) yield each;
  }
};

/** The lead at another module, or another lead in its place. */
export const feedBetter: Remedy = function* (note, take) {
  const islands = islandsOf(note, take);
  for (const island of islands) for (const { mend } of feedElsewhere(take, island)) yield mend;
  for (const { feeds } of islands) {
    for (const { seat } of feeds) yield* otherKinds(take, seat.ribbon, headersUnder(seat.ribbon));
  }
};

/** A lead of an overloaded board on another board of the same supply. */
export const boardOverload: Remedy = function* (note, take) {
  const boards = note.subjects.flatMap(({ id }) => take.places.boardById.get(id) ?? []);
  for (const full of boards) {
    const seats = full.headers.flatMap((header) => take.wiring.seatedOn.get(header) ?? []);
    const others = take.places.boards.filter((board) => board !== full && board.supply === full.supply);
    for (const { ribbon, connector, conducts, on } of seats) {
      if (!conducts || on.type !== 'header' || !isFree(ribbon)) continue;
      for (const header of freeHeaders(others, on.header.bus, take).slice(0, 1)) {
        const edit = {
          type: 'seat-connector',
          take: take.take.id,
          ribbon: ribbon.id,
          connector,
          on: onHeader(header),
        } as const;
        yield mend(`Seat ${ribbon.name} on ${boardHeaderName(header)}`, [edit]);
      }
    }
  }
};

const freeHeaders = (boards: readonly PlacedBoard[], bus: unknown, { wiring }: WholeTake) =>
  boards
    .flatMap(({ headers }) => headers)
    .filter((header) => header.bus === bus && !wiring.seatedOn.has(header));
