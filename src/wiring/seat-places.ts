import type { PlacedHeader } from '../geometry/place.ts';
import { typeOf } from '../layout/defaults.ts';
import type { SeatedOn } from '../layout/layout.ts';
import type { DerivedTake } from './derived-take.ts';
import {
  atMmOf,
  connectorOf,
  type JointTarget,
  jointFlaws,
  type LaidRibbon,
  orderOf,
} from './laid-ribbon.ts';
import { directionOf } from './lie.ts';

/** Where something is behind the case: along its row, and up from the bottom edge of the first row, mm. */
interface Spot {
  readonly xMm: number;
  readonly upMm: number;
}

const spotOf = ({ xMm, yMm, row }: PlacedHeader): Spot => ({ xMm, upMm: row.bottomMm + yMm });

/** How a layout names what a connector sits on. */
export function seatedOnOf(on: JointTarget): SeatedOn {
  if (on.type === 'connector') return { ribbon: on.ribbon.id, connector: on.connector };
  const { owner, id: header } = on.header;
  return owner.type === 'module' ? { module: owner.id, header } : { board: owner.id, header };
}

/** The header that a connector was put on. */
function headerUnder({ uses }: LaidRibbon, connector: number): PlacedHeader | undefined {
  for (const { on } of uses[connector] ?? []) if (on.type === 'header') return on.header;
  return undefined;
}

/** Where a connector is: where a stiff ribbon has it, on its header, or as far from the nearest seat as there is ribbon. */
function spotOfConnector(take: DerivedTake, ribbon: LaidRibbon, connector: number): Spot | undefined {
  const along = (from: number): number =>
    directionOf(ribbon) * (atMmOf(ribbon, connector) - atMmOf(ribbon, from));
  const lie = take.lies.get(ribbon);
  if (lie)
    return {
      xMm: lie.originMm + directionOf(ribbon) * atMmOf(ribbon, connector),
      upMm: lie.row.bottomMm + lie.yMm,
    };
  const order = orderOf(ribbon, connector);
  const off = (other: number): number => Math.abs(orderOf(ribbon, other) - order);
  const [nearest] = ribbon.uses
    .flatMap((_, other) => (headerUnder(ribbon, other) ? [other] : []))
    .sort((a, b) => off(a) - off(b));
  const header = nearest === undefined ? undefined : headerUnder(ribbon, nearest);
  if (!header || nearest === undefined) return undefined;
  const { xMm, upMm } = spotOf(header);
  return { xMm: ribbon.facts.flat ? xMm + along(nearest) : xMm, upMm };
}

/** Sockets of other ribbons that carry no plug. */
const freeSockets = ({ wiring }: DerivedTake, ribbon: LaidRibbon): JointTarget[] =>
  wiring.ribbons
    .filter((other) => other !== ribbon)
    .flatMap((other) =>
      other.uses.flatMap((uses, connector): JointTarget[] => {
        const isFree = uses.length === 0 && typeOf(connectorOf(other, connector)) === 'socket';
        return isFree ? [{ type: 'connector', ribbon: other, connector }] : [];
      }),
    );

/**
 * Headers without a connector. A flat ribbon is pressed on behind panels; a loose one goes to a board, but not from
 * one to another.
 */
function freeHeaders({ places, wiring }: DerivedTake, ribbon: LaidRibbon, connector: number): PlacedHeader[] {
  const isFed = ribbon.uses.some(
    (_, other) => other !== connector && headerUnder(ribbon, other)?.owner.type === 'board',
  );
  const owners = ribbon.facts.flat || isFed ? places.modules : [...places.modules, ...places.boards];
  return owners
    .flatMap(({ headers }) => headers)
    .filter((header) => !wiring.seatedOn.has(header) && (!ribbon.facts.flat || header.axis === 'vertical'));
}

/**
 * Everything free that a connector could sit on so that it mates and its lines agree, the nearest first. How the
 * ribbon would then lie is not looked at: that is what findings are for.
 */
export function seatPlaces(take: DerivedTake, ribbon: LaidRibbon, connector: number): readonly JointTarget[] {
  const isPlug = typeOf(connectorOf(ribbon, connector)) === 'plug';
  const free = isPlug
    ? freeSockets(take, ribbon)
    : freeHeaders(take, ribbon, connector).map((header): JointTarget => ({ type: 'header', header }));
  const fitting = free.filter((on) => {
    const { cannotMate, excessWays, differingPins } = jointFlaws(ribbon, connector, on, take.kit.voltages);
    return !cannotMate && !excessWays && differingPins.length === 0;
  });
  const here = spotOfConnector(take, ribbon, connector);
  if (!here) return fitting;
  const offMm = (on: JointTarget): number => {
    const spot = on.type === 'header' ? spotOf(on.header) : spotOfConnector(take, on.ribbon, on.connector);
    return spot ? Math.hypot(spot.xMm - here.xMm, spot.upMm - here.upMm) : Number.POSITIVE_INFINITY;
  };
  const byDistance = fitting.map((on) => ({ on, mm: offMm(on) }));
  return byDistance.sort((a, b) => (a.mm === b.mm ? 0 : a.mm - b.mm)).map(({ on }) => on);
}
