import type { PlacedBoard, PlacedModule } from '../geometry/place.ts';
import { GND } from '../layout/defaults.ts';
import { connectorsInUse, type LaidRibbon } from '../wiring/laid-ribbon.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Defect } from './defect.ts';
import type { Link, Ways } from './ways.ts';

/** Where two lines may touch. */
export type ShortPlace =
  | { readonly type: 'module'; readonly module: PlacedModule }
  | { readonly type: 'board'; readonly board: PlacedBoard }
  | { readonly type: 'ribbon'; readonly ribbon: LaidRibbon; readonly connector: number };

/** One thing that may be broken. */
export type Suspect =
  /** A link is open on one line, or on all of its lines at once: off its seat, cut through, switched off. */
  | { readonly type: 'open'; readonly link: Link; readonly line: string | null }
  /** All that a module needs arrives, and it does not work. */
  | { readonly type: 'inside'; readonly module: PlacedModule }
  | { readonly type: 'short'; readonly place: ShortPlace; readonly lines: readonly [string, string] };

function* opensIn({ take, cutsOf }: Ways): Generator<Suspect> {
  for (const [link, cuts] of cutsOf) {
    for (const { line } of cuts) yield { type: 'open', link, line };
    const several = cuts.filter(({ line }) => link.type !== 'supply' || line !== GND);
    if (several.length > 1) yield { type: 'open', link, line: null };
  }
  for (const module of take.places.modules) yield { type: 'inside', module };
}

/** Lines of one place that a short may join: two voltages that differ, or a voltage and ground. */
export function* shortPairs(
  lines: readonly string[],
  { kit }: WholeTake,
): Generator<readonly [string, string]> {
  const voltsOf = (line: string): number => kit.voltages.get(line)?.volts ?? 0;
  for (const [i, line] of lines.entries())
    for (const other of lines.slice(i + 1)) if (voltsOf(line) !== voltsOf(other)) yield [line, other];
}

/** Supply lines of a module: those that its own headers carry. */
export function linesAt({ headers }: PlacedModule, { kit }: WholeTake): string[] {
  const carried = new Set(
    headers.filter(({ isolated }) => !isolated).flatMap(({ bus }) => [...bus.supplyPins.keys()]),
  );
  return kit.supplyLines.filter((line) => carried.has(line));
}

function* shortsIn(ways: Ways): Generator<Suspect> {
  const { take } = ways;
  const lines = take.kit.supplyLines;
  const reached = (placeAt: (line: string) => number | undefined): string[] =>
    lines.filter((line) => placeAt(line) !== undefined);
  for (const module of take.places.modules) {
    const own = linesAt(module, take).filter((line) => ways.atModule(module, line) !== undefined);
    for (const pair of shortPairs(own, take))
      yield { type: 'short', place: { type: 'module', module }, lines: pair };
  }
  for (const ribbon of take.wiring.ribbons) {
    const [connector] = connectorsInUse(ribbon);
    if (connector === undefined) continue;
    for (const pair of shortPairs(
      reached((line) => ways.atRibbon(ribbon, connector, line)),
      take,
    ))
      yield { type: 'short', place: { type: 'ribbon', ribbon, connector }, lines: pair };
  }
  for (const board of take.places.boards) {
    for (const pair of shortPairs(
      reached((line) => ways.atBoard(board, line)),
      take,
    ))
      yield { type: 'short', place: { type: 'board', board }, lines: pair };
  }
}

/** Everything that may be broken in a take. */
export const suspectsIn = (ways: Ways): Suspect[] => [...opensIn(ways), ...shortsIn(ways)];

/** Place of a line where a short may be. */
export function placeOf(ways: Ways, place: ShortPlace, line: string): number | undefined {
  if (place.type === 'module') return ways.atModule(place.module, line);
  if (place.type === 'board') return ways.atBoard(place.board, line);
  return ways.atRibbon(place.ribbon, place.connector, line);
}

function openIn(link: Link, line: string): Defect[] {
  switch (link.type) {
    case 'supply':
      return [{ type: 'open-output', supply: link.supply.id, line }];
    case 'board-lead':
      return [{ type: 'open-lead', board: link.board.id, line }];
    case 'seat': {
      const { ribbon, connector } = link.joint;
      const pins = ribbon.facts.bus.supplyPins.get(line) ?? [];
      return pins.map((contact) => ({ type: 'open-contact', ribbon: ribbon.id, connector, contact }));
    }
    case 'span': {
      const { ribbon, from } = link;
      const pins = ribbon.facts.bus.supplyPins.get(line) ?? [];
      return pins.map((conductor) => ({ type: 'open-conductor', ribbon: ribbon.id, from, conductor }));
    }
  }
}

/** Supply lines that a link carries; a supply that is off keeps its ground. */
function linesOf(link: Link, { kit }: WholeTake): readonly string[] {
  if (link.type === 'supply') return kit.supplyLines.filter((line) => line !== GND);
  if (link.type === 'board-lead') return kit.supplyLines;
  const { ribbon } = link.type === 'seat' ? link.joint : link;
  return [...ribbon.facts.bus.supplyPins.keys()];
}

/** The defects that a suspicion comes down to; none for what is inside a module. */
export function defectsOfSuspect(suspect: Suspect, take: WholeTake): readonly Defect[] {
  if (suspect.type === 'inside') return [];
  if (suspect.type === 'short') {
    const { place, lines } = suspect;
    if (place.type === 'module') return [{ type: 'module-short', module: place.module.id, lines }];
    if (place.type === 'board') return [{ type: 'board-short', board: place.board.id, lines }];
    return [{ type: 'short', ribbon: place.ribbon.id, connector: place.connector, lines }];
  }
  const { link, line } = suspect;
  if (line !== null) return openIn(link, line);
  if (link.type === 'seat')
    return [{ type: 'unplugged', ribbon: link.joint.ribbon.id, connector: link.joint.connector }];
  return linesOf(link, take).flatMap((each) => openIn(link, each));
}
