import type { Layout, Module, Ribbon, Take } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, refuse, withField } from './change.ts';
import { freshTakeId, nextInSeries } from './fresh.ts';

/**
 * Adds a take beside another one, in the same case, with places and ribbons of its own; its id is what `freshTakeId`
 * says beforehand. Refused where the kit has changed since they were thought of.
 */
export interface RewireTake {
  readonly type: 'rewire-take';
  readonly from: string;
  /** Absent: the name of the other, "proposed". */
  readonly name?: string;
  readonly modules: readonly Module[];
  readonly ribbons: readonly Ribbon[];
}

export function rewireTake(layout: Layout, edit: RewireTake): Edited<Layout> {
  const found = find(layout.takes, edit.from, 'take');
  if (!found.ok) return found;
  const { rows, modules, supplies } = found.value;
  const { kit } = layout;
  const boards = supplies.flatMap((supply) => supply.boards);
  const has = (list: readonly { readonly id: string }[], id: string): boolean =>
    list.some((each) => each.id === id);
  const fits =
    edit.modules.length === modules.length &&
    edit.modules.every(({ id, kind, row }) => has(modules, id) && has(kit.modules, kind) && has(rows, row)) &&
    edit.ribbons.every(
      ({ kind, seats }) =>
        has(kit.ribbons, kind) &&
        seats.every(({ on }) =>
          'module' in on
            ? has(edit.modules, on.module)
            : 'board' in on
              ? has(boards, on.board)
              : has(edit.ribbons, on.ribbon),
        ),
    );
  if (!fits) return refuse(`${found.value.name} has changed meanwhile`);
  const names = layout.takes.map(({ name }) => name);
  const name = edit.name?.trim() || nextInSeries(names, `${found.value.name}, proposed`);
  const { built: _, accepted: __, ...rest } = found.value;
  const take: Take = { ...rest, id: freshTakeId(layout), name, modules: edit.modules, ribbons: edit.ribbons };
  return ok(withField(layout, 'takes', [...layout.takes, take]));
}
