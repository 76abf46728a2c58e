import type { LaidRibbon } from '../../src/index.ts';

/** What can be shown or hidden by itself: the links of a bus, all leads, and the rest by its sort. */
export type LayerKey = 'leads' | 'boards' | 'names' | 'section' | `bus:${string}`;

/** Layers that are hidden; absent: none. */
export type Hidden = ReadonlySet<LayerKey> | undefined;

const sitsOnBoard = ({ uses }: LaidRibbon): boolean =>
  uses.some((joints) => joints.some(({ on }) => on.type === 'header' && on.header.owner.type === 'board'));

/** Leads bring power from a board, or could: they hang loose and carry a voltage. All other ribbons are links. */
export const layerOf = (ribbon: LaidRibbon): LayerKey => {
  const { flat, bus } = ribbon.facts;
  return (!flat && bus.carriesVoltage) || sitsOnBoard(ribbon) ? 'leads' : `bus:${bus.bus.id}`;
};

export const isHidden = (hidden: Hidden, ribbon: LaidRibbon): boolean =>
  hidden !== undefined && hidden.size > 0 && hidden.has(layerOf(ribbon));
