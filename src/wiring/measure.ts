import type { CutCase } from '../geometry/cut.ts';
import type { PlacedHeader, PlacedRow } from '../geometry/place.ts';
import type { BusFacts } from '../layout/kit-index.ts';
import type { Connector, Seat, StripeEdge } from '../layout/layout.ts';
import type { DerivedTake } from './derived-take.ts';
import { headersInRow } from './headers-by-row.ts';
import type { LaidRibbon } from './laid-ribbon.ts';

/** Headers measured for a flat ribbon that is to be made for them. */
export interface Measured {
  readonly row: PlacedRow;
  readonly bus: BusFacts;
  /** In the order of the connectors. */
  readonly headers: readonly PlacedHeader[];
  /** At connector 0, where pin 1 of most of them is. */
  readonly stripe: StripeEdge;
  readonly cutCase: CutCase;
}

/** Headers of a bus in a row that a flat ribbon could join, by place from left to right, seen from the front. */
export const headersToMeasure = (
  { places }: DerivedTake,
  row: PlacedRow,
  bus: BusFacts,
): readonly PlacedHeader[] => headersInRow(places, row, bus).filter(({ axis }) => axis === 'vertical');

/**
 * Measures headers of one bus in one row; nothing where there are fewer than two. Connectors are counted from the
 * rear with the stripe down, left to right, so that a stripe below runs from the right end seen from the front.
 */
export function measure(
  { limits }: Pick<DerivedTake, 'limits'>,
  chosen: readonly PlacedHeader[],
): Measured | undefined {
  const [first, second] = chosen;
  if (!first || !second) return undefined;
  const { row, bus } = first;
  const ups = chosen.filter(({ pin1 }) => pin1 === 'up').length;
  const downs = chosen.filter(({ pin1 }) => pin1 === 'down').length;
  const stripe = ups > downs ? 'up' : 'down';
  const direction = stripe === 'up' ? 1 : -1;
  const headers = [...chosen].sort((a, b) => direction * (a.xMm - b.xMm));
  const places = headers.map(({ xMm, yMm, zMm = 0 }) => ({ xMm, yMm, zMm }));
  return { row, bus, headers, stripe, cutCase: { places, depthMm: row.row.depthMm, limits } };
}

/** Each connector on the header that it was measured for. */
export const seatsOnMeasured = ({ headers }: Measured): readonly Seat[] =>
  headers.map(({ id, owner }, connector) => ({ connector, on: { module: owner.id, header: id } }));

/** Sockets at these places. */
export const connectorsAt = (placesMm: readonly number[]): readonly Connector[] =>
  placesMm.map((atMm) => ({ atMm }));

/** Ribbons that sit on one of the headers already. */
export const ribbonsOn = (
  { wiring }: Pick<DerivedTake, 'wiring'>,
  { headers }: Pick<Measured, 'headers'>,
): readonly LaidRibbon[] => [
  ...new Set(headers.flatMap((header) => (wiring.seatedOn.get(header) ?? []).map(({ ribbon }) => ribbon))),
];
