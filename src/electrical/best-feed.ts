import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import type { SeatedOn, Take } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { HeaderJoint } from '../wiring/harness.ts';
import { jointFlaws } from '../wiring/laid-ribbon.ts';
import type { Island } from '../wiring/supply-net.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { powerOf } from './power.ts';

/** Where an island could be fed, and how much the module that loses most would then lose of a voltage. */
interface FeedChoice {
  readonly header: PlacedHeader;
  readonly worstMv: number;
}

interface FeedChoices {
  readonly seat: HeaderJoint;
  /** As it is fed now. */
  readonly worstMv: number;
  /** The best first, the header as it is fed now aside. */
  readonly others: readonly FeedChoice[];
}

/** The most that any of some modules loses of a voltage that it draws, mV. */
export function worstLossMv(take: WholeTake, modules: ReadonlySet<string>): number {
  let worst = 0;
  for (const power of powerOf(take).parts) {
    for (const module of power.part.places.modules) {
      if (!modules.has(module.id)) continue;
      for (const [line] of module.facts.draws) {
        const voltage = take.kit.voltages.get(line);
        worst = Math.max(worst, (voltage && power.lossMv(module, voltage)) ?? 0);
      }
    }
  }
  return worst;
}

/** The take with a seat of a ribbon on something else. */
function reseated({ take, kit }: WholeTake, { ribbon, connector }: HeaderJoint, on: SeatedOn): WholeTake {
  const after: Take = {
    ...take,
    ribbons: take.ribbons.map((each) =>
      each.id === ribbon.id
        ? {
            ...each,
            seats: each.seats.map((seat) => (seat.connector === connector ? { connector, on } : seat)),
          }
        : each,
    ),
  };
  return deriveTake(kit.kit, after);
}

/**
 * The free headers of an island that its one lead would fit on, each tried: whether the lead is long enough for them
 * is another matter. Nothing where the island has no lead or several.
 */
export function feedChoices(take: WholeTake, island: Island): FeedChoices | undefined {
  const [feed, ...more] = island.feeds;
  if (!feed || more.length > 0) return undefined;
  const { seat } = feed;
  const modules = new Set(island.modules.map(({ id }) => id));
  const takesLead = (header: PlacedHeader): boolean => {
    if (header.isolated || take.wiring.seatedOn.has(header)) return false;
    const flaws = jointFlaws(seat.ribbon, seat.connector, { type: 'header', header }, take.kit.voltages);
    return !flaws.cannotMate && !flaws.excessWays && flaws.differingPins.length === 0;
  };
  const others = island.modules
    .flatMap(({ headers }) => headers)
    .filter(takesLead)
    .map((header) => {
      const on = { module: (header.owner as PlacedModule).id, header: header.id };
      return { header, worstMv: worstLossMv(reseated(take, seat, on), modules) };
    })
    .sort((a, b) => a.worstMv - b.worstMv);
  return { seat, worstMv: worstLossMv(take, modules), others };
}
