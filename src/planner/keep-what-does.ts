import type { PlacedModule } from '../geometry/place.ts';
import type { Ribbon, SeatedOn, Take } from '../layout/layout.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { compareScores, scoreOf } from './score-of.ts';
import { derivedOf, type Task } from './task.ts';

const keyOf = (on: SeatedOn): string => JSON.stringify(Object.entries(on).sort());

const isOnBoard = ({ on }: Ribbon['seats'][number]): boolean => 'board' in on;

/** Modules that a lead feeds. */
function fedBy({ places, supplyNet }: WholeTake, { seats }: Ribbon): ReadonlySet<string> {
  const stops = seats.flatMap(({ on }) => ('module' in on ? [places.moduleById.get(on.module)] : []));
  const islands = stops.filter((module): module is PlacedModule => !!module).map(supplyNet.islandOf);
  return new Set(islands.flatMap(({ modules }) => modules.map(({ id }) => id)));
}

/** A lead with its end on the board elsewhere. */
const from = (lead: Ribbon, on: SeatedOn): Ribbon => ({
  ...lead,
  seats: lead.seats.map((seat) => (isOnBoard(seat) ? { ...seat, on } : seat)),
});

/**
 * A proposal with leads of the take as it is wherever they do as well: a lead that is plugged in already is not moved
 * for nothing. Each exchange is judged like a proposal, and the score stays the same or gets better.
 */
export function keepWhatDoes(task: Task, proposed: Take): Take {
  const { take } = task;
  const mine = derivedOf(task, take);
  let best = proposed;
  let score = scoreOf(task, proposed);
  if (!score) return proposed;
  const isLead = ({ seats }: Ribbon): boolean => seats.some(isOnBoard);
  for (const old of take.ribbons.filter(isLead)) {
    if (best.ribbons.some(({ id }) => id === old.id)) continue;
    const fed = fedBy(mine, old);
    const theirs = derivedOf(task, best);
    const place = old.seats.find(isOnBoard)?.on;
    const instead = best.ribbons.find(
      (lead) =>
        isLead(lead) &&
        !take.ribbons.some(({ id }) => id === lead.id) &&
        [...fedBy(theirs, lead)].some((id) => fed.has(id)),
    );
    const free = instead?.seats.find(isOnBoard)?.on;
    if (!instead || !place || !free) continue;
    // Whoever has its header of the board takes the one that becomes free.
    const ribbons = best.ribbons.map((lead) => {
      if (lead === instead) return old;
      return lead.seats.some(({ on }) => keyOf(on) === keyOf(place)) ? from(lead, free) : lead;
    });
    const next: Take = { ...best, ribbons };
    const found = scoreOf(task, next);
    if (!found || compareScores(found, score) > 0) continue;
    best = next;
    score = found;
  }
  return best;
}
