import type { Bus, Layout, RibbonKind } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, mapKept, withField } from './change.ts';
import { refuseBus } from './kind-faults.ts';
import { replacedAlone } from './replaced.ts';

/**
 * Makes a bus another one, and with it every header and ribbon of it. The bus is told by its id; everything that
 * this program knows of it is as given, what it does not know stays. A connector with more contacts than there are
 * conductors left has one on each of them.
 */
export interface ChangeBus {
  readonly type: 'change-bus';
  readonly bus: Bus;
}

function narrowed(kind: RibbonKind, { id, pinout }: Bus): RibbonKind {
  if (kind.bus !== id) return kind;
  const connectors = mapKept(kind.connectors, (connector) =>
    withField(
      connector,
      'ways',
      connector.ways !== undefined && connector.ways > pinout.length ? undefined : connector.ways,
    ),
  );
  return withField(kind, 'connectors', connectors);
}

export function changeBus(layout: Layout, edit: ChangeBus): Edited<Layout> {
  const { kit } = layout;
  const found = find(kit.buses, edit.bus.id, 'bus');
  if (!found.ok) return found;
  const refusal = refuseBus(edit.bus);
  if (refusal) return refusal;
  const bus = replacedAlone('Bus', found.value, edit.bus);
  const buses = mapKept(kit.buses, (other) => (other === found.value ? bus : other));
  const ribbons = mapKept(kit.ribbons, (kind) => narrowed(kind, bus));
  return ok(withField(layout, 'kit', withField(withField(kit, 'buses', buses), 'ribbons', ribbons)));
}
