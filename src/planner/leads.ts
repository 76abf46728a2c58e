import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedBoard, PlacedHeader, PlacedModule } from '../geometry/place.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import { linkBuses, powerHeaders } from '../wiring/feed-plan.ts';
import { isSocket } from '../wiring/landing.ts';
import { leadWayMm, linesBrought, takes } from '../wiring/lead.ts';
import { atMm } from './placing.ts';
import type { Task } from './task.ts';

/** A power lead from a board to one or more modules; which of the board's headers it takes is left open. */
export interface LeadPlan {
  readonly facts: RibbonFacts;
  readonly board: PlacedBoard;
  readonly boardConnector: number;
  /** Free headers of the board that it fits and from which it reaches. */
  readonly places: readonly PlacedHeader[];
  /** Connectors in the order of the way from the board. */
  readonly stops: readonly { readonly connector: number; readonly header: PlacedHeader }[];
  /** Supply lines that it brings to each stop. */
  readonly lines: readonly ReadonlySet<string>[];
}

export const stopModules = ({ stops }: LeadPlan): readonly PlacedModule[] =>
  stops.map(({ header }) => header.owner as PlacedModule);

/** Leads looked at before the search is no longer called complete. */
const MOST = 60_000;

export interface Leads {
  readonly leads: readonly LeadPlan[];
  readonly complete: boolean;
}

/** Every lead that could feed a module that has no feed: loose ribbons from a board, module after module. */
export function allLeads({ base, unfed, fed }: Task): Leads {
  const links = linkBuses(base);
  const isFree = (header: PlacedHeader): boolean => !base.wiring.seatedOn.has(header);
  const headers = unfed
    .filter((module) => !fed.has(module))
    .flatMap((module) => powerHeaders(module, links).filter(isFree));
  const leads: LeadPlan[] = [];
  const boards = base.places.boards.map((board) => ({ board, free: board.headers.filter(isFree) }));
  for (const facts of base.kit.ribbons.values()) {
    if (facts.flat || !facts.bus.carriesVoltage) continue;
    const last = facts.connectors.length - 1;
    for (const from of new Set([0, last])) {
      if (!isSocket(facts, from)) continue;
      const step = from === 0 ? 1 : -1;
      for (const { board, free } of boards) {
        const fitting = free.filter((header) => takes(facts, from, header));
        if (fitting.length === 0) continue;
        const extend = (stops: LeadPlan['stops'], places: readonly PlacedHeader[]): void => {
          const before = stops[stops.length - 1];
          if (stops.length > 0) {
            const lines = stops.map(({ connector }) => linesBrought(facts, connector, from, board));
            if (lines.every((brought) => [...brought].some((line) => line !== 'GND')))
              leads.push({ facts, board, boardConnector: from, places, stops, lines });
          }
          if (leads.length >= MOST) return;
          for (let c = (before?.connector ?? from) + step; c >= 0 && c <= last; c += step) {
            const at = before?.connector ?? from;
            const lengthMm = Math.abs(atMm(facts, c) - atMm(facts, at));
            for (const header of headers) {
              if (!takes(facts, c, header) || stops.some((stop) => stop.header.owner === header.owner))
                continue;
              if (before && exceeds(leadWayMm(before.header, header, base), lengthMm)) continue;
              const reaching = before
                ? places
                : fitting.filter((place) => !exceeds(leadWayMm(place, header, base), lengthMm));
              if (reaching.length > 0) extend([...stops, { connector: c, header }], reaching);
            }
          }
        };
        extend([], fitting);
      }
    }
  }
  return { leads: withoutDoubles(leads), complete: leads.length < MOST };
}

/** A lead that reads the same from its other end stands once. */
function withoutDoubles(leads: readonly LeadPlan[]): LeadPlan[] {
  const byKey = new Map<string, LeadPlan>();
  for (const lead of leads) {
    const { facts, board, boardConnector, stops } = lead;
    const along = stops.map(({ connector, header }) => [
      Math.abs(atMm(facts, connector) - atMm(facts, boardConnector)),
      facts.ways[connector],
      header.owner.id,
      header.id,
    ]);
    const key = JSON.stringify([facts.kind.id, board.id, facts.ways[boardConnector], along]);
    if (!byKey.has(key)) byKey.set(key, lead);
  }
  return [...byKey.values()];
}
