import type { Layout, Take } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, filterKept, find, mapKept, withField } from './change.ts';
import { withBuilt } from './change-built.ts';
import { inWords, namesOf, refuseForPlaces } from './in-use.ts';

/**
 * Takes a voltage out of the kit; refused while a pin carries it, a module draws it, a supply gives it or a board
 * has a limit for it. Figures of 0 mA say that it is not used, and go with it; so does what a meter showed of it.
 */
export interface RemoveVoltage {
  readonly type: 'remove-voltage';
  readonly voltage: string;
}

type Figures<T> = Readonly<Record<string, T>>;

/** A draw that nobody knows counts as one. */
const isUsed = (figures: Figures<number | null>, id: string): boolean =>
  Object.hasOwn(figures, id) && figures[id] !== 0;

function without<T>(figures: Figures<T>, id: string): Figures<T> {
  if (!Object.hasOwn(figures, id)) return figures;
  return Object.fromEntries(Object.entries(figures).filter(([voltage]) => voltage !== id));
}

/** Names of supplies that give it and of boards that have a limit for it, each with its take. */
function placesIn(takes: readonly Take[], id: string) {
  const givers = takes.flatMap(({ supplies, name }) =>
    supplies.filter(({ ratings }) => isUsed(ratings, id)).map((supply) => `${supply.name} in ${name}`),
  );
  const limiters = takes.flatMap(({ supplies, name }) =>
    supplies
      .flatMap(({ boards }) => boards)
      .filter(({ limits }) => limits && Object.hasOwn(limits, id))
      .map((board) => `${board.name} in ${name}`),
  );
  return { givers, limiters };
}

function cleared(take: Take, id: string): Take {
  const supplies = mapKept(take.supplies, (supply) =>
    withField(supply, 'ratings', without(supply.ratings, id)),
  );
  const { readings } = take.built ?? {};
  const read = readings && filterKept(readings, ({ line }) => line !== id);
  return withBuilt(withField(take, 'supplies', supplies), 'readings', read);
}

export function removeVoltage(layout: Layout, edit: RemoveVoltage): Edited<Layout> {
  const { kit, takes } = layout;
  const found = find(kit.voltages, edit.voltage, 'voltage');
  if (!found.ok) return found;
  const { id } = found.value;
  const { givers, limiters } = placesIn(takes, id);
  const inUse = refuseForPlaces(`"${id}"`, [
    ...inWords('on pins of', namesOf(kit.buses.filter(({ pinout }) => pinout.includes(id)))),
    ...inWords('drawn by', namesOf(kit.modules.filter(({ draws }) => isUsed(draws, id)))),
    ...inWords('given by', givers),
    ...inWords('limited on', limiters),
  ]);
  if (inUse) return inUse;
  const voltages = filterKept(kit.voltages, (voltage) => voltage !== found.value);
  const modules = mapKept(kit.modules, (kind) => withField(kind, 'draws', without(kind.draws, id)));
  const lesser = withField(withField(kit, 'voltages', voltages), 'modules', modules);
  return ok(
    withField(
      withField(layout, 'kit', lesser),
      'takes',
      mapKept(takes, (take) => cleared(take, id)),
    ),
  );
}
