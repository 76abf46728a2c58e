import type { PlacedHeader } from '../geometry/place.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import type { StripeEdge } from '../layout/layout.ts';
import { isSocket, type Landing } from '../wiring/landing.ts';

/** A ribbon on headers: what it would be if it were laid. */
export interface Placing {
  readonly facts: RibbonFacts;
  /** Flat only. */
  readonly stripe?: StripeEdge;
  /** Connectors rising. */
  readonly seats: readonly Landing[];
  /** Id of a ribbon that stands in the take and stays. */
  readonly kept?: string;
}

/** What a group may hold. */
export interface Room {
  /** Members that a host takes. */
  readonly members: number;
  /** Whether ribbons without a host are of use, too. */
  readonly hostless: boolean;
  /** Headers that a flat ribbon takes wherever it could: to pass over them gains nothing. */
  readonly taken: ReadonlySet<PlacedHeader>;
  /** Placings of one kind looked at before the search gives up being complete. */
  readonly most: number;
}

export interface Found {
  readonly placings: readonly Placing[];
  /** False where there were more than were looked at. */
  readonly complete: boolean;
}

export const atMm = ({ connectors }: RibbonFacts, connector: number): number =>
  connectors[connector]?.atMm ?? 0;

const hasPlug = (facts: RibbonFacts): boolean => facts.connectors.some((_, i) => !isSocket(facts, i));

/** Whether a ribbon could be joined plug in socket with another of its bus. */
export const isChainable = (facts: RibbonFacts, all: readonly RibbonFacts[]): boolean =>
  all.some((other) => other.bus === facts.bus && hasPlug(other));

/** Length of a ribbon, and ten times what of a flat one would lie beyond the ends of its row, mm. */
export function neatMm({ facts, stripe, seats }: Placing): number {
  const [first] = seats;
  return facts.flat && first ? neatFromMm(facts, stripe, first) : atMm(facts, facts.connectors.length - 1);
}

export function neatFromMm(
  facts: RibbonFacts,
  stripe: StripeEdge | undefined,
  { connector, header }: Landing,
): number {
  const lengthMm = atMm(facts, facts.connectors.length - 1);
  const direction = stripe === 'up' ? 1 : -1;
  const startMm = header.xMm - direction * atMm(facts, connector);
  const endMm = startMm + direction * lengthMm;
  return (
    lengthMm + 10 * Math.max(0, -Math.min(startMm, endMm), Math.max(startMm, endMm) - header.row.widthMm)
  );
}
