import type { PlacedHeader, PlacedRow, Places } from '../geometry/place.ts';
import { groupBy } from '../layout/group-by.ts';
import type { BusFacts } from '../layout/kit-index.ts';

type ByBus = ReadonlyMap<BusFacts, readonly PlacedHeader[]>;

const known = new WeakMap<Places, ReadonlyMap<PlacedRow, ByBus>>();

const NONE: readonly PlacedHeader[] = [];

function indexHeaders({ modules }: Places): ReadonlyMap<PlacedRow, ByBus> {
  const headers = modules.flatMap((module) => module.headers).sort((a, b) => a.xMm - b.xMm);
  return new Map(
    [...groupBy(headers, ({ row }) => row)].map(([row, some]) => [row, groupBy(some, ({ bus }) => bus)]),
  );
}

/**
 * The modules' headers of a bus in a row, by place from left to right, seen from the front. Sorted once for all
 * headers of a take: laying asks with every move of the hand.
 */
export function headersInRow(places: Places, row: PlacedRow, bus: BusFacts): readonly PlacedHeader[] {
  let index = known.get(places);
  if (!index) {
    index = indexHeaders(places);
    known.set(places, index);
  }
  return index.get(row)?.get(bus) ?? NONE;
}
