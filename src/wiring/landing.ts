import type { PlacedHeader } from '../geometry/place.ts';
import { typeOf } from '../layout/defaults.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import type { Seat, SeatedOn } from '../layout/layout.ts';

/** A connector of a ribbon that is to be laid, and the header that it would sit on. */
export interface Landing {
  readonly connector: number;
  readonly header: PlacedHeader;
}

/** A header as a seat names it. */
export const onHeader = ({ owner, id }: PlacedHeader): SeatedOn =>
  owner.type === 'module' ? { module: owner.id, header: id } : { board: owner.id, header: id };

export const seatOf = ({ connector, header }: Landing): Seat => ({ connector, on: onHeader(header) });

export const isSocket = ({ connectors }: RibbonFacts, connector: number): boolean =>
  typeOf(connectors[connector] ?? { atMm: 0 }) === 'socket';

/** Whether a connector of a ribbon fits a header: lines agree on all its contacts, and it has pins for them. */
export function fits(facts: RibbonFacts, connector: number, header: PlacedHeader): boolean {
  const ways = facts.ways[connector] ?? 0;
  const { pinout } = header.bus.bus;
  return (
    ways <= pinout.length && facts.bus.bus.pinout.slice(0, ways).every((line, pin) => line === pinout[pin])
  );
}

/** Whether a key would let the connector into the header in the wrong way only. */
export const goesInReversed = (facts: RibbonFacts, connector: number, header: PlacedHeader): boolean =>
  header.keyed && facts.connectors[connector]?.key === 'against-stripe';
