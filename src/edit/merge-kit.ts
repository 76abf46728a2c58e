import { GND } from '../layout/defaults.ts';
import type { Bus, Kit, ModuleKind, RibbonKind, Voltage } from '../layout/layout.ts';
import { saysTheSame } from '../layout/says-the-same.ts';
import { FreshNames, idsOf } from './fresh.ts';

/** A kit that holds what another brought, and what each of its kinds is called there. */
interface MergedKit {
  /** The very kit where it had everything. */
  readonly kit: Kit;
  readonly busOf: ReadonlyMap<string, string>;
  readonly moduleKindOf: ReadonlyMap<string, string>;
  readonly ribbonKindOf: ReadonlyMap<string, string>;
}

interface Identified {
  readonly id: string;
}

type IdOf = Map<string, string>;

/** What somebody owns, paid and wrote of a kind does not make it another one. */
export const MY_OWN = ['id', 'owned', 'price', 'notes', 'color'] as const;

/** Whether two kinds of one kit are the same thing under whatever id. */
export function isSameKind(a: Identified, b: Identified): boolean {
  const [one, other] = [a, b].map((kind) => {
    const rest: Record<string, unknown> = { ...kind };
    for (const key of MY_OWN) delete rest[key];
    return rest;
  });
  return saysTheSame(one, other);
}

/** A bus is what lies on its pins, and how many it bears; its name is a label. */
export const isSameBus = (a: Bus, b: Bus): boolean =>
  a.membersPerHost === b.membersPerHost && saysTheSame(a.pinout, b.pinout);

/** How much of a voltage may be lost on the way is a setting of the layout that it is used in. */
const isSameVoltage = (a: Voltage, b: Voltage): boolean => a.volts === b.volts;

/**
 * The things of a list and what was brought that it lacked. What bears the id of something else gets a numbered
 * one, and is known by it when it is brought again.
 */
function takeIn<T extends Identified>(
  list: readonly T[],
  brought: readonly T[],
  isSame: (a: T, b: T) => boolean,
  { between = '-', alsoTaken = [] }: { between?: string; alsoTaken?: readonly string[] } = {},
): { readonly list: readonly T[]; readonly idOf: IdOf } {
  const known = new Map(list.map((thing) => [thing.id, thing]));
  const names = new FreshNames([...known.keys(), ...alsoTaken]);
  const idOf: IdOf = new Map();
  const added: T[] = [];
  for (const thing of brought) {
    const { id } = thing;
    const start = id + between;
    const same = [known.get(id), ...list.filter((other) => other.id.startsWith(start))].find(
      (other) => other && isSame(other, thing),
    );
    if (same) idOf.set(id, same.id);
    else {
      const own = names.isBorne(id) ? names.numbered(id, between) : names.bear(id);
      idOf.set(id, own);
      added.push(own === id ? thing : { ...thing, id: own });
    }
  }
  return { list: added.length > 0 ? [...list, ...added] : list, idOf };
}

const linesOf = (buses: readonly Bus[]): string[] => buses.flatMap(({ pinout }) => pinout);

const get = (idOf: IdOf, id: string): string => idOf.get(id) ?? id;

/** Draws by what their voltages are called; the very record where none is called otherwise. */
function renamedDraws(draws: ModuleKind['draws'], idOf: IdOf): ModuleKind['draws'] {
  const isAlike = Object.keys(draws).every((id) => get(idOf, id) === id);
  return isAlike ? draws : Object.fromEntries(Object.entries(draws).map(([id, ma]) => [get(idOf, id), ma]));
}

/**
 * Brings into a kit what another consists of. A thing that the kit has under the same id stays as the kit has it;
 * one that only bears the id of something else is added under a fresh id, and so are lines: what is a voltage in
 * one kit and a signal in the other never becomes the same.
 */
export function mergeKit(kit: Kit, brought: Kit): MergedKit {
  const broughtVoltages = new Set(idsOf(brought.voltages));
  const signals = new Set(linesOf(brought.buses).filter((line) => line !== '' && line !== GND));
  for (const id of broughtVoltages) signals.delete(id);
  const voltages = takeIn(kit.voltages, brought.voltages, isSameVoltage, {
    between: ' #',
    alsoTaken: [...linesOf(kit.buses), ...signals, GND],
  });

  const lineOf: IdOf = new Map(voltages.idOf);
  const isVoltage = new Set(idsOf(voltages.list));
  const names = new FreshNames([...isVoltage, ...signals, ...linesOf(kit.buses)]);
  for (const signal of signals) if (isVoltage.has(signal)) lineOf.set(signal, names.numbered(signal, ' #'));

  const buses = takeIn(
    kit.buses,
    brought.buses.map((bus) => ({ ...bus, pinout: bus.pinout.map((line) => get(lineOf, line)) })),
    isSameBus,
  );
  const modules = takeIn<ModuleKind>(
    kit.modules,
    brought.modules.map((kind) => ({
      ...kind,
      draws: renamedDraws(kind.draws, voltages.idOf),
      headers: kind.headers.map((header) => ({ ...header, bus: get(buses.idOf, header.bus) })),
    })),
    isSameKind,
  );
  const ribbons = takeIn<RibbonKind>(
    kit.ribbons,
    brought.ribbons.map((kind) => ({ ...kind, bus: get(buses.idOf, kind.bus) })),
    isSameKind,
  );

  const lists = {
    voltages: voltages.list,
    buses: buses.list,
    modules: modules.list,
    ribbons: ribbons.list,
  };
  const isComplete = (Object.keys(lists) as (keyof typeof lists)[]).every((key) => lists[key] === kit[key]);
  return {
    kit: isComplete ? kit : { ...kit, ...lists },
    busOf: buses.idOf,
    moduleKindOf: modules.idOf,
    ribbonKindOf: ribbons.idOf,
  };
}
