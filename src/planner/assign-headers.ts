import type { PlacedHeader } from '../geometry/place.ts';
import { fail, ok, type Result } from '../layout/result.ts';
import type { LeadColumn } from './model.ts';

export type LeadFrom = LeadColumn & { readonly from: PlacedHeader };

/**
 * A header of a board for each lead, of which any of several will do; or those wishes that want too few headers among
 * them (bipartite matching by augmenting ways).
 */
export function assignHeaders(
  wishes: readonly (readonly LeadColumn[])[],
): Result<readonly LeadFrom[], readonly (readonly LeadColumn[])[]> {
  const takenBy = new Map<PlacedHeader, number>();
  const given: (LeadFrom | undefined)[] = wishes.map(() => undefined);
  for (const [first, leads] of wishes.entries()) {
    const tried = new Set<PlacedHeader>();
    const wanting = new Set<number>([first]);
    const find = (wish: number): boolean => {
      wanting.add(wish);
      for (const lead of wishes[wish] as readonly LeadColumn[])
        for (const place of lead.lead.places) {
          if (tried.has(place)) continue;
          tried.add(place);
          const other = takenBy.get(place);
          if (other !== undefined && !find(other)) continue;
          takenBy.set(place, wish);
          given[wish] = { ...lead, from: place };
          return true;
        }
      return false;
    };
    if (leads.length === 0 || !find(first))
      return fail([...wanting].map((wish) => wishes[wish] as readonly LeadColumn[]));
  }
  return ok(given.filter((lead) => lead !== undefined));
}
