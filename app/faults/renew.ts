import type { FaultTest, Joint, Link, Observation, ShortPlace, Suspect, WholeTake } from '../../src/index.ts';
import { type Breakage, jointAt } from './breakage.ts';

/*
 * What was broken or seen names modules, boards and seats as they were when the take was derived; after an edit the same
 * things are looked up again, and what is no longer there is let go.
 */

function renewSeat({ ribbon, connector }: Joint, { wiring }: WholeTake): Joint | undefined {
  const now = wiring.ribbonById.get(ribbon.id);
  return jointAt(now, connector);
}

function renewLink(link: Link, take: WholeTake): Link | undefined {
  switch (link.type) {
    case 'supply': {
      const supply = take.take.supplies.find(({ id }) => id === link.supply.id);
      return supply && { type: 'supply', supply };
    }
    case 'board-lead': {
      const board = take.places.boardById.get(link.board.id);
      return board && { type: 'board-lead', board };
    }
    case 'seat': {
      const joint = renewSeat(link.joint, take);
      return joint && { type: 'seat', joint };
    }
    case 'span': {
      const ribbon = take.wiring.ribbonById.get(link.ribbon.id);
      const isThere = ribbon && jointAt(ribbon, link.from) && jointAt(ribbon, link.to);
      return isThere ? { ...link, ribbon } : undefined;
    }
  }
}

function renewPlace(place: ShortPlace, { places, wiring }: WholeTake): ShortPlace | undefined {
  if (place.type === 'module') {
    const module = places.moduleById.get(place.module.id);
    return module && { type: 'module', module };
  }
  if (place.type === 'board') {
    const board = places.boardById.get(place.board.id);
    return board && { type: 'board', board };
  }
  const ribbon = wiring.ribbonById.get(place.ribbon.id);
  return ribbon && { ...place, ribbon };
}

function renewSuspect(suspect: Suspect, take: WholeTake): Suspect | undefined {
  if (suspect.type === 'inside') {
    const module = take.places.moduleById.get(suspect.module.id);
    return module && { type: 'inside', module };
  }
  if (suspect.type === 'short') {
    const place = renewPlace(suspect.place, take);
    return place && { ...suspect, place };
  }
  const link = renewLink(suspect.link, take);
  return link && { ...suspect, link };
}

export function renewBreakage(breakage: Breakage, take: WholeTake): Breakage | undefined {
  if (breakage.type !== 'pin') return renewSuspect(breakage, take);
  const link = renewLink(breakage.link, take);
  return link && { ...breakage, link };
}

export function renewTest(test: FaultTest, take: WholeTake): FaultTest | undefined {
  const { moduleById, boardById } = take.places;
  if (test.type === 'look') {
    const module = moduleById.get(test.module.id);
    return module && { type: 'look', module };
  }
  if (test.type === 'measure') {
    const at = test.at.type === 'module' ? moduleById.get(test.at.id) : boardById.get(test.at.id);
    return at && { ...test, at };
  }
  const seats = test.seats.flatMap((seat) => renewSeat(seat, take) ?? []);
  return seats.length === test.seats.length ? { ...test, seats } : undefined;
}

export function renewSeen({ test, isThere }: Observation, take: WholeTake): Observation | undefined {
  const now = renewTest(test, take);
  return now && { test: now, isThere };
}
