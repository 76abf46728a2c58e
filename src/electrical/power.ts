import type { PlacedBoard, PlacedModule } from '../geometry/place.ts';
import { GND } from '../layout/defaults.ts';
import { groupBy } from '../layout/group-by.ts';
import type { Voltage } from '../layout/layout.ts';
import { remember } from '../layout/remember.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { gives } from '../wiring/supply-net.ts';
import { UnionFind } from '../wiring/union-find.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { type Defect, isShort } from './defect.ts';
import { Grid } from './grid.ts';
import { lineNumber, type Network, networkOf, type Port } from './network.ts';
import { type Flow, Reduction } from './solve.ts';
import { ohmsPerMetre } from './wire.ts';

/** What flows in one part of a take. The very same object as before where nothing in it has changed. */
export class PartPower {
  readonly part: DerivedTake;
  readonly network: Network;
  readonly #flow: Flow;

  constructor(part: DerivedTake, network: Network, flow: Flow) {
    this.part = part;
    this.network = network;
    this.#flow = flow;
  }

  /** What a line at a module has lost of its supply's, mV with the sign of the change; undefined where it does not arrive. */
  shiftMv(module: PlacedModule, line: string): number | undefined {
    return this.mvAt(this.network.nodeOf(module, lineNumber(this.part.kit, line)));
  }

  /** The same at a node of the network. */
  mvAt(node: number): number | undefined {
    const mv = this.#flow.mv[node];
    return mv === undefined || Number.isNaN(mv) ? undefined : mv;
  }

  /** How much of a voltage is lost between its supply and a module, there and back through ground, mV. */
  lossMv(module: PlacedModule, { id, volts }: Voltage): number | undefined {
    const line = this.shiftMv(module, id);
    const ground = this.shiftMv(module, GND);
    if (line === undefined || ground === undefined) return undefined;
    return volts > 0 ? ground - line : line - ground;
  }

  /** What a meter shows of a voltage at a module against its own ground, V; undefined where it does not arrive. */
  voltsAt(module: PlacedModule, voltage: Voltage): number | undefined {
    const lost = this.lossMv(module, voltage);
    return lost === undefined ? undefined : voltage.volts - (Math.sign(voltage.volts) * lost) / 1000;
  }

  /** Current in a branch of the network, mA; 0 in none. */
  maIn(branch: number): number {
    // What flows nowhere is 0, not −0.
    return branch < 0 ? 0 : (this.#flow.ma[branch] as number) || 0;
  }
}

/** Current that boards, and supplies through them, give on each line: by number in the take, then by line, mA. */
export interface Draws {
  readonly boards: readonly (readonly number[])[];
  readonly supplies: readonly (readonly number[])[];
}

/** What flows in a take. */
export interface Power {
  readonly take: WholeTake;
  readonly parts: readonly PartPower[];
  /**
   * What each gives out, and for negative voltages takes in, mA: positive where modules draw. The very same object
   * as before where nothing has changed.
   */
  readonly draws: Draws;
}

/** One line of a supply, and the node at which it holds it. */
interface Output {
  readonly supply: string;
  readonly line: string;
  readonly node: number;
}

/** Boards and supplies of a take as a network: the leads from one to the other. */
class Feeders {
  readonly #take: DerivedTake;
  readonly #lines: readonly string[];
  readonly #defects: readonly Defect[];
  readonly size: number;

  constructor(take: DerivedTake, defects: readonly Defect[]) {
    this.#take = take;
    this.#lines = take.kit.supplyLines;
    this.#defects = defects;
    this.size = (take.take.supplies.length + take.places.boards.length) * this.#lines.length;
  }

  ofSupply(supply: number, line: number): number {
    return supply * this.#lines.length + line;
  }

  /** The node of a board's line; that of its supply where nothing lies between. */
  ofBoard({ index, supplyIndex, board }: PlacedBoard, line: number): number {
    const isDirect = !board.lead || board.lead.lengthMm === 0;
    if (isDirect && !this.#isOpen(board.id, line)) return this.ofSupply(supplyIndex, line);
    return (this.#take.take.supplies.length + index) * this.#lines.length + line;
  }

  #isOpen(board: string, line: number): boolean {
    return this.#defects.some(
      (defect) => defect.type === 'open-lead' && defect.board === board && defect.line === this.#lines[line],
    );
  }

  /** The outputs by which supplies hold their voltages and ground. */
  get outputs(): Output[] {
    return this.#take.take.supplies.flatMap((supply, index) =>
      this.#lines.flatMap((line, i) =>
        gives(supply, line) && !this.#isDead(supply.id, line)
          ? [{ supply: supply.id, line, node: this.ofSupply(index, i) }]
          : [],
      ),
    );
  }

  get held(): number[] {
    return this.outputs.map(({ node }) => node);
  }

  #isDead(supply: string, line: string): boolean {
    return this.#defects.some(
      (defect) => defect.type === 'open-output' && defect.supply === supply && defect.line === line,
    );
  }

  /** Calls for each wire of each lead. */
  eachWire(call: (from: number, to: number, ohm: number) => void): void {
    const { places, limits } = this.#take;
    for (const placed of places.boards) {
      const { lead, id } = placed.board;
      if (!lead || lead.lengthMm === 0) continue;
      const ohm = (ohmsPerMetre(lead.awg, limits.ambientC) * lead.lengthMm) / 1000;
      for (let line = 0; line < this.#lines.length; line++) {
        if (this.#isOpen(id, line)) continue;
        call(this.ofSupply(placed.supplyIndex, line), this.ofBoard(placed, line), ohm);
      }
    }
  }
}

/** A part's network, and what was last worked out of it. */
class PartState {
  readonly part: DerivedTake;
  readonly network: Network;
  #joinedPorts?: readonly (readonly Port[])[];
  #live: readonly boolean[] = [];
  #reduction?: Reduction;
  #ends: readonly Port[] = [];
  #mvAt: readonly number[] = [];
  #last: PartPower | undefined;

  constructor(part: DerivedTake, defects: readonly Defect[] = []) {
    this.part = part;
    this.network = networkOf(part, defects);
  }

  /** Ports of several boards, or of several lines, that hang together. */
  get joinedPorts(): readonly (readonly Port[])[] {
    const { ports, grid } = this.network;
    this.#joinedPorts ??= [...groupBy(ports, ({ node }) => grid.pieceOf(node)).values()].filter(
      ({ length }) => length > 1,
    );
    return this.#joinedPorts;
  }

  /** Reduces the network to the ports that are live; a draw flows only where both its ends are. */
  reduce(isLive: (port: Port) => boolean): {
    readonly reduction: Reduction;
    readonly ends: readonly Port[];
  } {
    const { grid, ports, loads, driven } = this.network;
    if (this.#reduction && ports.every((port, i) => isLive(port) === this.#live[i]))
      return { reduction: this.#reduction, ends: this.#ends };
    const ends = ports.filter(isLive);
    const pieces = new Set(ends.map(({ node }) => grid.pieceOf(node)));
    const isReached = (node: number): boolean => pieces.has(grid.pieceOf(node));
    const injected = new Array<number>(grid.size).fill(0);
    const inject = (node: number, ma: number): void => {
      injected[node] = (injected[node] as number) + ma;
    };
    for (const { from, to, ma } of loads) {
      if (!isReached(from) || !isReached(to)) continue;
      inject(from, -ma);
      inject(to, ma);
    }
    for (const [node, ma] of driven) if (isReached(node)) inject(node, ma);
    const reduction = new Reduction(
      grid,
      ends.map(({ node }) => node),
      injected,
    );
    this.#live = ports.map(isLive);
    this.#ends = ends;
    this.#reduction = reduction;
    this.#last = undefined;
    return { reduction, ends };
  }

  /** What flows when the live ports are at these potentials. */
  power(reduction: Reduction, mvOf: (port: Port) => number): PartPower {
    if (this.#last && this.#ends.every((port, i) => mvOf(port) === this.#mvAt[i])) return this.#last;
    const mvAt = this.#ends.map(mvOf);
    this.#mvAt = mvAt;
    const power = new PartPower(this.part, this.network, reduction.flow(mvAt));
    this.#last = power;
    return power;
  }
}

/** Kept with the part, which outlives the take it was derived for: what has not changed is not worked out again. */
const stateOf = remember((part: DerivedTake) => new PartState(part));

/** The lines of supplies and boards that hang together by leads and by parts. */
function joinedFeeders(feeders: Feeders, states: readonly PartState[]): UnionFind {
  const nodes = new UnionFind(feeders.size);
  feeders.eachWire((from, to) => nodes.join(from, to));
  for (const { joinedPorts } of states) {
    for (const [first, ...others] of joinedPorts) {
      const at = feeders.ofBoard((first as Port).board, (first as Port).line);
      for (const { board, line } of others) nodes.join(at, feeders.ofBoard(board, line));
    }
  }
  return nodes;
}

/**
 * Whether a board's line hangs on a supply that gives it. Where boards of two supplies are joined, one may give what
 * the other does not have.
 */
function liveness(feeders: Feeders, states: readonly PartState[]): (port: Port) => boolean {
  const nodes = joinedFeeders(feeders, states);
  const live = new Set(feeders.held.map((node) => nodes.find(node)));
  return ({ board, line }) => live.has(nodes.find(feeders.ofBoard(board, line)));
}

interface Reduced {
  readonly state: PartState;
  readonly reduction: Reduction;
  readonly ends: readonly Port[];
}

/**
 * The potential of every board's line. A part weighs on its boards as a current, and, where it joins several of
 * them, as conductances between these; so boards and leads make a small network of their own, and parts know of one
 * another by its potentials alone.
 */
function boardPotentials(feeders: Feeders, reduced: readonly Reduced[]): readonly number[] {
  const grid = new Grid(feeders.size);
  const injected = new Array<number>(feeders.size).fill(0);
  feeders.eachWire((from, to, ohm) => grid.join(from, to, ohm));
  for (const { reduction, ends } of reduced) {
    for (const { board, line, node } of ends) {
      const at = feeders.ofBoard(board, line);
      injected[at] = (injected[at] as number) + reduction.currentAt(node);
    }
    if (reduction.ties.length === 0) continue;
    const portAt = new Map(ends.map((port) => [port.node, port]));
    for (const { a, b, siemens } of reduction.ties) {
      const [from, to] = [portAt.get(a) as Port, portAt.get(b) as Port].map(({ board, line }) =>
        feeders.ofBoard(board, line),
      ) as [number, number];
      if (from !== to) grid.join(from, to, 1 / siemens);
    }
  }
  const { held } = feeders;
  return new Reduction(grid, held, injected).flow(held.map(() => 0)).mv;
}

interface Feed {
  readonly board: PlacedBoard;
  readonly byLine: readonly number[];
}

/** What a part's feed seats carry out of each board: see `Draws`. */
const feedsOf = remember((power: PartPower): readonly Feed[] => {
  const { network, part } = power;
  const { supplyLines, voltages } = part.kit;
  const signs = supplyLines.map((line) => ((voltages.get(line)?.volts ?? -1) > 0 ? -1 : 1));
  const byBoard = new Map<PlacedBoard, number[]>();
  for (const { joint, branches } of network.seats) {
    const { on } = joint;
    if (on.type !== 'header' || on.header.owner.type !== 'board') continue;
    const { owner } = on.header;
    const sums = byBoard.get(owner) ?? supplyLines.map(() => 0);
    byBoard.set(owner, sums);
    branches.forEach((branch, line) => {
      sums[line] = (sums[line] as number) + (signs[line] as number) * power.maIn(branch);
    });
  }
  return [...byBoard].map(([board, byLine]) => ({ board, byLine }));
});

const isSame = (a: readonly (readonly number[])[], b: readonly (readonly number[])[]): boolean =>
  a.length === b.length && a.every((list, i) => list.every((value, k) => value === b[i]?.[k]));

/** The last draws of the same boards. */
const lastDraws = new WeakMap<readonly PlacedBoard[], Draws>();

function drawsOf({ places, take, kit }: DerivedTake, parts: readonly PartPower[]): Draws {
  const none = (): number[] => kit.supplyLines.map(() => 0);
  const boards = places.boards.map(none);
  for (const part of parts) {
    for (const { board, byLine } of feedsOf(part)) {
      const sums = boards[board.index] as number[];
      for (let line = 0; line < sums.length; line++)
        sums[line] = (sums[line] as number) + (byLine[line] as number);
    }
  }
  const supplies = take.supplies.map(none);
  for (const { index, supplyIndex } of places.boards) {
    const sums = supplies[supplyIndex] as number[];
    for (let line = 0; line < sums.length; line++)
      sums[line] = (sums[line] as number) + (boards[index]?.[line] as number);
  }
  const last = lastDraws.get(places.boards);
  if (last && isSame(last.boards, boards) && isSame(last.supplies, supplies)) return last;
  const draws = { boards, supplies };
  lastDraws.set(places.boards, draws);
  return draws;
}

function powerOfStates(take: WholeTake, states: readonly PartState[], defects: readonly Defect[]): Power {
  const feeders = new Feeders(take, defects);
  const [only, ...others] = take.take.supplies;
  // One supply that is whole gives a line to all of its boards or to none.
  const isOne = others.length === 0 && defects.length === 0;
  const given = take.kit.supplyLines.map((line) => only !== undefined && gives(only, line));
  const isLive = isOne ? ({ line }: Port) => given[line] as boolean : liveness(feeders, states);
  const reduced = states.map((state) => ({ state, ...state.reduce(isLive) }));
  const mv = boardPotentials(feeders, reduced);
  const mvAt = ({ board, line }: Port): number => mv[feeders.ofBoard(board, line)] as number;
  const parts = reduced.map(({ state, reduction }) => state.power(reduction, mvAt));
  return { take, parts, draws: drawsOf(take, parts) };
}

/**
 * What flows in a take: worked out once, and for a part only where something in it or at its boards has changed.
 * Near-linear in the seats drawn.
 */
export const powerOf = remember((take: WholeTake): Power => powerOfStates(take, take.parts.map(stateOf), []));

/** An output of a supply that a short has pulled down. */
export type Trip = Pick<Output, 'supply' | 'line'>;

interface Trips {
  readonly outputs: readonly Trip[];
  /** The shorts that hang on them. */
  readonly shorts: ReadonlySet<Defect>;
}

const NO_TRIPS: Trips = { outputs: [], shorts: new Set() };

/**
 * The outputs that a short joins to ground or to another voltage. A supply for such wiring protects itself: it lets
 * the output go, and what it held reads 0. How it does so, and what heats up before, is not modelled.
 */
export function tripsOf(take: WholeTake, defects: readonly Defect[]): Trips {
  if (!defects.some(isShort)) return NO_TRIPS;
  const feeders = new Feeders(take, defects);
  const state = new PartState(take, defects);
  const nodes = joinedFeeders(feeders, [state]);
  const { grid, ports, touches } = state.network;
  const fedBy = new Map(
    ports.map(({ board, line, node }) => [grid.pieceOf(node), feeders.ofBoard(board, line)]),
  );
  const hangsOn = new Map<Defect, number>();
  for (const [short, node] of touches) {
    const at = fedBy.get(grid.pieceOf(node));
    if (at !== undefined) hangsOn.set(short, at);
  }
  for (const short of defects) {
    // On a board that nothing is seated on.
    const board = short.type === 'board-short' && take.places.boardById.get(short.board);
    if (!board || touches.has(short)) continue;
    const [a, b] = short.lines.map((line) => lineNumber(take.kit, line)) as [number, number];
    if (a < 0 || b < 0) continue;
    nodes.join(feeders.ofBoard(board, a), feeders.ofBoard(board, b));
    hangsOn.set(short, feeders.ofBoard(board, a));
  }
  const voltsOf = ({ line }: Output): number => take.kit.voltages.get(line)?.volts ?? 0;
  const shorted = [...groupBy(feeders.outputs, ({ node }) => nodes.find(node))].filter(
    ([, outputs]) => new Set(outputs.map(voltsOf)).size > 1,
  );
  const roots = new Set(shorted.map(([root]) => root));
  return {
    outputs: shorted.flatMap(([, outputs]) =>
      outputs.filter(({ line }) => line !== GND).map(({ supply, line }) => ({ supply, line })),
    ),
    shorts: new Set([...hangsOn].flatMap(([short, at]) => (roots.has(nodes.find(at)) ? [short] : []))),
  };
}

/** What would flow with something broken or bridged. All of the take is worked out anew, as one part. */
export const powerWith = (take: WholeTake, defects: readonly Defect[]): Power =>
  powerOfStates(take, [new PartState(take, defects)], defects);
