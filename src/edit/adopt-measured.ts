import type { Layout, ModuleKind, Take } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, mapKept, refuse, withField } from './change.ts';

/** Makes the currents that were measured at modules of a kind the kind's own, and says of them that they were. */
export interface AdoptMeasured {
  readonly type: 'adopt-measured';
  readonly take: string;
  readonly kind: string;
}

/** A current of a kind that a measurement gives another figure. */
interface Adopted {
  readonly line: string;
  /** null: it was unknown; absent: it was not said to draw any. */
  readonly fromMa?: number | null;
  readonly toMa: number;
}

export interface Adoption {
  readonly draws: readonly Adopted[];
  /** Every voltage that the kind draws was measured, so that all of it rests on measurements. */
  readonly isComplete: boolean;
}

/** What the readings of a take say that a kind draws: of several modules of it the one that draws most counts. */
export function adoptionOf({ modules, built }: Take, { id, draws }: ModuleKind): Adoption {
  const own = new Set(modules.filter(({ kind }) => kind === id).map((module) => module.id));
  const most = new Map<string, number>();
  for (const { on, id: module, line, ma } of built?.readings ?? []) {
    if (on !== 'module' || ma === undefined || !own.has(module)) continue;
    most.set(line, Math.max(ma, most.get(line) ?? 0));
  }
  const changed = [...most].flatMap(([line, toMa]): Adopted[] => {
    const fromMa = Object.hasOwn(draws, line) ? draws[line] : undefined;
    // A voltage that it does not draw, and on which nothing flows.
    if (fromMa === undefined && toMa === 0) return [];
    return [{ line, toMa, ...(fromMa !== undefined && { fromMa }) }];
  });
  return { draws: changed, isComplete: Object.keys(draws).every((line) => most.has(line)) };
}

export function adoptMeasured(layout: Layout, edit: AdoptMeasured): Edited<Layout> {
  const { kit } = layout;
  const take = find(layout.takes, edit.take, 'take');
  if (!take.ok) return take;
  const kind = find(kit.modules, edit.kind, 'kind of module');
  if (!kind.ok) return kind;
  const { draws, isComplete } = adoptionOf(take.value, kind.value);
  if (draws.length === 0) return refuse(`No current of ${kind.value.name} was measured`);
  const unknown = draws.find(({ line }) => !kit.voltages.some(({ id }) => id === line));
  if (unknown) return refuse(`There is no voltage "${unknown.line}"`);
  const isNews = draws.some(({ fromMa, toMa }) => fromMa !== toMa);
  const measured = isNews
    ? { ...kind.value.draws, ...Object.fromEntries(draws.map(({ line, toMa }) => [line, toMa])) }
    : kind.value.draws;
  const known = isComplete ? 'measured' : kind.value.known;
  const adopted = withField(withField(kind.value, 'draws', measured), 'known', known);
  const modules = mapKept(kit.modules, (other) => (other === kind.value ? adopted : other));
  return ok(withField(layout, 'kit', withField(kit, 'modules', modules)));
}
