import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, filterKept, find, withField } from './change.ts';
import { namesOf, refuseForPlaces } from './in-use.ts';

/** Takes a bus out of the kit; refused while a kind or a board has it. */
export interface RemoveBus {
  readonly type: 'remove-bus';
  readonly bus: string;
}

export function removeBus(layout: Layout, edit: RemoveBus): Edited<Layout> {
  const { kit, takes } = layout;
  const found = find(kit.buses, edit.bus, 'bus');
  if (!found.ok) return found;
  const { id, name } = found.value;
  const isOn = ({ bus }: { readonly bus: string }): boolean => bus === id;
  const inUse = refuseForPlaces(name, [
    ...namesOf(kit.modules.filter(({ headers }) => headers.some(isOn))),
    ...namesOf(kit.ribbons.filter(isOn)),
    ...takes.flatMap((take) =>
      take.supplies
        .flatMap(({ boards }) => boards)
        .filter(({ headers }) => headers.some(isOn))
        .map((board) => `${board.name} in ${take.name}`),
    ),
  ]);
  const buses = filterKept(kit.buses, (bus) => bus !== found.value);
  return inUse ?? ok(withField(layout, 'kit', withField(kit, 'buses', buses)));
}
