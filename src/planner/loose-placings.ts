import type { PlacedHeader } from '../geometry/place.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { looseSpans } from '../wiring/fitting.ts';
import type { Found, Room } from './placing.ts';
import { Seating } from './seating.ts';
import { Steps } from './steps.ts';

/** Every way in which a loose ribbon can go from header to header, in any row. */
export function loosePlacings(
  take: DerivedTake,
  facts: RibbonFacts,
  headers: readonly PlacedHeader[],
  keepAll: boolean,
  room: Room,
): Found {
  // Where a voltage goes, it matters who comes before whom.
  const seating = new Seating(
    facts,
    headers,
    keepAll ? 'seats' : facts.bus.carriesVoltage ? 'headers in order' : 'headers',
    room,
  );
  const steps = new Steps(facts, headers, looseSpans(take));
  const last = facts.connectors.length - 1;
  const extend = (before: number, connector: number): void => {
    if (seating.isFull) return;
    if (before >= 0) seating.keep(undefined);
    headers.forEach((header, i) => {
      if (!seating.admits(header)) return;
      for (let c = connector + 1; c <= last; c++) {
        if (!steps.sits(c, i) || (before >= 0 && !steps.may(connector, before, c, i))) continue;
        seating.put(c, header);
        extend(i, c);
        seating.take();
      }
    });
  };
  extend(-1, -1);
  return seating.result();
}
