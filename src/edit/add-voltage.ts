import type { Layout, Voltage } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { type Edited, refuse, withField } from './change.ts';
import { refuseVoltage } from './kind-faults.ts';

/**
 * Adds a voltage to the kit. A line of this name that was a signal before is a supply line from then on: whoever
 * named pins first and the voltage later means just that.
 */
export interface AddVoltage {
  readonly type: 'add-voltage';
  readonly voltage: Voltage;
}

export function addVoltage(layout: Layout, { voltage }: AddVoltage): Edited<Layout> {
  const { kit } = layout;
  const { most } = OPEN_LIMITS.voltages;
  const refusal = refuseVoltage(voltage);
  if (refusal) return refusal;
  if (kit.voltages.some(({ id }) => id === voltage.id))
    return refuse(`There is already a voltage "${voltage.id}"`);
  if (kit.voltages.length >= most) return refuse(`A kit holds at most ${most} voltages`);
  return ok(withField(layout, 'kit', withField(kit, 'voltages', [...kit.voltages, voltage])));
}
