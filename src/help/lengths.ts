import { reachOf, totalMm } from '../checks/depth.ts';
import { targetName } from '../checks/words.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { archOf, depthNeededMm, neededMm } from '../wiring/gap.ts';
import { distanceMm, type Neighbours } from '../wiring/neighbours.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Gauge } from './gauge.ts';

type Told = Omit<Gauge, 'title' | 'parts' | 'unit'> & { readonly value: number };

/** A gauge in mm between each two neighbours of which there is something to tell. */
const between =
  (tell: (pair: Neighbours, part: DerivedTake) => Told | undefined) =>
  (take: WholeTake): Gauge[] =>
    take.parts.flatMap((part) =>
      part.neighbours.flatMap((pair) => {
        const told = tell(pair, part);
        if (!told) return [];
        const { value, ...rest } = told;
        const name = pair.ribbons.map((ribbon) => ribbon.name).join(', ');
        return {
          title: `${name} between ${targetName(pair.a.on)} and ${targetName(pair.b.on)}`,
          parts: [{ value, words: told.words }],
          unit: 'mm',
          ...rest,
        };
      }),
    );

/** How deep a ribbon lies behind the panels, beside the depth of the row. */
export const depths = between((pair, part) => {
  const value = depthNeededMm(pair, part);
  return value === undefined
    ? undefined
    : { value, words: 'needed', limit: pair.a.on.header.row.row.depthMm, limitWords: 'deep' };
});

/** How much ribbon is needed, beside what there is, with the play of a seat. */
export const lengths = between((pair, { limits }) => ({
  value: neededMm(pair, limits),
  words: 'needed',
  limit: pair.lengthMm + (pair.lay === 'loose' ? 0 : limits.seatToleranceMm),
  limitWords: pair.lay === 'loose' ? 'there' : 'there, play of a seat included',
}));

/** How sharply an arch bends. */
export const radii = between((pair, part) => {
  const arch = archOf(pair, part);
  if (arch?.kind !== 'arch') return undefined;
  const { bendRadiusMm } = part.limits;
  return {
    value: arch.radiusMm,
    words: 'radius',
    limit: bendRadiusMm,
    isLeast: true,
    limitWords: 'at least wanted',
  };
});

/** How far apart two headers lie, beside the width of a connector. */
export const rooms = between((pair, { limits }) => ({
  value: distanceMm(pair),
  words: 'apart',
  limit: limits.connectorBodyMm,
  isLeast: true,
  limitWords: 'for a connector',
}));

/** How deep modules reach with what is plugged in, beside the depth of their row. */
export const reaches = (take: WholeTake): Gauge[] =>
  take.parts.flatMap((part) =>
    part.places.modules.flatMap((module) => {
      const reach = reachOf(module, part);
      if (!reach) return [];
      return {
        title: `${module.name} behind its panel`,
        parts: [{ value: totalMm(reach), words: 'needed' }],
        words: 'needed',
        limit: module.row.row.depthMm,
        limitWords: 'deep',
        unit: 'mm',
      };
    }),
  );
