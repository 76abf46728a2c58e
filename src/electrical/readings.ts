import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedBoard, PlacedModule } from '../geometry/place.ts';
import { dropMvOf, GND } from '../layout/defaults.ts';
import { remember } from '../layout/remember.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Defect } from './defect.ts';
import { lineNumber } from './network.ts';
import { type PartPower, type Power, powerWith, type Trip, tripsOf } from './power.ts';

/**
 * right: as much as is allowed to be lost. low: more is lost. wrong: more than there should be, or of the other sign.
 * nothing: the way to it is open. shorted: the supply has let go. no-ground: it arrives, and its return does not.
 */
export type ReadingState = 'right' | 'low' | 'wrong' | 'nothing' | 'shorted' | 'no-ground';

/** What a meter shows on one line. */
export interface Reading {
  readonly line: string;
  /** V that should be there. */
  readonly nominal: number;
  /** V against the supply's ground; nothing where the line hangs on nothing, and a meter shows no steady figure. */
  readonly volts?: number;
  /** V against the ground of the very module or board; nothing where one of both hangs on nothing. */
  readonly ownVolts?: number;
  readonly state: ReadingState;
}

/** A module and what it needs. */
export interface ModuleReadings {
  readonly module: PlacedModule;
  readonly readings: readonly Reading[];
  /** Something that it needs does not arrive as it should. */
  readonly isDead: boolean;
  /** It was so without the defects: the drawing brings it no more. */
  readonly wasDead: boolean;
  /** It works, and some voltage differs by half a millivolt or more from what it would be without the defects. */
  readonly isTouched: boolean;
}

interface BoardReadings {
  readonly board: PlacedBoard;
  readonly readings: readonly Reading[];
}

/** What meters show in a take in which something is broken or bridged. */
export interface Readings {
  readonly take: WholeTake;
  /** Outputs that a short has pulled down. */
  readonly trips: readonly Trip[];
  /** The worst first, then as the document lists them. */
  readonly modules: readonly ModuleReadings[];
  /** Boards that something is seated on, as the document lists them. */
  readonly boards: readonly BoardReadings[];
}

/** Where a probe is held. */
export type Probe = { readonly line: string } & (
  | { readonly module: string }
  | { readonly board: string }
  /** On a connector, or on what it sits on. */
  | { readonly ribbon: string; readonly connector: number; readonly isUnder?: boolean }
);

/** The worst first. */
const STATES: readonly ReadingState[] = ['wrong', 'shorted', 'nothing', 'no-ground', 'low', 'right'];

const TOUCHED_V = 0.0005;

/** What flows, and what would if no supply let go: where the two differ, a short has taken it away. */
class Bench {
  readonly take: WholeTake;
  readonly trips: readonly Trip[];
  readonly #power: PartPower;
  readonly #held: PartPower;

  constructor(take: WholeTake, defects: readonly Defect[]) {
    const partOf = ({ parts }: Power): PartPower => parts[0] as PartPower;
    this.take = take;
    const { outputs, shorts } = tripsOf(take, defects);
    this.trips = outputs;
    if (this.trips.length === 0) {
      this.#power = partOf(powerWith(take, defects));
      this.#held = this.#power;
      return;
    }
    // A short that has made a supply let go joins what is dead; what it leaves alive flows as without it.
    const left = defects.filter((defect) => !shorts.has(defect));
    const open = outputs.map((trip): Defect => ({ type: 'open-output', ...trip }));
    this.#power = partOf(powerWith(take, [...left, ...open]));
    this.#held = partOf(powerWith(take, left));
  }

  /** V at a node against the supply's ground. */
  #voltsAt(power: PartPower, node: number | undefined, line: string): number | undefined {
    const mv = node === undefined ? undefined : power.mvAt(node);
    return mv === undefined ? undefined : (this.take.kit.voltages.get(line)?.volts ?? 0) + mv / 1000;
  }

  /** V at a line, 0 where a supply has let go, and nothing where it hangs on nothing. */
  read(
    nodeIn: (power: PartPower) => number | undefined,
    line: string,
  ): { volts?: number; isShorted: boolean } {
    const volts = this.#voltsAt(this.#power, nodeIn(this.#power), line);
    if (volts !== undefined) return { volts, isShorted: false };
    const held = this.#voltsAt(this.#held, nodeIn(this.#held), line);
    return held === undefined ? { isShorted: false } : { volts: 0, isShorted: true };
  }

  get boards(): readonly PlacedBoard[] {
    const some = new Set(this.#power.network.ports.map(({ board }) => board));
    return [...some].sort((a, b) => a.index - b.index);
  }
}

const wholeBench = remember((take: WholeTake) => new Bench(take, []));

const moduleNode =
  (module: PlacedModule, line: string) =>
  ({ network, part }: PartPower): number =>
    network.nodeOf(module, lineNumber(part.kit, line));

const boardNode =
  (board: PlacedBoard, line: string) =>
  ({ network, part }: PartPower): number | undefined => {
    const number = lineNumber(part.kit, line);
    return network.ports.find((port) => port.board === board && port.line === number)?.node;
  };

function stateOf(own: number, nominal: number, dropMv: number): ReadingState {
  if (own * nominal < 0) return 'wrong';
  const lostMv = (Math.abs(nominal) - Math.abs(own)) * 1000;
  if (exceeds(lostMv, dropMv)) return 'low';
  return exceeds(-lostMv, dropMv) ? 'wrong' : 'right';
}

function readingOf(
  bench: Bench,
  line: string,
  nodeOf: (line: string) => (power: PartPower) => number | undefined,
): Reading {
  const { volts, isShorted } = bench.read(nodeOf(line), line);
  if (line === GND)
    return {
      line,
      nominal: 0,
      ...(volts !== undefined && { volts, ownVolts: 0 }),
      state: volts === undefined ? 'nothing' : 'right',
    };
  const voltage = bench.take.kit.voltages.get(line);
  const nominal = voltage?.volts ?? 0;
  if (volts === undefined) return { line, nominal, state: 'nothing' };
  if (isShorted) return { line, nominal, volts, ownVolts: 0, state: 'shorted' };
  const ground = bench.read(nodeOf(GND), GND).volts;
  if (ground === undefined) return { line, nominal, volts, state: 'no-ground' };
  const ownVolts = volts - ground;
  const state = voltage ? stateOf(ownVolts, nominal, dropMvOf(voltage)) : 'right';
  return { line, nominal, volts, ownVolts, state };
}

const isBad = ({ state }: Reading): boolean => state !== 'right';

const differs = (a: Reading, b: Reading | undefined): boolean =>
  a.ownVolts !== undefined &&
  b?.ownVolts !== undefined &&
  Math.abs(a.ownVolts - b.ownVolts) + Math.abs((a.volts ?? 0) - (b.volts ?? 0)) >= TOUCHED_V;

/** Place of a module's worst reading among the states; modules that were so before come after the others that are dead. */
function badness({ readings, isDead, wasDead, isTouched }: ModuleReadings): number {
  const worst = Math.min(...readings.map(({ state }) => STATES.indexOf(state)), STATES.length);
  if (isDead) return worst + (wasDead ? STATES.length : 0);
  return (isTouched ? 2 : 3) * STATES.length;
}

const readAt = (bench: Bench, module: PlacedModule): Reading[] =>
  module.facts.needs.map((line) => readingOf(bench, line, (each) => moduleNode(module, each)));

/** What meters show with something broken or bridged. The take is worked out anew, as one part: near-linear. */
export function readingsWith(take: WholeTake, defects: readonly Defect[]): Readings {
  const bench = new Bench(take, defects);
  const whole = wholeBench(take);
  const modules = take.places.modules
    .map((module): ModuleReadings => {
      const readings = readAt(bench, module);
      const before = readAt(whole, module);
      const isDead = readings.some(isBad);
      const isTouched = !isDead && readings.some((reading, i) => differs(reading, before[i]));
      return { module, readings, isDead, wasDead: before.some(isBad), isTouched };
    })
    .filter(({ readings }) => readings.length > 0);
  return {
    take,
    trips: bench.trips,
    modules: modules.toSorted((a, b) => badness(a) - badness(b) || a.module.index - b.module.index),
    boards: bench.boards.map((board) => ({
      board,
      readings: linesOnBoard(board).map((line) => readingOf(bench, line, (each) => boardNode(board, each))),
    })),
  };
}

/** Supply lines that a board's headers carry and its supply gives, the voltages first. */
function linesOnBoard({ headers, supply }: PlacedBoard): string[] {
  const carried = new Set(headers.flatMap(({ bus }) => [...bus.supplyPins.keys()]));
  const voltages = Object.entries(supply.ratings).flatMap(([line, ma]) =>
    ma > 0 && carried.has(line) ? [line] : [],
  );
  return carried.has(GND) ? [...voltages, GND] : voltages;
}

/** V against the supply's ground under each of some probes; nothing where the probe touches what hangs on nothing. */
export function voltsAt(
  take: WholeTake,
  defects: readonly Defect[],
  probes: readonly Probe[],
): readonly (number | undefined)[] {
  const bench = new Bench(take, defects);
  return probes.map((probe) => {
    const nodeIn = nodeUnder(take, probe);
    return nodeIn && bench.read(nodeIn, probe.line).volts;
  });
}

function nodeUnder(
  { places, wiring }: WholeTake,
  probe: Probe,
): ((power: PartPower) => number | undefined) | undefined {
  const { line } = probe;
  if ('module' in probe) {
    const module = places.moduleById.get(probe.module);
    return module && moduleNode(module, line);
  }
  if ('board' in probe) {
    const board = places.boardById.get(probe.board);
    return board && boardNode(board, line);
  }
  const ribbon = wiring.ribbonById.get(probe.ribbon);
  if (!probe.isUnder) return ribbon && (({ network }) => network.nodeAt(ribbon, probe.connector, line));
  const joint = ribbon?.uses[probe.connector]?.find((use) => use.ribbon === ribbon && use.conducts);
  return joint && (({ network }) => network.nodeUnder(joint, line));
}
