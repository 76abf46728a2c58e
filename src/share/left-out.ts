import type { Layout } from '../layout/layout.ts';

/** What a layout that is handed over need not tell. */
export interface LeftOut {
  readonly prices?: boolean;
  /** How many one owns. */
  readonly owned?: boolean;
  /** Of the layout and its kinds, and why findings were put away. */
  readonly notes?: boolean;
}

/** A copy of an object without some of its keys; the very object where it has none of them. */
function without<T extends object>(object: T, keys: readonly string[]): T {
  if (!keys.some((key) => Object.hasOwn(object, key))) return object;
  return Object.fromEntries(Object.entries(object).filter(([key]) => !keys.includes(key))) as T;
}

/** A layout without what its owner keeps to himself; the rest as it is. */
export function leaveOut(layout: Layout, { prices, owned, notes }: LeftOut): Layout {
  const ofKinds = [...(prices ? ['price'] : []), ...(owned ? ['owned'] : []), ...(notes ? ['notes'] : [])];
  if (ofKinds.length === 0) return layout;
  const { kit, takes } = layout;
  return {
    ...(notes ? without(layout, ['notes']) : layout),
    kit: {
      ...kit,
      modules: kit.modules.map((kind) => without(kind, ofKinds)),
      ribbons: kit.ribbons.map((kind) => without(kind, ofKinds)),
    },
    takes: notes
      ? takes.map((take) =>
          take.accepted ? { ...take, accepted: take.accepted.map((one) => without(one, ['why'])) } : take,
        )
      : takes,
  };
}
