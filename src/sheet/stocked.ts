import type { LaidRibbon } from '../wiring/laid-ribbon.ts';
import type { WholeTake } from '../wiring/whole-take.ts';

/** owned: one of those in the box. short: all that are owned are in use. uncounted: nobody says how many there are. */
export type Stocked = 'owned' | 'short' | 'uncounted';

/** Where each ribbon of a take comes from: what is owned goes to the first of a kind, as the document lists them. */
export function stockedOf({ wiring }: WholeTake): ReadonlyMap<LaidRibbon, Stocked> {
  const used = new Map<string, number>();
  return new Map(
    wiring.ribbons.map((ribbon): [LaidRibbon, Stocked] => {
      const { id, owned } = ribbon.facts.kind;
      const before = used.get(id) ?? 0;
      used.set(id, before + 1);
      if (owned === undefined) return [ribbon, 'uncounted'];
      return [ribbon, before < owned ? 'owned' : 'short'];
    }),
  );
}
