import { IssueList, type Path } from './issue.ts';
import type {
  Axis,
  Board,
  Kit,
  Layout,
  ModuleKind,
  PinEnd,
  Ribbon,
  RibbonKind,
  SeatedOn,
  Supply,
  Take,
} from './layout.ts';
import { didYouMean } from './nearest.ts';
import { quote } from './quote.ts';

/** Words are asked for only where they are kept. */
type Report = (path: Path, words: () => string) => void;

interface Identified {
  readonly id: string;
}

/** Ends at which pin 1 of a header may lie, by the way its long side runs. */
export const PIN_ENDS: Readonly<Record<Axis, readonly PinEnd[]>> = {
  vertical: ['down', 'up'],
  horizontal: ['left', 'right'],
};

/** The things of a list by id; reports ids that occur twice. */
function byId<T extends Identified>(
  things: readonly T[],
  path: Path,
  noun: string,
  report: Report,
): Map<string, T> {
  const found = new Map<string, T>();
  things.forEach((thing, i) => {
    if (found.has(thing.id)) report([...path, i, 'id'], () => `a second ${noun} ${quote(thing.id)}`);
    else found.set(thing.id, thing);
  });
  return found;
}

/** The thing that a reference names; reports a reference to nothing. */
function follow<T>(
  id: string,
  things: ReadonlyMap<string, T>,
  path: Path,
  noun: string,
  report: Report,
): T | undefined {
  const found = things.get(id);
  if (found === undefined) report(path, () => `no ${noun} ${quote(id)}${didYouMean(id, things.keys())}`);
  return found;
}

function judgePin1(
  { axis = 'vertical', pin1 }: { readonly axis?: Axis; readonly pin1?: PinEnd },
  path: Path,
  report: Report,
): void {
  const ends = PIN_ENDS[axis];
  if (pin1 === undefined || ends.includes(pin1)) return;
  report([...path, 'pin1'], () => `"${pin1}" does not suit a ${axis} header; it is ${ends.join(' or ')}`);
}

/** The schema takes a list for an object, and where no key must be there nothing tells them apart. */
function judgeObject(value: object | undefined, path: Path, report: Report): void {
  if (Array.isArray(value)) report(path, () => 'must be an object, not a list');
}

function judgeVoltageKeys(
  record: object,
  voltages: ReadonlyMap<string, unknown>,
  path: Path,
  report: Report,
): void {
  judgeObject(record, path, report);
  for (const voltage of Object.keys(record)) follow(voltage, voltages, [...path, voltage], 'voltage', report);
}

interface Index {
  readonly voltages: ReadonlyMap<string, Identified>;
  readonly buses: ReadonlyMap<string, Kit['buses'][number]>;
  readonly modules: ReadonlyMap<string, Kit['modules'][number]>;
  readonly headers: ReadonlyMap<string, ReadonlyMap<string, unknown>>;
  readonly ribbons: ReadonlyMap<string, RibbonKind>;
}

/** Gives the kind's headers by id. */
function judgeModuleKind(
  kind: ModuleKind,
  { voltages, buses }: Pick<Index, 'voltages' | 'buses'>,
  path: Path,
  report: Report,
): ReadonlyMap<string, unknown> {
  judgeVoltageKeys(kind.draws, voltages, [...path, 'draws'], report);
  kind.headers.forEach((header, i) => {
    follow(header.bus, buses, [...path, 'headers', i, 'bus'], 'bus', report);
    judgePin1(header, [...path, 'headers', i], report);
  });
  return byId(kind.headers, [...path, 'headers'], 'header', report);
}

function judgeRibbonKind(kind: RibbonKind, buses: Index['buses'], path: Path, report: Report): void {
  const bus = follow(kind.bus, buses, [...path, 'bus'], 'bus', report);
  if (kind.lay === 'loose' && kind.bends)
    report([...path, 'bends'], () => 'a loose ribbon hangs freely; only a flat one bends');
  kind.connectors.forEach(({ atMm, ways }, i) => {
    const at = [...path, 'connectors', i];
    const before = kind.connectors[i - 1];
    if (!before && atMm !== 0) report([...at, 'atMm'], () => 'the first connector is at 0');
    if (before && atMm <= before.atMm)
      report([...at, 'atMm'], () => `places must rise; ${before.atMm} comes before ${atMm}`);
    if (bus && ways !== undefined && ways > bus.pinout.length) {
      report([...at, 'ways'], () => `${ways} ways on a ribbon of ${bus.pinout.length} conductors`);
    }
  });
}

function judgeKit(kit: Kit, report: Report): Index {
  judgeObject(kit.limits, ['kit', 'limits'], report);
  const voltages = byId(kit.voltages, ['kit', 'voltages'], 'voltage', report);
  const buses = byId(kit.buses, ['kit', 'buses'], 'bus', report);
  const modules = byId(kit.modules, ['kit', 'modules'], 'module kind', report);
  const headers = new Map<string, ReadonlyMap<string, unknown>>();
  kit.modules.forEach((kind, i) => {
    headers.set(kind.id, judgeModuleKind(kind, { voltages, buses }, ['kit', 'modules', i], report));
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
  path: Path,
  report: Report,
): void {
  follow(board.row, rows, [...path, 'row'], 'row', report);
  if (board.limits) judgeVoltageKeys(board.limits, index.voltages, [...path, 'limits'], report);
  board.headers.forEach((header, i) => {
    const at = [...path, 'headers', i];
    follow(header.bus, index.buses, [...at, 'bus'], 'bus', report);
    judgePin1(header, at, report);
  });
}

/** Boards are named across all supplies of a take, as seats name them by id alone. */
function judgeSupplies(
  supplies: readonly Supply[],
  rows: ReadonlyMap<string, unknown>,
  index: Index,
  path: Path,
  report: Report,
): Map<string, ReadonlyMap<string, unknown>> {
  byId(supplies, path, 'supply', report);
  const boards = new Map<string, ReadonlyMap<string, unknown>>();
  supplies.forEach((supply, s) => {
    judgeVoltageKeys(supply.ratings, index.voltages, [...path, s, 'ratings'], report);
    supply.boards.forEach((board, b) => {
      const at = [...path, s, 'boards', b];
      if (boards.has(board.id)) report([...at, 'id'], () => `a second board ${quote(board.id)}`);
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

function judgeConnector(connector: number, kind: RibbonKind | undefined, path: Path, report: Report): void {
  const last = (kind?.connectors.length ?? Number.POSITIVE_INFINITY) - 1;
  if (connector > last) report(path, () => `no connector ${connector}; this ribbon has 0 to ${last}`);
}

function judgeSeatedOn(on: SeatedOn, seatable: Seatable, index: Index, path: Path, report: Report): void {
  if ('module' in on) {
    const module = follow(on.module, seatable.modules, [...path, 'module'], 'module', report);
    const headers = module && index.headers.get(module.kind);
    if (headers) follow(on.header, headers, [...path, 'header'], `header of ${quote(on.module)}`, report);
  } else if ('board' in on) {
    const headers = follow(on.board, seatable.boards, [...path, 'board'], 'board', report);
    if (headers) follow(on.header, headers, [...path, 'header'], `header of ${quote(on.board)}`, report);
  } else {
    const other = follow(on.ribbon, seatable.ribbons, [...path, 'ribbon'], 'ribbon', report);
    if (other) judgeConnector(on.connector, index.ribbons.get(other.kind), [...path, 'connector'], report);
  }
}

/** A loose ribbon has neither edge nor twist; it may say so, as what is written out in full does. */
function judgeLoose({ stripe, twists = [] }: Ribbon, path: Path, report: Report): void {
  const words = (): string => 'only a flat ribbon has one';
  if (stripe === 'up') report([...path, 'stripe'], words);
  if (twists.some((halfTwists) => halfTwists > 0)) report([...path, 'twists'], words);
}

function judgeRibbon(ribbon: Ribbon, seatable: Seatable, index: Index, path: Path, report: Report): void {
  const kind = follow(ribbon.kind, index.ribbons, [...path, 'kind'], 'ribbon kind', report);
  if (kind?.lay === 'loose') judgeLoose(ribbon, path, report);
  const gaps = (kind?.connectors.length ?? Number.POSITIVE_INFINITY) - 1;
  const { length: twisted } = ribbon.twists ?? [];
  if (twisted > gaps) {
    report([...path, 'twists'], () => `${twisted} gaps between connectors; this ribbon has ${gaps}`);
  }
  ribbon.seats.forEach(({ connector, on }, i) => {
    judgeConnector(connector, kind, [...path, 'seats', i, 'connector'], report);
    judgeSeatedOn(on, seatable, index, [...path, 'seats', i, 'on'], report);
  });
}

function judgeTake(take: Take, index: Index, path: Path, report: Report): void {
  judgeObject(take.built, [...path, 'built'], report);
  const rows = byId(take.rows, [...path, 'rows'], 'row', report);
  const boards = judgeSupplies(take.supplies, rows, index, [...path, 'supplies'], report);
  const modules = byId(take.modules, [...path, 'modules'], 'module', report);
  take.modules.forEach(({ kind, row }, i) => {
    follow(kind, index.modules, [...path, 'modules', i, 'kind'], 'module kind', report);
    follow(row, rows, [...path, 'modules', i, 'row'], 'row', report);
  });
  const ribbons = byId(take.ribbons, [...path, 'ribbons'], 'ribbon', report);
  take.ribbons.forEach((ribbon, i) => {
    judgeRibbon(ribbon, { modules, boards, ribbons }, index, [...path, 'ribbons', i], report);
  });
}

/** What does not hold between the places of a well-formed document. Takes time in proportion to its size. */
export function referenceIssues(layout: Layout): IssueList {
  const issues = new IssueList();
  const report: Report = (path, words) => issues.add(path, words);
  const index = judgeKit(layout.kit, report);
  byId(layout.takes, ['takes'], 'take', report);
  layout.takes.forEach((take, i) => {
    judgeTake(take, index, ['takes', i], report);
  });
  return issues;
}

const idMap = <T extends Identified>(things: readonly T[]): ReadonlyMap<string, T> =>
  new Map(things.map((thing) => [thing.id, thing]));

/** What does not hold between a well-formed kind of module and the kit that it would belong to. */
export function moduleKindIssues({ voltages, buses }: Kit, kind: ModuleKind): IssueList {
  const issues = new IssueList();
  const report: Report = (path, words) => issues.add(path, words);
  judgeModuleKind(kind, { voltages: idMap(voltages), buses: idMap(buses) }, [], report);
  return issues;
}

/** What does not hold between a well-formed kind of ribbon and the kit that it would belong to. */
export function ribbonKindIssues({ buses }: Kit, kind: RibbonKind): IssueList {
  const issues = new IssueList();
  judgeRibbonKind(kind, idMap(buses), [], (path, words) => issues.add(path, words));
  return issues;
}
