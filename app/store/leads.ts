import { type Kit, markLetter, type RibbonKind } from '../../src/index.ts';

const busOf = (kind: RibbonKind, kit: Kit) => kit.buses.find(({ id }) => id === kind.bus);

/** A loose ribbon with power is a lead; whatever else joins headers is a ribbon. */
export const isLead = (kind: RibbonKind, kit: Kit): boolean =>
  kind.lay === 'loose' && kit.voltages.some(({ id }) => busOf(kind, kit)?.pinout.includes(id) === true);

/** The letter before the number on a new ribbon's label: L for leads, the bus's own for the others. */
export const markPrefix = (kind: RibbonKind, kit: Kit): string =>
  isLead(kind, kit) ? 'L' : markLetter(busOf(kind, kit));
