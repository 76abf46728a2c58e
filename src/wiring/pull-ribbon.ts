import type { Berth } from './berth.ts';
import type { DerivedTake } from './derived-take.ts';
import { type LayOptions, layAlong } from './lay-along.ts';
import type { Laying } from './laying.ts';
import { isInStock } from './stock.ts';

/** A flat ribbon of a kind that was chosen for the way, and whether one is left of what is owned. */
export interface Pulled {
  readonly laying: Laying;
  readonly inStock: boolean;
}

/** How many of its connectors sit on their pins as they should. */
export const landed = ({ landings }: Laying): number => landings.filter(({ lands }) => lands).length;

const flawsOf = ({ landings, gaps }: Laying): number =>
  landings.filter(({ miss }) => miss).length + gaps.filter(({ flaws }) => flaws.length > 0).length;

/** What makes one kind better than another, the weightiest first; more is better. */
const merits = ({ laying, inStock }: Pulled): number[] => [
  landed(laying) > 1 && inStock ? 1 : 0,
  landed(laying),
  inStock ? 1 : 0,
  -flawsOf(laying),
  -laying.landings.length,
];

function isBetter(a: Pulled, b: Pulled): boolean {
  const others = merits(b);
  const i = merits(a).findIndex((merit, at) => merit !== others[at]);
  return i >= 0 && (merits(a)[i] as number) > (others[i] as number);
}

/** Every flat kind of the kit as it would lie from a start, as far as the hand; none where none can start there. */
function everyWay(take: DerivedTake, start: Berth, towardsMm: number, options: LayOptions): Pulled[] {
  return [...take.kit.ribbons.values()]
    .filter(({ flat }) => flat)
    .flatMap(({ kind }): Pulled[] => {
      const laid = layAlong(take, kind.id, start, towardsMm, options);
      return laid.ok ? [{ laying: laid.value, inStock: isInStock(take.take, kind) }] : [];
    });
}

/** The flat ribbon to pull from a start: one that is owned and not in use, that lands most and has no more connectors than it needs. */
export function pullRibbon(
  take: DerivedTake,
  start: Berth,
  towardsMm: number,
  options: LayOptions = {},
): Pulled | undefined {
  const [first, ...others] = everyWay(take, start, towardsMm, options);
  return first && others.reduce((best, other) => (isBetter(other, best) ? other : best), first);
}

/** Another kind that lands more connectors on the same way than a ribbon does, if the kit has one. */
export function betterKind(
  take: DerivedTake,
  laying: Laying,
  towardsMm: number,
  options: LayOptions = {},
): Pulled | undefined {
  const pulled = everyWay(take, laying.start, towardsMm, options)
    .filter((other) => landed(other.laying) > landed(laying))
    .sort(
      (a, b) => flawsOf(a.laying) - flawsOf(b.laying) || a.laying.landings.length - b.laying.landings.length,
    );
  const most = Math.max(...pulled.map((other) => landed(other.laying)));
  return pulled.find((other) => landed(other.laying) === most);
}
