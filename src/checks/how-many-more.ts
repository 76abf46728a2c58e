import type { KitIndex } from '../layout/kit-index.ts';
import type { Kit, ModuleKind } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { allAtOnce } from './all-at-once.ts';
import { LEVELS, type Level, type Note } from './check.ts';
import { checkTake } from './run.ts';

/** The checks that more modules can break by what they draw. */
const LOADS: ReadonlySet<string> = new Set([
  'overload',
  'low-headroom',
  'board-overload',
  'contact-overload',
  'low-voltage',
  'ground-shift',
]);

/** How many more modules of a kind could be fed from where a module stands. */
export interface HowManyMore {
  /** Absent: more than `MOST` break nothing. */
  readonly most?: number;
  /** What one more would break. */
  readonly breaks: readonly Note[];
}

/** Nobody builds more. */
export const MOST = 1000;

const freshId = ({ modules }: KitIndex): string => {
  let id = 'with more';
  while (modules.has(id)) id += ' ';
  return id;
};

/** The take as if one module drew what so many of a kind draw besides its own. */
function withMore(take: WholeTake, at: string, kind: ModuleKind, more: number): WholeTake {
  const { kit } = take.kit;
  const module = take.take.modules.find(({ id }) => id === at);
  const own = kit.modules.find(({ id }) => id === module?.kind);
  if (!own || more === 0) return take;
  const draws: Record<string, number | null> = { ...own.draws };
  for (const [voltage, ma] of Object.entries(kind.draws)) {
    // Draws that nobody knows count for nothing here as everywhere; some of one known draw is better than none.
    if (ma !== null) draws[voltage] = (draws[voltage] ?? 0) + ma * more;
  }
  const id = freshId(take.kit);
  const fuller: Kit = { ...kit, modules: [...kit.modules, { ...own, id, draws }] };
  const modules = take.take.modules.map((each) => (each.id === at ? { ...each, kind: id } : each));
  return deriveTake(fuller, { ...take.take, modules });
}

const loadNotes = (take: WholeTake): Note[] => checkTake(take).filter(({ check }) => LOADS.has(check));

/**
 * How many more modules of a kind until which limit breaks, as if they stood where a module stands and drew through
 * its headers: the ribbon between them and that module is left out. Judges the whole take about ten times, and stops
 * after each, so that whoever asks can do other things in between.
 *
 * @param at - id of the module at which they draw
 * @param least - what counts as broken: findings of this level and worse
 */
export function* searchHowManyMore(
  take: WholeTake,
  at: string,
  kind: ModuleKind,
  least: Level = 'fault',
): Generator<undefined, HowManyMore> {
  const before = new Set(loadNotes(take).map(({ key }) => key));
  const broken = (more: number): Note[] =>
    loadNotes(withMore(take, at, kind, more)).filter(
      ({ key, level }) => !before.has(key) && LEVELS.indexOf(level) <= LEVELS.indexOf(least),
    );
  if (broken(MOST).length === 0) return { breaks: [] };
  let [holds, breaks] = [0, MOST];
  while (breaks - holds > 1) {
    yield;
    const middle = Math.floor((holds + breaks) / 2);
    if (broken(middle).length > 0) breaks = middle;
    else holds = middle;
  }
  return { most: holds, breaks: broken(breaks) };
}

/** All at once, for those who can wait. */
export const howManyMore = (...asked: Parameters<typeof searchHowManyMore>): HowManyMore =>
  allAtOnce(searchHowManyMore(...asked));
