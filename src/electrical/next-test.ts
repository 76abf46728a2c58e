import type { PlacedBoard, PlacedModule } from '../geometry/place.ts';
import { GND } from '../layout/defaults.ts';
import { groupBy } from '../layout/group-by.ts';
import type { Joint } from '../wiring/laid-ribbon.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Probe } from './readings.ts';
import { linesAt, placeOf, type Suspect, suspectsIn } from './suspect.ts';
import { type Cut, holds, supplyWays, type Ways } from './ways.ts';

/** Something to look at or to measure. */
export type Test =
  /** Does the module work? */
  | { readonly type: 'look'; readonly module: PlacedModule }
  /** Is the line there? Nothing is unplugged. */
  | { readonly type: 'measure'; readonly at: PlacedModule | PlacedBoard; readonly line: string }
  /** With these seats apart, is the line there on the half from which it comes? */
  | { readonly type: 'unplug'; readonly seats: readonly Joint[]; readonly line: string };

/** What was seen: a line is there, or a module works, or not. */
export interface Observation {
  readonly test: Test;
  readonly isThere: boolean;
}

/** How far the search has come. */
export interface Search {
  /** What can be broken, if one thing alone is, and all that was seen is true. */
  readonly suspects: readonly Suspect[];
  /** The test to do next; nothing where no test tells them apart. */
  readonly next?: Test;
  /** Observations that tell nothing: no supply brings the line there in the drawing. */
  readonly undrawn: readonly Observation[];
}

/** A suspect with its places in the walk. */
interface Case {
  readonly suspect: Suspect;
  readonly cuts: readonly Cut[];
  /** Of a short, where it is on each of its voltages that a supply holds. */
  readonly pulls: readonly number[];
  /** Of a short, where it is on each of its two lines. */
  readonly touches: readonly number[];
}

/** A test with its places in the walk. */
interface Look {
  readonly test: Test;
  /** All of these must be there. */
  readonly places: readonly number[];
  readonly module?: PlacedModule;
  readonly pulled: readonly Joint[];
}

type Answer = boolean | undefined;

class Finder {
  readonly ways: Ways;
  readonly #cutsAt = new Map<Joint, readonly Cut[]>();

  constructor(ways: Ways) {
    this.ways = ways;
    for (const [link, cuts] of ways.cutsOf) if (link.type === 'seat') this.#cutsAt.set(link.joint, cuts);
  }

  caseOf(suspect: Suspect): Case {
    const { ways } = this;
    if (suspect.type === 'inside') return { suspect, cuts: [], pulls: [], touches: [] };
    if (suspect.type === 'short') {
      const { place, lines } = suspect;
      const at = (line: string): number => placeOf(ways, place, line) as number;
      const pulls = lines.filter((line) => line !== GND).map(at);
      return { suspect, cuts: [], pulls, touches: lines.map(at) };
    }
    const all = ways.cutsOf.get(suspect.link) ?? [];
    const cuts = all.filter(({ link, line }) =>
      suspect.line === null ? link.type !== 'supply' || line !== GND : line === suspect.line,
    );
    return { suspect, cuts, pulls: [], touches: [] };
  }

  /** Nothing where the drawing brings no such line there. */
  lookOf(test: Test): Look | undefined {
    const places = this.#placesOf(test);
    if (places.length === 0 || places.includes(undefined)) return undefined;
    return {
      test,
      places: places as number[],
      pulled: test.type === 'unplug' ? test.seats : [],
      ...(test.type === 'look' && { module: test.module }),
    };
  }

  #placesOf(test: Test): readonly (number | undefined)[] {
    if (test.type === 'look')
      return neededLines(test.module, this.ways).map((line) => this.ways.atModule(test.module, line));
    if (test.type === 'measure') return [placeAt(this.ways, test.at, test.line)];
    return [...new Set(test.seats.map((seat) => this.cutAt(seat, test.line)?.above))];
  }

  cutAt(seat: Joint, line: string): Cut | undefined {
    return this.#cutsAt.get(seat)?.find((cut) => cut.line === line);
  }

  /** What a test would show if a suspect were it; nothing where that cannot be said. */
  answer(each: Case, { places, module, pulled }: Look): Answer {
    if (each.suspect.type === 'inside') return each.suspect.module !== module;
    if (each.suspect.type === 'open')
      return !each.cuts.some((cut) => places.some((place) => holds(cut, place)));
    const { ways } = this;
    const isHit = places.some((place) =>
      each.pulls.some((pull) => ways.pieceOf(pull) === ways.pieceOf(place)),
    );
    if (!isHit) return true;
    const { lines } = each.suspect;
    if (pulled.some((seat) => lines.some((line, i) => this.#cutsOff(seat, line, each.touches[i] as number))))
      return true;
    // Several seats may be all the ways there are to a line, where none of them is by itself.
    const mayBe = pulled.length > 1 && pulled.some((seat) => lines.some((line) => !this.cutAt(seat, line)));
    return mayBe ? undefined : false;
  }

  #cutsOff(seat: Joint, line: string, place: number): boolean {
    const cut = this.cutAt(seat, line);
    return cut !== undefined && holds(cut, place);
  }
}

const isModule = (at: PlacedModule | PlacedBoard): at is PlacedModule => at.type === 'module';

const placeAt = (ways: Ways, at: PlacedModule | PlacedBoard, line: string): number | undefined =>
  isModule(at) ? ways.atModule(at, line) : ways.atBoard(at, line);

/** Lines that a module needs; of one that is not known to need any, those that arrive. */
function neededLines(module: PlacedModule, ways: Ways): readonly string[] {
  const { needs } = module.facts;
  if (needs.length > 0) return needs;
  return linesAt(module, ways.take).filter((line) => ways.atModule(module, line) !== undefined);
}

/** How many cases each place would miss the line in, and how many shorts a stretch holds. */
class Tally {
  readonly #finder: Finder;
  readonly #open: readonly number[];
  /** Shorts at places before each, by the voltages that they pull down. */
  readonly #before: readonly number[];
  readonly #byPiece = new Map<number, number>();

  constructor(finder: Finder, cases: readonly Case[]) {
    const { size } = finder.ways;
    this.#finder = finder;
    const steps = new Array<number>(size + 1).fill(0);
    const shorts = new Array<number>(size + 1).fill(0);
    const add = (list: number[], place: number, n: number): void => {
      list[place] = (list[place] as number) + n;
    };
    for (const { cuts, pulls } of cases) {
      for (const { first, last } of cuts) {
        add(steps, first, 1);
        add(steps, last + 1, -1);
      }
      for (const pull of pulls) {
        add(shorts, pull + 1, 1);
        const piece = finder.ways.pieceOf(pull);
        this.#byPiece.set(piece, (this.#byPiece.get(piece) ?? 0) + 1);
      }
    }
    const sums = (list: readonly number[]): number[] => {
      let sum = 0;
      return list.map((each) => {
        sum += each;
        return sum;
      });
    };
    this.#open = sums(steps);
    this.#before = sums(shorts);
  }

  missingAt(place: number): number {
    return (this.#open[place] as number) + (this.#byPiece.get(this.#finder.ways.pieceOf(place)) ?? 0);
  }

  shortsIn({ first, last }: Cut): number {
    return (this.#before[last + 1] as number) - (this.#before[first] as number);
  }
}

interface Candidate {
  readonly test: Test;
  /** Cases in which the line would be missing. */
  readonly missing: number;
  /** Measuring disturbs nothing; unplugging one is less work than unplugging several. */
  readonly work: number;
}

function* measuring(ways: Ways, tally: Tally): Generator<Candidate> {
  const { places, kit } = ways.take;
  for (const at of [...places.boards, ...places.modules]) {
    const lines = isModule(at) ? linesAt(at, ways.take) : kit.supplyLines;
    for (const line of lines) {
      const place = placeAt(ways, at, line);
      if (place === undefined) continue;
      yield { test: { type: 'measure', at, line }, missing: tally.missingAt(place), work: 0 };
    }
  }
}

function* unplugging({ cuts }: Ways, tally: Tally, half: number): Generator<Candidate> {
  const seats = cuts.filter(({ link, line }) => link.type === 'seat' && line !== GND);
  for (const cut of seats) {
    if (cut.link.type !== 'seat') continue;
    const test: Test = { type: 'unplug', seats: [cut.link.joint], line: cut.line };
    yield { test, missing: tally.missingAt(cut.above) - tally.shortsIn(cut), work: 1 };
  }
  for (const [above, siblings] of groupBy(seats, (cut) => cut.above)) {
    const test = together(siblings, tally, tally.missingAt(above) - half);
    if (test) yield { ...test, missing: tally.missingAt(above) - test.freed };
  }
}

/** Of the seats that share a side, those that come nearest to freeing so many cases between them. */
function together(
  siblings: readonly Cut[],
  tally: Tally,
  wanted: number,
): { readonly test: Test; readonly work: number; readonly freed: number } | undefined {
  const weighed = siblings
    .map((cut, i) => ({ cut, i, weight: tally.shortsIn(cut) }))
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.weight - a.weight || a.i - b.i);
  let freed = 0;
  const chosen = weighed.filter(({ weight }) => {
    const takes = Math.abs(wanted - freed - weight) < Math.abs(wanted - freed);
    if (takes) freed += weight;
    return takes;
  });
  if (chosen.length < 2) return undefined;
  const seats = chosen
    .toSorted((a, b) => a.i - b.i)
    .flatMap(({ cut: { link } }) => (link.type === 'seat' ? [link.joint] : []));
  const line = (siblings[0] as Cut).line;
  return { test: { type: 'unplug', seats, line }, work: seats.length, freed };
}

const keyOf = (test: Test): string => {
  if (test.type === 'look') return `look ${test.module.id}`;
  if (test.type === 'measure') return `measure ${test.at.type} ${test.at.id} ${test.line}`;
  return `unplug ${test.seats.map(({ ribbon, connector }) => `${ribbon.id} ${connector}`).join(' ')} ${test.line}`;
};

/** Measuring takes seconds and unplugging minutes: it comes first while it parts off at least so much of the cases. */
const HANDY_SHARE = 1 / 8;

function worthOf(
  { missing, work }: Candidate,
  count: number,
): { readonly isHandy: boolean; readonly offHalf: number } {
  const isHandy = work === 0 && Math.min(missing, count - missing) >= HANDY_SHARE * count;
  return { isHandy, offHalf: Math.abs(missing - count / 2) };
}

/** The first of the best candidates that parts the cases in truth: counts of shorts with two ways round are too high. */
function best(finder: Finder, cases: readonly Case[], left: ReadonlySet<string>): Test | undefined {
  const tally = new Tally(finder, cases);
  const half = cases.length / 2;
  const candidates = [...measuring(finder.ways, tally), ...unplugging(finder.ways, tally, half)]
    .filter(({ missing }) => missing > 0 && missing < cases.length)
    .map((candidate) => ({ ...candidate, ...worthOf(candidate, cases.length) }))
    .sort((a, b) => Number(b.isHandy) - Number(a.isHandy) || a.offHalf - b.offHalf || a.work - b.work);
  for (const { test } of candidates) {
    const look = left.has(keyOf(test)) ? undefined : finder.lookOf(test);
    if (!look) continue;
    const answers = new Set(cases.map((each) => finder.answer(each, look)));
    if (answers.has(true) && answers.has(false)) return test;
  }
  return undefined;
}

/**
 * What can be broken after all that was seen, and what to look at next. It is taken that one thing alone is broken.
 * Exact and the same each time; near-linear in the seats drawn. What comes next halves the suspects as nearly as it can,
 * but for a measurement that parts them well enough and spares unplugging.
 *
 * @param left - tests that cannot be done
 */
export function searchFault(
  take: WholeTake,
  seen: readonly Observation[],
  left: readonly Test[] = [],
): Search {
  const finder = new Finder(supplyWays(take));
  const undrawn: Observation[] = [];
  let cases = suspectsIn(finder.ways).map((suspect) => finder.caseOf(suspect));
  for (const observation of seen) {
    const look = finder.lookOf(observation.test);
    if (!look) {
      undrawn.push(observation);
      continue;
    }
    cases = cases.filter(
      (each) => (finder.answer(each, look) ?? observation.isThere) === observation.isThere,
    );
  }
  const isOpen = seen.some(({ isThere }) => !isThere) && cases.length > 1;
  const next = isOpen ? best(finder, cases, new Set(left.map(keyOf))) : undefined;
  return { suspects: cases.map(({ suspect }) => suspect), undrawn, ...(next && { next }) };
}

/** Where the probe goes for a test on a line. */
export function probeOf(test: Exclude<Test, { readonly type: 'look' }>, take: WholeTake): Probe | undefined {
  if (test.type === 'measure')
    return isModule(test.at)
      ? { module: test.at.id, line: test.line }
      : { board: test.at.id, line: test.line };
  const [seat] = test.seats;
  return seat && freedSide(seat, test.line, take);
}

/** The half of a seat from which a line comes, by which it is measured when the two are apart. */
function freedSide(seat: Joint, line: string, take: WholeTake): Probe | undefined {
  const ways = supplyWays(take);
  const { ribbon, connector } = seat;
  const cut = ways.cuts.find(
    ({ link, line: own }) => link.type === 'seat' && link.joint === seat && own === line,
  );
  if (!cut) return undefined;
  const isUnder = ways.atRibbon(ribbon, connector, line) !== cut.above;
  return { ribbon: ribbon.id, connector, line, ...(isUnder && { isUnder }) };
}
