import { GND } from './defaults.ts';
import { didYouMean, type Issue, pathOf, quote } from './issue.ts';
import type { Axis, Board, Kit, Layout, PinEnd, Ribbon, RibbonKind, Supply, Take } from './layout.ts';
import { nearest } from './nearest.ts';

type Keys = readonly (string | number)[];
type Report = (keys: Keys, message: string) => void;

interface Identified {
  readonly id: string;
}

const PIN_ENDS: Readonly<Record<Axis, readonly PinEnd[]>> = {
  vertical: ['down', 'up'],
  horizontal: ['left', 'right'],
};

/** The things of a list by id; reports ids that occur twice. */
function byId<T extends Identified>(
  things: readonly T[],
  keys: Keys,
  noun: string,
  report: Report,
): Map<string, T> {
  const found = new Map<string, T>();
  things.forEach((thing, i) => {
    if (found.has(thing.id)) report([...keys, i, 'id'], `a second ${noun} ${quote(thing.id)}`);
    else found.set(thing.id, thing);
  });
  return found;
}

/** The thing that a reference names; reports a reference to nothing. */
function follow<T>(
  id: string,
  things: ReadonlyMap<string, T>,
  keys: Keys,
  noun: string,
  report: Report,
): T | undefined {
  const found = things.get(id);
  if (found === undefined) report(keys, `no ${noun} ${quote(id)}${didYouMean(nearest(id, things.keys()))}`);
  return found;
}

function judgePin1(
  { axis = 'vertical', pin1 }: { axis?: Axis; pin1?: string },
  keys: Keys,
  report: Report,
): void {
  const ends = PIN_ENDS[axis];
  if (pin1 === undefined || (ends as readonly string[]).includes(pin1)) return;
  report([...keys, 'pin1'], `${quote(pin1)} does not suit a ${axis} header; it is ${ends.join(' or ')}`);
}

function judgeVoltageKeys(
  record: object,
  voltages: ReadonlyMap<string, unknown>,
  keys: Keys,
  report: Report,
): void {
  for (const voltage of Object.keys(record)) follow(voltage, voltages, [...keys, voltage], 'voltage', report);
}

interface Index {
  readonly voltages: ReadonlyMap<string, Identified>;
  readonly buses: ReadonlyMap<string, Kit['buses'][number]>;
  readonly modules: ReadonlyMap<string, Kit['modules'][number]>;
  readonly headers: ReadonlyMap<string, ReadonlyMap<string, unknown>>;
  readonly ribbons: ReadonlyMap<string, RibbonKind>;
}

function judgeRibbonKind(kind: RibbonKind, buses: Index['buses'], keys: Keys, report: Report): void {
  const bus = follow(kind.bus, buses, [...keys, 'bus'], 'bus', report);
  if (kind.lay === 'loose' && kind.bends)
    report([...keys, 'bends'], 'a loose ribbon hangs freely; only a flat one bends');
  kind.connectors.forEach(({ atMm, ways }, i) => {
    const at = [...keys, 'connectors', i];
    const before = kind.connectors[i - 1];
    if (!before && atMm !== 0) report([...at, 'atMm'], 'the first connector is at 0');
    if (before && atMm <= before.atMm)
      report([...at, 'atMm'], `places must rise; ${before.atMm} comes before ${atMm}`);
    if (bus && ways !== undefined && ways > bus.pinout.length) {
      report([...at, 'ways'], `${ways} ways on a ribbon of ${bus.pinout.length} conductors`);
    }
  });
}

function judgeKit(kit: Kit, report: Report): Index {
  const voltages = byId(kit.voltages, ['kit', 'voltages'], 'voltage', report);
  kit.voltages.forEach(({ id }, i) => {
    if (id === GND) report(['kit', 'voltages', i, 'id'], 'GND is implied and no voltage');
  });
  const buses = byId(kit.buses, ['kit', 'buses'], 'bus', report);
  kit.buses.forEach(({ pinout }, i) => {
    if (pinout.length % 2 !== 0)
      report(['kit', 'buses', i, 'pinout'], `pins come in pairs; there are ${pinout.length}`);
  });
  const modules = byId(kit.modules, ['kit', 'modules'], 'module kind', report);
  const headers = new Map<string, ReadonlyMap<string, unknown>>();
  kit.modules.forEach((kind, i) => {
    const keys = ['kit', 'modules', i];
    judgeVoltageKeys(kind.draws, voltages, [...keys, 'draws'], report);
    headers.set(kind.id, byId(kind.headers, [...keys, 'headers'], 'header', report));
    kind.headers.forEach((header, j) => {
      follow(header.bus, buses, [...keys, 'headers', j, 'bus'], 'bus', report);
      judgePin1(header, [...keys, 'headers', j], report);
    });
  });
  const ribbons = byId(kit.ribbons, ['kit', 'ribbons'], 'ribbon kind', report);
  kit.ribbons.forEach((kind, i) => {
    judgeRibbonKind(kind, buses, ['kit', 'ribbons', i], report);
  });
  return { voltages, buses, modules, headers, ribbons };
}

function judgeBoard(
  board: Board,
  rows: ReadonlyMap<string, unknown>,
  index: Index,
  keys: Keys,
  report: Report,
): void {
  follow(board.row, rows, [...keys, 'row'], 'row', report);
  if (board.limits) judgeVoltageKeys(board.limits, index.voltages, [...keys, 'limits'], report);
  board.headers.forEach((header, i) => {
    const at = [...keys, 'headers', i];
    follow(header.bus, index.buses, [...at, 'bus'], 'bus', report);
    judgePin1(header as { axis?: Axis; pin1?: string }, at, report);
  });
}

/** Boards are named across all supplies of a take, as seats name them by id alone. */
function judgeSupplies(
  supplies: readonly Supply[],
  rows: ReadonlyMap<string, unknown>,
  index: Index,
  keys: Keys,
  report: Report,
): Map<string, ReadonlyMap<string, unknown>> {
  byId(supplies, keys, 'supply', report);
  const boards = new Map<string, ReadonlyMap<string, unknown>>();
  supplies.forEach((supply, s) => {
    judgeVoltageKeys(supply.ratings, index.voltages, [...keys, s, 'ratings'], report);
    supply.boards.forEach((board, b) => {
      const at = [...keys, s, 'boards', b];
      if (boards.has(board.id)) report([...at, 'id'], `a second board ${quote(board.id)}`);
      boards.set(board.id, byId(board.headers, [...at, 'headers'], 'header', report));
      judgeBoard(board, rows, index, at, report);
    });
  });
  return boards;
}

interface Seatable {
  readonly modules: ReadonlyMap<string, { readonly kind: string }>;
  readonly boards: ReadonlyMap<string, ReadonlyMap<string, unknown>>;
  readonly ribbons: ReadonlyMap<string, Ribbon>;
}

const SHAPES = ['header,module', 'board,header', 'connector,ribbon'];
const SEAT_KEYS = ['board', 'connector', 'header', 'module', 'ribbon'];

function judgeConnector(connector: number, kind: RibbonKind | undefined, keys: Keys, report: Report): void {
  const last = (kind?.connectors.length ?? Number.POSITIVE_INFINITY) - 1;
  if (connector > last) report(keys, `no connector ${connector}; this ribbon has 0 to ${last}`);
}

interface SeatedOnAny {
  readonly module?: string;
  readonly board?: string;
  readonly ribbon?: string;
  readonly header?: string;
  readonly connector?: number;
}

function judgeSeatedOn(on: SeatedOnAny, seatable: Seatable, index: Index, keys: Keys, report: Report): void {
  const shape = SEAT_KEYS.filter((key) => Object.hasOwn(on, key)).join();
  if (!SHAPES.includes(shape)) {
    report(keys, 'a seat is on a module and header, a board and header, or a ribbon and connector');
    return;
  }
  const { module = '', board = '', ribbon = '', header = '', connector = 0 } = on;
  if (shape === 'header,module') {
    const kind = follow(module, seatable.modules, [...keys, 'module'], 'module', report)?.kind ?? '';
    const headers = index.headers.get(kind);
    if (headers) follow(header, headers, [...keys, 'header'], `header of ${quote(module)}`, report);
  } else if (shape === 'board,header') {
    const headers = follow(board, seatable.boards, [...keys, 'board'], 'board', report);
    if (headers) follow(header, headers, [...keys, 'header'], `header of ${quote(board)}`, report);
  } else {
    const other = follow(ribbon, seatable.ribbons, [...keys, 'ribbon'], 'ribbon', report);
    if (other) judgeConnector(connector, index.ribbons.get(other.kind), [...keys, 'connector'], report);
  }
}

function judgeRibbon(ribbon: Ribbon, seatable: Seatable, index: Index, keys: Keys, report: Report): void {
  const kind = follow(ribbon.kind, index.ribbons, [...keys, 'kind'], 'ribbon kind', report);
  if (kind?.lay === 'loose') {
    for (const key of ['stripe', 'twists'] as const) {
      if (ribbon[key] !== undefined) report([...keys, key], 'only a flat ribbon has one');
    }
  }
  const gaps = (kind?.connectors.length ?? Number.POSITIVE_INFINITY) - 1;
  if (ribbon.twists && ribbon.twists.length > gaps) {
    report([...keys, 'twists'], `${ribbon.twists.length} gaps between connectors; this ribbon has ${gaps}`);
  }
  ribbon.seats.forEach(({ connector, on }, i) => {
    judgeConnector(connector, kind, [...keys, 'seats', i, 'connector'], report);
    judgeSeatedOn(on, seatable, index, [...keys, 'seats', i, 'on'], report);
  });
}

function judgeTake(take: Take, index: Index, keys: Keys, report: Report): void {
  const rows = byId(take.rows, [...keys, 'rows'], 'row', report);
  const boards = judgeSupplies(take.supplies, rows, index, [...keys, 'supplies'], report);
  const modules = byId(take.modules, [...keys, 'modules'], 'module', report);
  take.modules.forEach(({ kind, row }, i) => {
    follow(kind, index.modules, [...keys, 'modules', i, 'kind'], 'module kind', report);
    follow(row, rows, [...keys, 'modules', i, 'row'], 'row', report);
  });
  const ribbons = byId(take.ribbons, [...keys, 'ribbons'], 'ribbon', report);
  take.ribbons.forEach((ribbon, i) => {
    judgeRibbon(ribbon, { modules, boards, ribbons }, index, [...keys, 'ribbons', i], report);
  });
}

/** Judges what spans several places of a well-formed document. Linear in its size. */
export function referenceIssues(layout: Layout): Issue[] {
  const issues: Issue[] = [];
  const report: Report = (keys, message) => {
    if (issues.length < MOST_ISSUES) issues.push({ path: pathOf(keys), message });
  };
  const index = judgeKit(layout.kit, report);
  byId(layout.takes, ['takes'], 'take', report);
  layout.takes.forEach((take, i) => {
    judgeTake(take, index, ['takes', i], report);
  });
  return issues;
}

/** More are not told apart: one broken kind can break a thousand modules. */
export const MOST_ISSUES = 1000;
