import type { Bus, Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, withField } from './change.ts';
import { refuseBus, withAdded } from './kind-faults.ts';

/** Adds a bus to the kit, under an id that no other bus has (`freshKindId` makes one). */
export interface AddBus {
  readonly type: 'add-bus';
  readonly bus: Bus;
}

export function addBus(layout: Layout, { bus }: AddBus): Edited<Layout> {
  const buses = refuseBus(bus) ?? withAdded(layout.kit.buses, bus, 'bus');
  return buses.ok ? ok(withField(layout, 'kit', withField(layout.kit, 'buses', buses.value))) : buses;
}
