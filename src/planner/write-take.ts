import { FreshNames, idsOf, labelsOf } from '../edit/fresh.ts';
import { markLetter } from '../edit/mark-letter.ts';
import type { Ribbon, Seat, StripeEdge, Take } from '../layout/layout.ts';
import { remember } from '../layout/remember.ts';
import { seatOf } from '../wiring/landing.ts';
import type { Choice } from './choose.ts';
import type { Placing } from './placing.ts';
import type { Task } from './task.ts';

interface Drawn {
  readonly kind: string;
  readonly letter: string;
  readonly stripe?: StripeEdge;
  readonly seats: readonly Seat[];
  readonly columns: readonly number[];
}

/** A take as a choice makes it, and which columns of the program each new ribbon comes from. */
export interface Written {
  readonly take: Take;
  readonly columnsOf: ReadonlyMap<string, readonly number[]>;
}

const isSameSeat = (a: Seat, b: Seat): boolean =>
  a.connector === b.connector &&
  JSON.stringify(Object.entries(a.on).sort()) === JSON.stringify(Object.entries(b.on).sort());

/** Draws a choice. A ribbon that lies just so in the take already stays the one that it is. */
export const writeTake = (task: Task, choice: Choice): Written => writtenIn(task)(choice);

const writtenIn = remember((task: Task) => remember((choice: Choice) => written(task, choice)));

function written({ take, kept }: Task, { groups, leads }: Choice): Written {
  const columnsOf = new Map<string, number[]>();
  const names = new FreshNames(idsOf(take.ribbons));
  const labels = new FreshNames(labelsOf(take.ribbons));
  const ribbons: Ribbon[] = [...kept];
  const used = new Set(idsOf(kept));
  const lay = ({ kind, letter, stripe, seats, columns }: Drawn): string => {
    const old = take.ribbons.find(
      (ribbon) =>
        !used.has(ribbon.id) &&
        ribbon.kind === kind &&
        (stripe === undefined || (ribbon.stripe ?? 'down') === stripe) &&
        !ribbon.twists?.some((half) => half !== 0) &&
        ribbon.seats.length === seats.length &&
        seats.every((seat) => ribbon.seats.some((other) => isSameSeat(seat, other))),
    );
    const ribbon: Ribbon = old ?? {
      id: names.numbered(kind, '-'),
      kind,
      label: labels.numbered(letter, ''),
      ...(stripe === 'up' && { stripe }),
      seats,
    };
    used.add(ribbon.id);
    ribbons.push(ribbon);
    columnsOf.set(ribbon.id, [...columns]);
    return ribbon.id;
  };
  const letterOf = ({ facts }: Placing): string => markLetter(facts.bus.bus);
  for (const { group, column } of groups) {
    const ids = new Map<number, string>();
    const todo = [...group.placings.keys()];
    // A ribbon is drawn after those into which it is plugged, so that it can name them.
    for (let i = todo.shift(); i !== undefined; i = todo.shift()) {
      const placing = group.placings[i] as Placing;
      if (placing.kept !== undefined) {
        ids.set(i, placing.kept);
        continue;
      }
      const plugs = group.joints.filter(({ plug }) => plug === i);
      if (plugs.some(({ socket }) => !ids.has(socket))) {
        todo.push(i);
        continue;
      }
      const seats = [
        ...placing.seats.map(seatOf),
        ...plugs.map(({ plugConnector, socket, socketConnector }) => ({
          connector: plugConnector,
          on: { ribbon: ids.get(socket) as string, connector: socketConnector },
        })),
      ].sort((a, b) => a.connector - b.connector);
      const { stripe } = placing;
      ids.set(
        i,
        lay({
          kind: placing.facts.kind.id,
          letter: letterOf(placing),
          ...(stripe && { stripe }),
          seats,
          columns: [column],
        }),
      );
    }
  }
  for (const { lead, from, column } of leads) {
    const seats = [{ connector: lead.boardConnector, header: from }, ...lead.stops]
      .map(seatOf)
      .sort((a, b) => a.connector - b.connector);
    lay({ kind: lead.facts.kind.id, letter: 'L', seats, columns: [column] });
  }
  const { accepted: _, built: __, ...rest } = take;
  return { take: { ...rest, ribbons }, columnsOf };
}
