import type { Layout, ModuleKind, Take } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, mapKept, withField } from './change.ts';
import { dropSeats } from './drop-seats.ts';
import { refuseModuleKind } from './kind-faults.ts';
import { replaced } from './replaced.ts';

/**
 * Makes a kind of module another one, and with it every module of it in every take. The kind is told by its id;
 * everything that this program knows of it is as given, what it does not know stays. Connectors on headers that are
 * no longer there come off, as when a module is taken away.
 */
export interface ChangeModuleKind {
  readonly type: 'change-module-kind';
  readonly kind: ModuleKind;
}

function withoutLostSeats(take: Take, { id, headers }: ModuleKind): Take {
  const present = new Set(headers.map((header) => header.id));
  const changed = new Set(take.modules.filter(({ kind }) => kind === id).map((module) => module.id));
  const ribbons = dropSeats(
    take.ribbons,
    ({ on }) => 'module' in on && changed.has(on.module) && !present.has(on.header),
  );
  return withField(take, 'ribbons', ribbons);
}

export function changeModuleKind(layout: Layout, edit: ChangeModuleKind): Edited<Layout> {
  const { kit, takes } = layout;
  const found = find(kit.modules, edit.kind.id, 'kind of module');
  if (!found.ok) return found;
  const refusal = refuseModuleKind(kit, edit.kind);
  if (refusal) return refusal;

  const kind = replaced('ModuleKind', found.value, edit.kind, 'headers', 'Header');
  const modules = mapKept(kit.modules, (other) => (other === found.value ? kind : other));
  const changed = withField(layout, 'kit', withField(kit, 'modules', modules));
  const refitted = mapKept(takes, (take) => withoutLostSeats(take, kind));
  return ok(withField(changed, 'takes', refitted));
}
