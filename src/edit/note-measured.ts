import type { Layout, MeterReading } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, mapKept, refuse, withField } from './change.ts';
import { editRecord, type Mark, markOf, refuseMark } from './change-built.ts';

/** Notes what a meter showed at a module or a supply on one voltage; null takes it away. */
export interface NoteMeasured extends Mark {
  readonly type: 'note-measured';
  readonly take: string;
  readonly on: MeterReading['on'];
  readonly id: string;
  readonly line: string;
  readonly quantity: 'ma' | 'volts';
  readonly value: number | null;
}

const isUsable = (quantity: NoteMeasured['quantity'], value: number): boolean =>
  Math.abs(value) <= OPEN_LIMITS.size.most && (quantity === 'volts' || value >= 0);

export function noteMeasured(layout: Layout, edit: NoteMeasured): Edited<Layout> {
  const { on, id, line, quantity, value } = edit;
  if (value !== null && !isUsable(quantity, value)) {
    return refuse(
      quantity === 'ma' ? 'A current must be a number of mA, not negative' : 'A voltage must be a number',
    );
  }
  const refusal = refuseMark(edit);
  if (refusal) return refusal;
  return editRecord(layout, edit.take, 'readings', (before, take) => {
    const owner = on === 'module' ? find(take.modules, id, 'module') : find(take.supplies, id, 'supply');
    if (!owner.ok) return owner;
    const voltage = find(layout.kit.voltages, line, 'voltage');
    if (!voltage.ok) return voltage;
    const isIt = (one: MeterReading): boolean => one.on === on && one.id === id && one.line === line;
    const figure = value === null ? undefined : value + 0;
    if (!before.some(isIt)) {
      return ok(
        figure === undefined ? before : [...before, { on, id, line, [quantity]: figure, ...markOf(edit) }],
      );
    }
    const set = (one: MeterReading): MeterReading => {
      if (!isIt(one) || one[quantity] === figure) return one;
      return { ...withField(one, quantity, figure), ...markOf(edit) };
    };
    const noted = mapKept(before, set);
    const says = ({ ma, volts }: MeterReading): boolean => ma !== undefined || volts !== undefined;
    return ok(
      noted.every((one) => says(one) || !isIt(one)) ? noted : noted.filter((one) => says(one) || !isIt(one)),
    );
  });
}
