import type { Kit, Module, Ribbon, SeatedOn, Take } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { type Edited, kindOf, refuse, refuseIfNoPlace, tidyHp, withField } from './change.ts';
import type { Group, Room } from './find-room.ts';
import { FreshNames, idsOf, labelsOf } from './fresh.ts';

/** Modules with the rows that they stand in, and ribbons that hang on nothing else; of kinds that the kit has. */
interface GroupWithRibbons extends Group {
  readonly ribbons: readonly Ribbon[];
}

type IdOf = ReadonlyMap<string, string>;

interface Copied<T> {
  readonly list: readonly T[];
  /** Id of an original → id of its copy. */
  readonly idOf: IdOf;
}

/** Its own id where nobody bears it, else one made from its kind. */
const idFor = (ids: FreshNames, { id, kind }: Module | Ribbon): string =>
  ids.isBorne(id) ? ids.numbered(kind, '-') : ids.bear(id);

function copyModules(kit: Kit, take: Take, { rows, modules }: Group, room: Room): Copied<Module> {
  const nameOf = (module: Module): string => module.label || kindOf(kit, module).name;
  const names = new FreshNames(take.modules.map(nameOf));
  const ids = new FreshNames(idsOf(take.modules));
  const rowOf = new Map(rows.map(({ id }, row) => [id, take.rows[room.row + row]?.id]));

  const labelFor = (original: Module): string | undefined => {
    const name = nameOf(original);
    if (names.isBorne(name)) return names.copyOf(name, kindOf(kit, original).name);
    names.bear(name);
    return original.label;
  };
  const idOf = new Map<string, string>();
  const copies = modules.map((original): Module => {
    const id = idFor(ids, original);
    idOf.set(original.id, id);
    const copy = {
      ...withField(original, 'pinned', undefined),
      id,
      row: rowOf.get(original.row) ?? (take.rows.at(-1)?.id as string),
      atHp: tidyHp(original.atHp + room.hp),
    };
    return withField(copy, 'label', labelFor(original));
  });
  return { list: [...take.modules, ...copies], idOf };
}

/** A mark goes on in its series, any other label as names do. */
function labelOfCopy(labels: FreshNames, label: string): string {
  if (!labels.isBorne(label)) return labels.bear(label);
  const [, letters] = /^([A-Z]+)\d+$/.exec(label) ?? [];
  return letters ? labels.numbered(letters, '') : labels.copyOf(label);
}

function copyRibbons(take: Take, originals: readonly Ribbon[], moduleIdOf: IdOf): readonly Ribbon[] {
  if (originals.length === 0) return take.ribbons;
  const ids = new FreshNames(idsOf(take.ribbons));
  const labels = new FreshNames(labelsOf(take.ribbons));
  const idOf = new Map(originals.map((original) => [original.id, idFor(ids, original)]));

  const onCopy = (on: SeatedOn): SeatedOn => {
    if ('module' in on) return { ...on, module: moduleIdOf.get(on.module) ?? on.module };
    if ('ribbon' in on) return { ...on, ribbon: idOf.get(on.ribbon) ?? on.ribbon };
    return on;
  };
  const copies = originals.map((original): Ribbon => {
    const copy = {
      ...withField(original, 'locked', undefined),
      id: idOf.get(original.id) as string,
      seats: original.seats.map((seat) => ({ ...seat, on: onCopy(seat.on) })),
    };
    return original.label ? { ...copy, label: labelOfCopy(labels, original.label) } : copy;
  });
  return [...take.ribbons, ...copies];
}

/** The refusal of more than a file may hold; none where it is not. */
const refuseIfFull = (take: Take): ReturnType<typeof refuse> | undefined => {
  for (const list of ['modules', 'ribbons'] as const) {
    const { most } = OPEN_LIMITS[list];
    if (take[list].length > most) return refuse(`The take would hold more than ${most} ${list}`);
  }
  return undefined;
};

/**
 * The take with copies of a group, its rows from a row of the take on; rows that the take has not got are its last
 * one. Copies are neither pinned nor locked, and keep ids and labels that nobody bears.
 */
export function addCopies(kit: Kit, take: Take, group: GroupWithRibbons, room: Room): Edited<Take> {
  const { list: modules, idOf } = copyModules(kit, take, group, room);
  const ribbons = copyRibbons(take, group.ribbons, idOf);
  const after = withField(withField(take, 'modules', modules), 'ribbons', ribbons);
  return refuseIfFull(after) ?? refuseIfNoPlace(modules) ?? ok(after);
}
