import { GND } from '../layout/defaults.ts';
import type { Bus, Kit, Layout, ModuleKind, RibbonKind } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { saysTheSame } from '../layout/says-the-same.ts';
import { addModuleKind } from './add-module-kind.ts';
import { addRibbonKind } from './add-ribbon-kind.ts';
import { type Edited, find, mapKept, refuse, withField } from './change.ts';
import { changeModuleKind } from './change-module-kind.ts';
import { changeRibbonKind } from './change-ribbon-kind.ts';
import { kitOf } from './clip-of.ts';
import { FreshNames, nextInSeries } from './fresh.ts';
import { refuseBus, refuseRibbonKind } from './kind-faults.ts';
import { isSameKind, mergeKit } from './merge-kit.ts';
import { withStrangeKeys } from './replaced.ts';

/** A kind or bus of another kit. */
export interface TakenKind {
  readonly sort: 'module' | 'ribbon' | 'bus';
  readonly id: string;
  /** Id of the one whose place it takes; absent: it comes beside those that there are. */
  readonly instead?: string;
}

/**
 * Takes kinds and buses of another kit into this one, with the buses and voltages that they need. One that comes beside
 * others and says the same as one of them is left out; one that only bears the id or the name of another gets a
 * number behind it.
 */
export interface TakeKinds {
  readonly type: 'take-kinds';
  readonly from: Kit;
  readonly kinds: readonly TakenKind[];
}

const kindsOf = (kinds: readonly TakenKind[], sort: TakenKind['sort']): readonly TakenKind[] =>
  kinds.filter((taken) => taken.sort === sort);

const asParts = (kinds: readonly TakenKind[]) => kinds.map(({ id }) => ({ kind: id }));

/** What is taken of the other kit, and what that needs. */
function partOf({ from, kinds }: TakeKinds): Kit {
  const part = kitOf(from, asParts(kindsOf(kinds, 'module')), asParts(kindsOf(kinds, 'ribbon')));
  const more = new Set(kindsOf(kinds, 'bus').flatMap(({ id, instead }) => (instead === undefined ? id : [])));
  const buses = from.buses.filter((bus) => more.has(bus.id) || part.buses.includes(bus));
  const lines = new Set(buses.flatMap(({ pinout }) => pinout));
  const voltages = from.voltages.filter((each) => lines.has(each.id) || part.voltages.includes(each));
  return { ...part, buses, voltages };
}

function refuseStrangers({ from, kinds }: TakeKinds) {
  const lists = { module: from.modules, ribbon: from.ribbons, bus: from.buses };
  const stranger = kinds.find(({ sort, id }) => !lists[sort].some((kind) => kind.id === id));
  return (
    stranger && refuse(`There is no ${stranger.sort === 'bus' ? 'bus' : 'kind'} "${stranger.id}" to take`)
  );
}

/** The lines of a bus that takes another's place; its voltages come with it. */
function withVoltages(kit: Kit, from: Kit, bus: Bus): { readonly kit: Kit; readonly bus: Bus } {
  const lines = new Set(bus.pinout.filter((line) => line !== GND));
  const voltages = from.voltages.filter(({ id }) => lines.has(id));
  const merged = mergeKit(
    { ...kit, modules: [], ribbons: [], buses: [] },
    {
      voltages,
      buses: [bus],
      modules: [],
      ribbons: [],
    },
  ).kit;
  const [renamed = bus] = merged.buses;
  return { kit: withField(kit, 'voltages', merged.voltages), bus: renamed };
}

function changeBus(layout: Layout, from: Kit, { id, instead = '' }: TakenKind): Edited<Layout> {
  const before = find(layout.kit.buses, instead, 'bus');
  if (!before.ok) return before;
  const wanted = from.buses.find((bus) => bus.id === id) as Bus;
  const { kit, bus } = withVoltages(layout.kit, from, wanted);
  const known = withStrangeKeys('Bus', before.value, { ...bus, id: instead });
  const own = saysTheSame(known, before.value) ? before.value : known;
  const refusal = refuseBus(own);
  if (refusal) return refusal;
  const changed = withField(
    kit,
    'buses',
    mapKept(kit.buses, (other) => (other === before.value ? own : other)),
  );
  const misfit = changed.ribbons
    .filter((kind) => kind.bus === instead)
    .map((kind) => refuseRibbonKind(changed, kind))
    .find((refused) => refused !== undefined);
  return misfit ?? ok(withField(layout, 'kit', changed));
}

/** The kind under an id and a name that no other has. */
function beside<K extends ModuleKind | RibbonKind>(kinds: readonly K[], kind: K): K {
  const names = kinds.map(({ name }) => name);
  const ids = new FreshNames(kinds.map(({ id }) => id));
  const id = ids.isBorne(kind.id) ? ids.numbered(kind.id, '-') : kind.id;
  const name = names.includes(kind.name) ? nextInSeries(names, kind.name) : kind.name;
  return id === kind.id && name === kind.name ? kind : { ...kind, id, name };
}

/** The refusal of what came with the kinds. */
const refuseNews = ({ voltages, buses }: Kit, before: Kit) =>
  buses
    .filter((bus) => !before.buses.includes(bus))
    .map(refuseBus)
    .find((refusal) => refusal !== undefined) ??
  (voltages.length > OPEN_LIMITS.voltages.most || buses.length > OPEN_LIMITS.kinds.most
    ? refuse('The kit would hold too many voltages or buses')
    : undefined);

/** Whether a kind says what another says, of the same id or of one that was numbered when it came beside it. */
export function isKnownAs(known: ModuleKind | RibbonKind, kind: ModuleKind | RibbonKind): boolean {
  const renamed = { ...known, name: kind.name };
  return isSameKind(known, kind) || (known.id.startsWith(`${kind.id}-`) && isSameKind(renamed, kind));
}

/** One kind after the other, each in terms of the kit: instead of one, or beside all. */
function takeEach<K extends ModuleKind | RibbonKind>(
  start: Edited<Layout>,
  kinds: readonly K[],
  taken: readonly TakenKind[],
  listOf: (layout: Layout) => readonly K[],
  commands: {
    readonly add: (layout: Layout, kind: K) => Edited<Layout>;
    readonly change: (layout: Layout, kind: K) => Edited<Layout>;
  },
): Edited<Layout> {
  return kinds.reduce<Edited<Layout>>((done, kind) => {
    if (!done.ok) return done;
    const { instead } = taken.find(({ id }) => id === kind.id) ?? {};
    if (instead !== undefined) return commands.change(done.value, { ...kind, id: instead });
    const list = listOf(done.value);
    return list.some((other) => isKnownAs(other, kind)) ? done : commands.add(done.value, beside(list, kind));
  }, start);
}

export function takeKinds(layout: Layout, edit: TakeKinds): Edited<Layout> {
  const strange = refuseStrangers(edit);
  if (strange) return strange;
  const buses = kindsOf(edit.kinds, 'bus').filter(({ instead }) => instead !== undefined);
  const changed = buses.reduce<Edited<Layout>>(
    (done, bus) => (done.ok ? changeBus(done.value, edit.from, bus) : done),
    ok(layout),
  );
  if (!changed.ok) return changed;
  const { kit } = changed.value;
  const merged = mergeKit({ ...kit, modules: [], ribbons: [] }, partOf(edit)).kit;
  const full = refuseNews(merged, kit);
  if (full) return full;
  const withBuses = withField(withField(kit, 'voltages', merged.voltages), 'buses', merged.buses);
  const ready: Edited<Layout> = ok(withField(changed.value, 'kit', withBuses));
  const modules = takeEach(ready, merged.modules, kindsOf(edit.kinds, 'module'), (now) => now.kit.modules, {
    add: (now, kind) => addModuleKind(now, { type: 'add-module-kind', kind }),
    change: (now, kind) => changeModuleKind(now, { type: 'change-module-kind', kind }),
  });
  return takeEach(modules, merged.ribbons, kindsOf(edit.kinds, 'ribbon'), (now) => now.kit.ribbons, {
    add: (now, kind) => addRibbonKind(now, { type: 'add-ribbon-kind', kind }),
    change: (now, kind) => changeRibbonKind(now, { type: 'change-ribbon-kind', kind }),
  });
}
