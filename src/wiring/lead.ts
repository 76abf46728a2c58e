import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedBoard, PlacedHeader } from '../geometry/place.ts';
import { GND } from '../layout/defaults.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import type { Seat } from '../layout/layout.ts';
import type { DerivedTake } from './derived-take.ts';
import { fits, goesInReversed, isSocket, type Landing, seatOf } from './landing.ts';
import { ownedLeft, stockRank } from './stock.ts';

/** Length that a loose ribbon needs between two headers: along the row, up and down, and the allowance, mm. */
export const leadWayMm = (a: PlacedHeader, b: PlacedHeader, { limits }: DerivedTake): number =>
  Math.abs(a.xMm - b.xMm) +
  Math.abs(a.row.bottomMm + a.yMm - b.row.bottomMm - b.yMm) +
  limits.leadAllowanceMm;

/** Free headers at the other side (boards for a module, modules for a board), nearest first. */
export function headersAcross(take: DerivedTake, start: PlacedHeader): PlacedHeader[] {
  const far = start.owner.type === 'module' ? take.places.boards : take.places.modules;
  return far
    .flatMap(({ headers }) => headers)
    .filter((header) => !take.wiring.seatedOn.has(header))
    .sort((a, b) => leadWayMm(a, start, take) - leadWayMm(b, start, take));
}

/** The end that comes to the start, the last connector before the first, and the one at the far end. */
export const leadEnds = ({ connectors }: RibbonFacts): readonly (readonly [near: number, far: number])[] => [
  [connectors.length - 1, 0],
  [0, connectors.length - 1],
];

export const lengthOf = ({ connectors }: RibbonFacts): number => connectors[connectors.length - 1]?.atMm ?? 0;

/** A lead that feeds a module from a board. */
export interface Lead {
  readonly facts: RibbonFacts;
  readonly from: PlacedHeader;
  readonly to: PlacedHeader;
  readonly seats: readonly Seat[];
  readonly lengthMm: number;
  /** The way between the headers, the allowance included. */
  readonly neededMm: number;
  /** Absent: nobody counts them. */
  readonly ownedLeft: number | undefined;
  readonly toBuy: boolean;
}

/** Why no lead comes to a header. */
export interface NoLead {
  readonly why: 'no kind fits' | 'no free header' | 'a line is missing' | 'none reaches';
  /** Of the lead that would be wanted, where only its length is missing. */
  readonly wanted?: { readonly neededMm: number; readonly waysFrom: number; readonly waysTo: number };
  /** Supply lines that no lead would bring. */
  readonly lines?: readonly string[];
}

export type LeadChoice =
  | { readonly ok: true; readonly lead: Lead }
  | { readonly ok: false; readonly reason: NoLead };

/** What is spoken for and does not stand in the take yet. */
export interface Spoken {
  readonly headers: ReadonlySet<PlacedHeader>;
  /** Kind → leads of it. */
  readonly kinds: ReadonlyMap<string, number>;
}

const NOTHING_SPOKEN: Spoken = { headers: new Set(), kinds: new Map() };

/** Supply lines that arrive through both ends from a supply that gives them. */
export function linesBrought(
  facts: RibbonFacts,
  near: number,
  far: number,
  { supply }: PlacedBoard,
): ReadonlySet<string> {
  const ways = Math.min(facts.ways[near] ?? 0, facts.ways[far] ?? 0);
  const given = (line: string): boolean => line === GND || (supply.ratings[line] ?? 0) > 0;
  const within = [...facts.bus.supplyPins].filter(([, [first]]) => first !== undefined && first < ways);
  return new Set(within.map(([line]) => line).filter(given));
}

interface Option {
  readonly lead: Lead;
  readonly missing: readonly string[];
  readonly reaches: boolean;
}

const compare = (a: Lead, b: Lead): number =>
  stockRank(a.ownedLeft) - stockRank(b.ownedLeft) || a.lengthMm - b.lengthMm || a.neededMm - b.neededMm;

/**
 * The lead for a module's free power header: of the kinds that fit it and a free header of a board, bring the
 * lines asked for and reach, one that is owned and not used up, else one to be bought; the shortest of them, to
 * the nearest header.
 *
 * @param lines - supply lines that it must bring; default whatever the module needs
 * @param spoken - headers and leads that are promised to others
 */
export function leadFor(
  take: DerivedTake,
  from: PlacedHeader,
  lines: readonly string[] = from.owner.type === 'module' ? from.owner.facts.needs : [],
  spoken: Spoken = NOTHING_SPOKEN,
): LeadChoice {
  const free = headersAcross(take, from).filter((header) => !spoken.headers.has(header));
  let fitsHere = false;
  const options: Option[] = [];
  for (const facts of take.kit.ribbons.values()) {
    if (facts.flat || !facts.bus.carriesVoltage) continue;
    for (const [near, far] of leadEnds(facts)) {
      if (!takes(facts, near, from)) continue;
      fitsHere = true;
      options.push(...optionsOf(take, facts, [near, far], { from, free, lines, spoken }));
    }
  }
  if (!fitsHere) return none({ why: 'no kind fits' });
  if (options.length === 0) return none({ why: 'no free header' });
  const complete = options.filter(({ missing }) => missing.length === 0);
  if (complete.length === 0) return none({ why: 'a line is missing', lines: fewestMissing(options) });
  const reaching = complete.filter(({ reaches }) => reaches).map(({ lead }) => lead);
  const [best] = reaching.sort(compare);
  return best ? { ok: true, lead: best } : none({ why: 'none reaches', wanted: wantedOf(complete) });
}

export const takes = (facts: RibbonFacts, connector: number, header: PlacedHeader): boolean =>
  isSocket(facts, connector) && fits(facts, connector, header) && !goesInReversed(facts, connector, header);

const none = (reason: NoLead): LeadChoice => ({ ok: false, reason });

interface Asked {
  readonly from: PlacedHeader;
  readonly free: readonly PlacedHeader[];
  readonly lines: readonly string[];
  readonly spoken: Spoken;
}

/** A kind's nearest header on each supply, whether or not it reaches: supplies give different voltages. */
function optionsOf(
  take: DerivedTake,
  facts: RibbonFacts,
  [near, far]: readonly [number, number],
  { from, free, lines, spoken }: Asked,
): Option[] {
  const inTake = ownedLeft(take.take, facts.kind);
  const left = inTake === undefined ? undefined : inTake - (spoken.kinds.get(facts.kind.id) ?? 0);
  const options: Option[] = [];
  const supplies = new Set<number>();
  for (const to of free) {
    const board = to.owner as PlacedBoard;
    if (supplies.has(board.supplyIndex) || !takes(facts, far, to)) continue;
    supplies.add(board.supplyIndex);
    const neededMm = leadWayMm(from, to, take);
    const landings: Landing[] = [
      { connector: far, header: to },
      { connector: near, header: from },
    ];
    const seats = landings.map(seatOf);
    const lengthMm = lengthOf(facts);
    const lead = { facts, from, to, seats, lengthMm, neededMm, ownedLeft: left, toBuy: (left ?? 1) <= 0 };
    const brought = linesBrought(facts, near, far, board);
    const feeds = [...brought].some((line) => line !== GND);
    const missing = feeds ? lines.filter((line) => !brought.has(line)) : lines;
    options.push({ lead, missing, reaches: !exceeds(neededMm, lengthMm) });
  }
  return options;
}

const fewestMissing = (options: readonly Option[]): readonly string[] =>
  [...options].sort((a, b) => a.missing.length - b.missing.length)[0]?.missing ?? [];

/** The lead that would be wanted: to the nearest header. */
function wantedOf(options: readonly Option[]): NonNullable<NoLead['wanted']> {
  const [nearest] = [...options].sort((a, b) => a.lead.neededMm - b.lead.neededMm) as [Option];
  const { lead } = nearest;
  return { neededMm: lead.neededMm, waysFrom: lead.from.bus.pins, waysTo: lead.to.bus.pins };
}
