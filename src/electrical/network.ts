import type { PlacedBoard, PlacedModule } from '../geometry/place.ts';
import { GND } from '../layout/defaults.ts';
import type { BusFacts, KitIndex } from '../layout/kit-index.ts';
import { remember } from '../layout/remember.ts';
import { Carriers } from '../wiring/carriers.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { connectorsInUse, type Joint, type LaidRibbon, waysOf } from '../wiring/laid-ribbon.ts';
import { type Defect, defectsOf, isShort, isUnplugged, type Short, touching } from './defect.ts';
import { Grid } from './grid.ts';
import { ohmsPerMetre } from './wire.ts';

/** Branches of one thing by line, and the contacts or conductors that each shares its current among. */
interface Branches {
  /** By line, as the kit numbers supply lines; −1 where nothing carries it. */
  readonly branches: readonly number[];
  readonly shares: readonly number[];
}

/** A conducting seat; its branches run out of the ribbon that owns it. */
interface SeatBranches extends Branches {
  readonly joint: Joint;
}

/**
 * Ribbon between two connectors next to each other among those in use; its branches run from the first to the
 * second. What hangs between them or beyond carries nothing of its own.
 */
interface Span extends Branches {
  readonly from: number;
  readonly to: number;
}

interface RibbonBranches {
  readonly ribbon: LaidRibbon;
  readonly spans: readonly Span[];
}

/** The node of a board's line, where the potential comes from. */
export interface Port {
  readonly board: PlacedBoard;
  readonly line: number;
  readonly node: number;
}

/** What a module draws on one voltage, from the line's node into its ground; the other way round for a negative one. */
interface Load {
  /** Node of positive potential, and of negative. */
  readonly from: number;
  readonly to: number;
  readonly ma: number;
}

/** The electrical side of a take, or of one part of it: up to its boards, which are ports. */
export interface Network {
  readonly grid: Grid;
  /** The lines of those boards that some seat joins. */
  readonly ports: readonly Port[];
  readonly loads: readonly Load[];
  readonly seats: readonly SeatBranches[];
  readonly ribbons: readonly RibbonBranches[];
  /** Currents that a short drives, as if from outside, mA by node. */
  readonly driven: ReadonlyMap<number, number>;
  /** One of the two nodes that each short joins, for those that join any here. */
  readonly touches: ReadonlyMap<Short, number>;
  nodeOf(module: PlacedModule, line: number): number;
  /** Nothing where no conductor of the ribbon carries the line, or nothing is joined to the connector. */
  nodeAt(ribbon: LaidRibbon, connector: number, line: string): number | undefined;
  /** Of what a connector sits on. */
  nodeUnder(joint: Joint, line: string): number | undefined;
}

const numbers = remember(
  ({ supplyLines }: KitIndex): ReadonlyMap<string, number> =>
    new Map(supplyLines.map((line, number) => [line, number])),
);

/** The number of a supply line, by which everything here is listed. */
export const lineNumber = (kit: KitIndex, line: string): number => numbers(kit).get(line) ?? -1;

/** Nodes of a ribbon: for each connector that has any, one for each supply line of its bus. */
interface RibbonNodes {
  readonly connectors: readonly number[];
  /** Place of each connector among them. */
  readonly placeOf: readonly number[];
  readonly first: number;
}

class Numbering {
  readonly #lines: number;
  readonly #carriers: Carriers;
  readonly #boards = new Map<PlacedBoard, number>();
  readonly #ribbons = new Map<LaidRibbon, RibbonNodes>();
  #size: number;

  constructor(take: DerivedTake, defects: readonly Defect[]) {
    const { places, wiring, kit } = take;
    this.#lines = kit.supplyLines.length;
    this.#carriers = new Carriers(places.modules);
    this.#size = this.#carriers.count * this.#lines;
    for (const { on, conducts } of wiring.joints) {
      if (!conducts || on.type !== 'header' || on.header.owner.type !== 'board') continue;
      if (this.#boards.has(on.header.owner)) continue;
      this.#boards.set(on.header.owner, this.#size);
      this.#size += this.#lines;
    }
    for (const ribbon of wiring.ribbons) {
      const isWhole = defectsOf(defects, ribbon.id).length === 0;
      const connectors = isWhole ? connectorsInUse(ribbon) : ribbon.uses.map((_, connector) => connector);
      const placeOf: number[] = [];
      connectors.forEach((connector, i) => {
        placeOf[connector] = i;
      });
      this.#ribbons.set(ribbon, { connectors, placeOf, first: this.#size });
      this.#size += connectors.length * ribbon.facts.bus.supplyPins.size;
    }
  }

  get size(): number {
    return this.#size;
  }

  get boards(): Iterable<PlacedBoard> {
    return this.#boards.keys();
  }

  connectorsOf(ribbon: LaidRibbon): readonly number[] {
    return this.#ribbons.get(ribbon)?.connectors ?? [];
  }

  ofBoard(board: PlacedBoard, line: number): number {
    return (this.#boards.get(board) as number) + line;
  }

  ofModule(module: PlacedModule, line: number): number {
    return this.#carriers.ofModule(module) * this.#lines + line;
  }

  hasBoard(board: PlacedBoard): boolean {
    return this.#boards.has(board);
  }

  hasConnector(ribbon: LaidRibbon, connector: number): boolean {
    return this.#ribbons.get(ribbon)?.placeOf[connector] !== undefined;
  }

  /** @param place - of the line among the supply lines of the ribbon's bus */
  ofConnector(ribbon: LaidRibbon, connector: number, place: number): number {
    const { placeOf, first } = this.#ribbons.get(ribbon) as RibbonNodes;
    return first + (placeOf[connector] as number) * ribbon.facts.bus.supplyPins.size + place;
  }

  under({ on }: Joint, line: number, name: string): number {
    if (on.type === 'connector') return this.ofConnector(on.ribbon, on.connector, placeOf(on.ribbon, name));
    const { header } = on;
    return header.owner.type === 'board'
      ? this.ofBoard(header.owner, line)
      : this.#carriers.of(header) * this.#lines + line;
  }
}

const placesOf = remember(
  ({ supplyPins }: BusFacts): ReadonlyMap<string, number> =>
    new Map([...supplyPins.keys()].map((name, place) => [name, place])),
);

const placeOf = ({ facts }: LaidRibbon, line: string): number => placesOf(facts.bus).get(line) as number;

/** Contacts of a line that touch at a seat, out of its pins. */
function contactsAt(joint: Joint, pins: readonly number[], defects: readonly Defect[]): number {
  const { ribbon, connector, on } = joint;
  const ways =
    on.type === 'header'
      ? waysOf(ribbon, connector)
      : Math.min(waysOf(ribbon, connector), waysOf(on.ribbon, on.connector));
  if (defects.length === 0) return pins.reduce((count, pin) => (pin < ways ? count + 1 : count), 0);
  if (isUnplugged(joint, defects)) return 0;
  const within = pins.filter((pin) => pin < ways);
  return touching(within, defects, ribbon.id, connector).length;
}

function unbroken(
  { id }: LaidRibbon,
  pins: readonly number[],
  from: number,
  defects: readonly Defect[],
): number {
  if (defects.length === 0) return pins.length;
  const broken = (pin: number): boolean =>
    defects.some(
      (defect) =>
        defect.type === 'open-conductor' &&
        defect.ribbon === id &&
        defect.from === from &&
        defect.conductor === pin,
    );
  return pins.filter((pin) => !broken(pin)).length;
}

function joinSeat(
  take: DerivedTake,
  joint: Joint,
  nodes: Numbering,
  grid: Grid,
  defects: readonly Defect[],
): SeatBranches {
  const { kit, limits } = take;
  const branches = new Array<number>(kit.supplyLines.length).fill(-1);
  const shares = new Array<number>(kit.supplyLines.length).fill(0);
  let place = 0;
  for (const [name, pins] of joint.ribbon.facts.bus.supplyPins) {
    const contacts = contactsAt(joint, pins, defects);
    const own = nodes.ofConnector(joint.ribbon, joint.connector, place++);
    if (contacts === 0) continue;
    const line = lineNumber(kit, name);
    shares[line] = contacts;
    branches[line] = grid.join(own, nodes.under(joint, line, name), limits.contactMilliohm / 1000 / contacts);
  }
  return { joint, branches, shares };
}

function joinSpans(
  take: DerivedTake,
  ribbon: LaidRibbon,
  nodes: Numbering,
  grid: Grid,
  defects: readonly Defect[],
): Span[] {
  const { kit, limits } = take;
  const { bus, kind, connectors } = ribbon.facts;
  const inUse = nodes.connectorsOf(ribbon);
  const ohms = ohmsPerMetre(kind.awg ?? DEFAULT_AWG, limits.ambientC);
  const spans: Span[] = [];
  for (let i = 1; i < inUse.length; i++) {
    const [from, to] = [inUse[i - 1] as number, inUse[i] as number];
    const metres = ((connectors[to]?.atMm ?? 0) - (connectors[from]?.atMm ?? 0)) / 1000;
    const branches = new Array<number>(kit.supplyLines.length).fill(-1);
    const shares = new Array<number>(kit.supplyLines.length).fill(0);
    let place = 0;
    for (const [name, pins] of bus.supplyPins) {
      const conductors = unbroken(ribbon, pins, from, defects);
      const [a, b] = [nodes.ofConnector(ribbon, from, place), nodes.ofConnector(ribbon, to, place)];
      place++;
      if (conductors === 0) continue;
      const line = lineNumber(kit, name);
      shares[line] = conductors;
      branches[line] = grid.join(a, b, (ohms * metres) / conductors);
    }
    spans.push({ from, to, branches, shares });
  }
  return spans;
}

/** Of a ribbon's conductors where its kind does not say. */
export const DEFAULT_AWG = 28;

function loadsOf({ places, kit }: DerivedTake, nodes: Numbering): Load[] {
  const ground = lineNumber(kit, GND);
  const loads: Load[] = [];
  for (const module of places.modules) {
    for (const [voltage, ma] of module.facts.draws) {
      const line = lineNumber(kit, voltage);
      if (ma === null || line < 0) continue;
      const ends = [nodes.ofModule(module, line), nodes.ofModule(module, ground)] as const;
      const isPositive = (kit.voltages.get(voltage)?.volts ?? 0) > 0;
      const [from, to] = isPositive ? ends : [ends[1], ends[0]];
      loads.push({ from, to, ma });
    }
  }
  return loads;
}

/** The nodes of two lines where they touch; nothing where a line is not there. */
function touchedBy(
  { kit, wiring, places }: DerivedTake,
  short: Short,
  nodes: Numbering,
): readonly [number, number] | undefined {
  const both = (nodeOf: (line: string) => number): [number, number] => [
    nodeOf(short.lines[0]),
    nodeOf(short.lines[1]),
  ];
  if (short.type === 'short') {
    const ribbon = wiring.ribbonById.get(short.ribbon);
    const isThere = ribbon && nodes.hasConnector(ribbon, short.connector);
    if (!isThere || !short.lines.every((line) => ribbon.facts.bus.supplyPins.has(line))) return undefined;
    return both((line) => nodes.ofConnector(ribbon, short.connector, placeOf(ribbon, line)));
  }
  if (!short.lines.every((line) => lineNumber(kit, line) >= 0)) return undefined;
  if (short.type === 'module-short') {
    const module = places.moduleById.get(short.module);
    return module && both((line) => nodes.ofModule(module, lineNumber(kit, line)));
  }
  const board = places.boardById.get(short.board);
  if (!board || !nodes.hasBoard(board)) return undefined;
  return both((line) => nodes.ofBoard(board, lineNumber(kit, line)));
}

/**
 * Bridges two lines. Potentials are told as what is lost of each line's own voltage, so between two lines there is
 * besides the touch their difference, which drives a current through it. Gives one of the two nodes.
 */
function bridge(
  take: DerivedTake,
  short: Short,
  nodes: Numbering,
  grid: Grid,
  driven: Map<number, number>,
): number | undefined {
  const { kit, limits } = take;
  const touched = touchedBy(take, short, nodes);
  if (!touched || touched[0] === touched[1]) return undefined;
  const [a, b] = touched;
  const [voltsA, voltsB] = short.lines.map((line) => kit.voltages.get(line)?.volts ?? 0) as [number, number];
  const branch = grid.join(a, b, (short.milliohm ?? limits.contactMilliohm) / 1000);
  const ma = ((voltsA - voltsB) * 1000) / (grid.ohm[branch] as number);
  driven.set(a, (driven.get(a) ?? 0) - ma);
  driven.set(b, (driven.get(b) ?? 0) + ma);
  return a;
}

/**
 * The network of a take or of a part of it. For each supply line there is a node at every module, at every way past
 * one, at every board and at every ribbon connector in use; headers that a module joins inside are one node. Linear
 * in the seats drawn.
 */
export function networkOf(take: DerivedTake, defects: readonly Defect[] = []): Network {
  const { kit, wiring } = take;
  const nodes = new Numbering(take, defects);
  const grid = new Grid(nodes.size);
  const seats = wiring.joints
    .filter(({ conducts }) => conducts)
    .map((joint) => joinSeat(take, joint, nodes, grid, defects));
  const ribbons = wiring.ribbons.map((ribbon) => ({
    ribbon,
    spans: joinSpans(take, ribbon, nodes, grid, defects),
  }));
  const driven = new Map<number, number>();
  const touches = new Map<Short, number>();
  for (const short of defects.filter(isShort)) {
    const node = bridge(take, short, nodes, grid, driven);
    if (node !== undefined) touches.set(short, node);
  }
  const ports: Port[] = [];
  for (const board of nodes.boards) {
    for (let line = 0; line < kit.supplyLines.length; line++)
      ports.push({ board, line, node: nodes.ofBoard(board, line) });
  }
  return {
    grid,
    ports,
    loads: loadsOf(take, nodes),
    seats,
    ribbons,
    driven,
    touches,
    nodeOf: (module, line) => nodes.ofModule(module, line),
    nodeAt: (ribbon, connector, line) => {
      const place = placesOf(ribbon.facts.bus).get(line);
      const isThere = place !== undefined && nodes.hasConnector(ribbon, connector);
      return isThere ? nodes.ofConnector(ribbon, connector, place) : undefined;
    },
    nodeUnder: (joint, line) =>
      placesOf(joint.ribbon.facts.bus).has(line)
        ? nodes.under(joint, lineNumber(kit, line), line)
        : undefined,
  };
}
