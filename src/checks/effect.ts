import { renamedInKey } from '../layout/key-part.ts';
import type { Bus, Kit, Layout, ModuleKind, RibbonKind, Take } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { Check, Note } from './check.ts';
import { judge } from './judge.ts';
import { noteChanges } from './note-changes.ts';

/** What a change of the kit would do, told before it is done. Takes that stay the same, kit and all, say nothing. */
export interface Effect {
  /** Kinds of module and of ribbon that change: by themselves, by their bus, or by a voltage that they draw. */
  readonly modules: readonly string[];
  readonly ribbons: readonly string[];
  /** Modules and ribbons of these kinds, and the seats of the ribbons, in all takes. */
  readonly placed: number;
  readonly laid: number;
  readonly seats: number;
  /** Connectors that come off what they sat on, and ribbons that come out of the case with it. */
  readonly seatsLost: number;
  readonly ribbonsLost: number;
  /** Notes that come, and notes that go; what was put away counts as gone. */
  readonly gained: readonly Note[];
  readonly lost: readonly Note[];
}

interface Identified {
  readonly id: string;
}

/** Ids of what is not the very same thing in both lists. */
function changedIn<T extends Identified>(before: readonly T[], after: readonly T[]): ReadonlySet<string> {
  const was = new Map(before.map((thing) => [thing.id, thing]));
  const is = new Map(after.map((thing) => [thing.id, thing]));
  return new Set([...was.keys(), ...is.keys()].filter((id) => was.get(id) !== is.get(id)));
}

/** The one voltage that is called otherwise. */
function renamingIn(before: Kit, after: Kit): readonly [from: string, to: string] | undefined {
  if (before.voltages.length !== after.voltages.length) return undefined;
  const other = before.voltages.flatMap(({ id: from }, i) => {
    const to = after.voltages[i]?.id ?? from;
    return from === to ? [] : [[from, to] as const];
  });
  return other.length === 1 ? other[0] : undefined;
}

/** Notes of each take, by its id; what was put away counts as gone. */
const activeNotes = (
  { kit, takes }: Layout,
  checks: readonly Check[],
  rename: (key: string) => string = (key) => key,
): ReadonlyMap<string, readonly Note[]> =>
  new Map(
    takes.map((take) => {
      const notes = judge(deriveTake(kit, take), checks).filter(({ accepted }) => !accepted);
      return [take.id, notes.map((note) => ({ ...note, key: rename(note.key) }))];
    }),
  );

const saying = ({ take, check, headline }: Note): string => `${take}/${check}/${headline}`;

/** What is in one layout's notes and not in the other's. */
function changesOf(before: Layout, after: Layout, checks: readonly Check[]): Pick<Effect, 'gained' | 'lost'> {
  if (before.kit === after.kit && before.takes === after.takes) return { gained: [], lost: [] };
  const [from, to] = renamingIn(before.kit, after.kit) ?? ['', ''];
  const was = activeNotes(before, checks, (key) => renamedInKey(key, from, to));
  const is = activeNotes(after, checks);
  const changes = [...new Set([...was.keys(), ...is.keys()])].map((take) =>
    noteChanges(was.get(take) ?? [], is.get(take) ?? []),
  );
  const [came, gone] = [changes.flatMap((change) => change.came), changes.flatMap((change) => change.gone)];
  // One note on many things is another by its key, and says the same.
  const [saidNow, saidBefore] = [came, gone].map((notes) => new Set(notes.map(saying)));
  return {
    gained: came.filter((note) => !saidBefore?.has(saying(note))),
    lost: gone.filter((note) => !saidNow?.has(saying(note))),
  };
}

const ribbonsOf = (takes: readonly Take[]) => takes.flatMap(({ ribbons }) => ribbons);

const seatCount = (ribbons: readonly { readonly seats: readonly unknown[] }[]): number =>
  ribbons.reduce((sum, { seats }) => sum + seats.length, 0);

/** @param checks - by which the takes are judged before and after */
export function effectOf(before: Layout, after: Layout, checks: readonly Check[]): Effect {
  const voltages = changedIn(before.kit.voltages, after.kit.voltages);
  const buses = new Set([
    ...changedIn(before.kit.buses, after.kit.buses),
    ...[...before.kit.buses, ...after.kit.buses]
      .filter(({ pinout }: Bus) => pinout.some((line) => voltages.has(line)))
      .map(({ id }) => id),
  ]);
  const changedModules = changedIn(before.kit.modules, after.kit.modules);
  const changedRibbons = changedIn(before.kit.ribbons, after.kit.ribbons);
  const modules = before.kit.modules.filter(
    ({ id, headers, draws }: ModuleKind) =>
      changedModules.has(id) ||
      headers.some(({ bus }) => buses.has(bus)) ||
      Object.keys(draws).some((voltage) => voltages.has(voltage)),
  );
  const ribbons = before.kit.ribbons.filter(
    ({ id, bus }: RibbonKind) => changedRibbons.has(id) || buses.has(bus),
  );
  const moduleIds = new Set(modules.map(({ id }) => id));
  const ribbonIds = new Set(ribbons.map(({ id }) => id));
  const laid = ribbonsOf(before.takes).filter(({ kind }) => ribbonIds.has(kind));
  return {
    modules: modules.map(({ name }) => name),
    ribbons: ribbons.map(({ name }) => name),
    placed: before.takes.reduce(
      (sum, take) => sum + take.modules.filter(({ kind }) => moduleIds.has(kind)).length,
      0,
    ),
    laid: laid.length,
    seats: seatCount(laid),
    seatsLost: Math.max(0, seatCount(ribbonsOf(before.takes)) - seatCount(ribbonsOf(after.takes))),
    ribbonsLost: Math.max(0, ribbonsOf(before.takes).length - ribbonsOf(after.takes).length),
    ...changesOf(before, after, checks),
  };
}
