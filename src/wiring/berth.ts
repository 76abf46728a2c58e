import type { PlacedHeader, PlacedRow } from '../geometry/place.ts';
import type { SeatedOn } from '../layout/layout.ts';
import type { DerivedTake } from './derived-take.ts';
import type { JointTarget } from './laid-ribbon.ts';

/** A place that a connector can take, and where it lies: x from the left end of the row, seen from the front, mm. */
export interface Berth {
  readonly on: JointTarget;
  readonly row: PlacedRow;
  readonly xMm: number;
  readonly yMm: number;
}

export const berthOn = (header: PlacedHeader): Berth => ({
  on: { type: 'header', header },
  row: header.row,
  xMm: header.xMm,
  yMm: header.yMm,
});

/** Whether something sits there already. */
export const isTaken = ({ wiring }: Pick<DerivedTake, 'wiring'>, on: JointTarget): boolean =>
  on.type === 'header' ? wiring.seatedOn.has(on.header) : (on.ribbon.uses[on.connector]?.length ?? 0) > 0;

/** As a document names it. */
export function nameOf(on: JointTarget): SeatedOn {
  if (on.type === 'connector') return { ribbon: on.ribbon.id, connector: on.connector };
  const { owner, id } = on.header;
  return owner.type === 'module' ? { module: owner.id, header: id } : { board: owner.id, header: id };
}

export const isSamePlace = (a: JointTarget, b: JointTarget): boolean =>
  a.type === 'header'
    ? b.type === 'header' && a.header === b.header
    : b.type === 'connector' && a.ribbon === b.ribbon && a.connector === b.connector;
