import { renamedInKey } from '../layout/key-part.ts';
import type {
  Acceptance,
  Board,
  Bus,
  Layout,
  MeterReading,
  ModuleKind,
  Supply,
  Take,
  Voltage,
} from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, mapKept, refuse, withField } from './change.ts';
import { withBuilt } from './change-built.ts';
import { refuseVoltage } from './kind-faults.ts';
import { replacedAlone } from './replaced.ts';

/**
 * Makes a voltage another one. Where its id changes it changes everywhere: on pins, in what modules draw, in what
 * supplies give, in what boards take, in what a meter showed, and in the notes that were put away.
 */
export interface ChangeVoltage {
  readonly type: 'change-voltage';
  /** As it is called so far. */
  readonly id: string;
  readonly voltage: Voltage;
}

/** From one id to another. */
interface Renaming {
  readonly from: string;
  readonly to: string;
}

/** Figures by voltage, in the order in which they were. */
function renamedKeys<T>(figures: Readonly<Record<string, T>>, { from, to }: Renaming) {
  if (!Object.hasOwn(figures, from)) return figures;
  return Object.fromEntries(Object.entries(figures).map(([id, value]) => [id === from ? to : id, value]));
}

const renamedBus = (bus: Bus, { from, to }: Renaming): Bus =>
  withField(
    bus,
    'pinout',
    mapKept(bus.pinout, (line) => (line === from ? to : line)),
  );

const renamedKind = (kind: ModuleKind, renaming: Renaming): ModuleKind =>
  withField(kind, 'draws', renamedKeys(kind.draws, renaming));

const renamedBoard = (board: Board, renaming: Renaming): Board =>
  board.limits ? withField(board, 'limits', renamedKeys(board.limits, renaming)) : board;

function renamedSupply(supply: Supply, renaming: Renaming): Supply {
  const boards = mapKept(supply.boards, (board) => renamedBoard(board, renaming));
  const rated = withField(supply, 'ratings', renamedKeys(supply.ratings, renaming));
  return withField(rated, 'boards', boards);
}

const renamedAcceptance = (acceptance: Acceptance, { from, to }: Renaming): Acceptance =>
  withField(acceptance, 'key', renamedInKey(acceptance.key, from, to));

const renamedReading = (reading: MeterReading, { from, to }: Renaming): MeterReading =>
  withField(reading, 'line', reading.line === from ? to : reading.line);

function renamedTake(take: Take, renaming: Renaming): Take {
  const supplies = mapKept(take.supplies, (supply) => renamedSupply(supply, renaming));
  const accepted =
    take.accepted && mapKept(take.accepted, (acceptance) => renamedAcceptance(acceptance, renaming));
  const { readings } = take.built ?? {};
  const read = readings && mapKept(readings, (reading) => renamedReading(reading, renaming));
  return withBuilt(withField(withField(take, 'supplies', supplies), 'accepted', accepted), 'readings', read);
}

function renamed(layout: Layout, renaming: Renaming): Layout {
  const { kit, takes } = layout;
  const buses = mapKept(kit.buses, (bus) => renamedBus(bus, renaming));
  const modules = mapKept(kit.modules, (kind) => renamedKind(kind, renaming));
  const renamedKit = withField(withField(kit, 'buses', buses), 'modules', modules);
  return withField(
    withField(layout, 'kit', renamedKit),
    'takes',
    mapKept(takes, (take) => renamedTake(take, renaming)),
  );
}

export function changeVoltage(layout: Layout, edit: ChangeVoltage): Edited<Layout> {
  const { kit } = layout;
  const found = find(kit.voltages, edit.id, 'voltage');
  if (!found.ok) return found;
  const refusal = refuseVoltage(edit.voltage);
  if (refusal) return refusal;
  const { id: to } = edit.voltage;
  if (to !== edit.id) {
    if (kit.voltages.some(({ id }) => id === to)) return refuse(`There is already a voltage "${to}"`);
    const signal = kit.buses.find(({ pinout }) => pinout.includes(to));
    // Pins of both names would be one line, and no later renaming could part them.
    if (signal) return refuse(`"${to}" is a signal of ${signal.name}`);
  }
  const voltage = replacedAlone('Voltage', found.value, edit.voltage);
  const voltages = mapKept(kit.voltages, (other) => (other === found.value ? voltage : other));
  const changed = withField(layout, 'kit', withField(kit, 'voltages', voltages));
  return ok(to === edit.id ? changed : renamed(changed, { from: edit.id, to }));
}
