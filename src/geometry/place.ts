import { BOARD_Y_MM, gapMmOf, zMmOf } from '../layout/defaults.ts';
import { type BusFacts, type KitIndex, type ModuleFacts, resolve } from '../layout/kit-index.ts';
import type { Axis, Board, Module, PinEnd, Role, Row, Supply, Take } from '../layout/layout.ts';
import { hpToMm, uToMm } from './rack.ts';

/** A row of mounting rails in its place. */
export interface PlacedRow {
  readonly row: Row;
  readonly index: number;
  readonly widthMm: number;
  /** Height of its bottom edge above the bottom edge of the first row, mm; rows below are negative. */
  readonly bottomMm: number;
}

/** A module in its place; x from the left end of the row, seen from the front, mm. */
export interface PlacedModule {
  readonly type: 'module';
  readonly id: string;
  readonly index: number;
  readonly module: Module;
  readonly facts: ModuleFacts;
  readonly name: string;
  readonly row: PlacedRow;
  readonly leftMm: number;
  readonly rightMm: number;
  readonly headers: readonly PlacedHeader[];
}

/** A board in its place on the floor of the case. */
export interface PlacedBoard {
  readonly type: 'board';
  readonly id: string;
  readonly index: number;
  readonly board: Board;
  readonly supply: Supply;
  /** Index of the supply in the take. */
  readonly supplyIndex: number;
  readonly name: string;
  readonly row: PlacedRow;
  readonly headers: readonly PlacedHeader[];
}

/** A header in its place: x from the left end of the row, y from its bottom edge, seen from the front, mm. */
export interface PlacedHeader {
  readonly id: string;
  readonly name: string;
  readonly owner: PlacedModule | PlacedBoard;
  readonly bus: BusFacts;
  readonly row: PlacedRow;
  readonly xMm: number;
  readonly yMm: number;
  /** Where the mated ribbon lies behind the panel, mm; absent on boards. */
  readonly zMm?: number;
  readonly axis: Axis;
  readonly pin1: PinEnd | undefined;
  readonly keyed: boolean;
  readonly passes: boolean;
  readonly isolated: boolean;
  /** Absent on boards. */
  readonly role?: Role;
  readonly counts: number;
}

/** Everything of a take that has a place. */
export interface Places {
  readonly rows: readonly PlacedRow[];
  readonly modules: readonly PlacedModule[];
  readonly boards: readonly PlacedBoard[];
  readonly rowById: ReadonlyMap<string, PlacedRow>;
  readonly moduleById: ReadonlyMap<string, PlacedModule>;
  readonly boardById: ReadonlyMap<string, PlacedBoard>;
}

/*
 * What has not moved keeps its place: while one module is dragged all others are the very same objects in each
 * layout, and so are their places. Kept by the objects of the document, so that they go when these go.
 */
type PlacedRows = Pick<Places, 'rows' | 'rowById'>;
type PlacedBoards = Pick<Places, 'boards' | 'boardById'>;

/** All modules as they were placed last. */
interface PlacedList {
  readonly kit: KitIndex;
  readonly modules: readonly Module[];
  readonly placed: readonly PlacedModule[];
}

const keptRows = new WeakMap<readonly Row[], PlacedRows>();
const keptModules = new WeakMap<Module, PlacedModule>();
const keptLists = new WeakMap<readonly PlacedRow[], PlacedList>();
const keptBoards = new WeakMap<
  readonly Supply[],
  PlacedBoards & { readonly kit: KitIndex; readonly rows: readonly PlacedRow[] }
>();

function placedRows(rows: readonly Row[]): PlacedRows {
  const kept = keptRows.get(rows);
  if (kept) return kept;
  const placed = placeRows(rows);
  const made = { rows: placed, rowById: new Map(placed.map((row) => [row.row.id, row])) };
  keptRows.set(rows, made);
  return made;
}

function placedBoards(
  kit: KitIndex,
  supplies: readonly Supply[],
  rows: readonly PlacedRow[],
  rowById: ReadonlyMap<string, PlacedRow>,
): PlacedBoards {
  const kept = keptBoards.get(supplies);
  if (kept?.kit === kit && kept.rows === rows) return kept;
  const boards: PlacedBoard[] = [];
  supplies.forEach((supply, supplyIndex) => {
    for (const board of supply.boards) {
      boards.push(placeBoard(board, boards.length, supply, supplyIndex, resolve(rowById, board.row), kit));
    }
  });
  const made = { kit, rows, boards, boardById: new Map(boards.map((board) => [board.id, board])) };
  keptBoards.set(supplies, made);
  return made;
}

function placedModule(
  module: Module,
  index: number,
  facts: ModuleFacts,
  row: PlacedRow,
  name: string,
  kit: KitIndex,
): PlacedModule {
  const kept = keptModules.get(module);
  const holds =
    kept && kept.index === index && kept.facts === facts && kept.row === row && kept.name === name;
  if (holds) return kept;
  const placed = placeModule(module, index, facts, row, name, kit);
  keptModules.set(module, placed);
  return placed;
}

function placeRows(rows: readonly Row[]): PlacedRow[] {
  let bottomMm = 0;
  return rows.map((row, index) => {
    const above = rows[index - 1];
    if (above) bottomMm -= uToMm(row.heightU) + gapMmOf(above);
    return { row, index, widthMm: hpToMm(row.widthHp), bottomMm };
  });
}

/** How many modules of each kind have no label: the only one goes by its kind's name alone. */
function countUnlabelled(modules: readonly Module[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { kind, label } of modules) if (!label) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return counts;
}

function placeModule(
  module: Module,
  index: number,
  facts: ModuleFacts,
  row: PlacedRow,
  name: string,
  kit: KitIndex,
): PlacedModule {
  const leftMm = hpToMm(module.atHp);
  const headers: PlacedHeader[] = [];
  const placed: PlacedModule = {
    type: 'module',
    id: module.id,
    index,
    module,
    facts,
    name,
    row,
    leftMm,
    rightMm: leftMm + hpToMm(facts.kind.widthHp),
    headers,
  };
  for (const header of facts.kind.headers) {
    headers.push({
      id: header.id,
      name: header.name ?? header.id,
      owner: placed,
      bus: resolve(kit.buses, header.bus),
      row,
      xMm: leftMm + header.xMm,
      yMm: header.yMm,
      zMm: zMmOf(facts.kind, header),
      axis: header.axis ?? 'vertical',
      pin1: header.pin1,
      keyed: header.keyed === true,
      passes: header.passes === true,
      isolated: header.isolated === true,
      role: header.role,
      counts: header.counts ?? 1,
    });
  }
  return placed;
}

function placeBoard(
  board: Board,
  index: number,
  supply: Supply,
  supplyIndex: number,
  row: PlacedRow,
  kit: KitIndex,
): PlacedBoard {
  const headers: PlacedHeader[] = [];
  const { id, name } = board;
  const placed: PlacedBoard = { type: 'board', id, index, board, supply, supplyIndex, name, row, headers };
  for (const header of board.headers) {
    headers.push({
      id: header.id,
      name: header.id,
      owner: placed,
      bus: resolve(kit.buses, header.bus),
      row,
      xMm: board.xMm + (header.dxMm ?? 0),
      yMm: (board.yMm ?? BOARD_Y_MM) + (header.dyMm ?? 0),
      axis: header.axis ?? 'vertical',
      pin1: header.pin1 as PinEnd | undefined,
      keyed: header.keyed === true,
      passes: false,
      isolated: false,
      counts: 1,
    });
  }
  return placed;
}

/** Whether the same modules of the same names stand in both lists, wherever they stand. */
const isNamedAlike = (a: readonly Module[], b: readonly Module[]): boolean =>
  a.length === b.length &&
  a.every((module, i) => {
    const other = b[i] as Module;
    const { id, kind, label } = other;
    return module === other || (module.id === id && module.kind === kind && module.label === label);
  });

/** Names depend on all modules together, so they are only worked out where one came, went or was renamed. */
function placedModules(
  kit: KitIndex,
  list: readonly Module[],
  rows: readonly PlacedRow[],
  rowById: ReadonlyMap<string, PlacedRow>,
): readonly PlacedModule[] {
  const kept = keptLists.get(rows);
  if (kept?.kit === kit && kept.modules === list) return kept.placed;
  const alike = kept?.kit === kit && isNamedAlike(kept.modules, list) ? kept : undefined;
  const unlabelled = alike ? undefined : countUnlabelled(list);
  const nameOf = ({ id, kind, label }: Module, kindName: string): string =>
    label || (unlabelled?.get(kind) === 1 ? kindName : `${kindName} (${id})`);
  const placed = list.map((module, index) => {
    if (alike?.modules[index] === module) return alike.placed[index] as PlacedModule;
    const facts = resolve(kit.modules, module.kind);
    const name = alike?.placed[index]?.name ?? nameOf(module, facts.kind.name);
    return placedModule(module, index, facts, resolve(rowById, module.row), name, kit);
  });
  keptLists.set(rows, { kit, modules: list, placed });
  return placed;
}

class TakePlaces implements Places {
  readonly rows: Places['rows'];
  readonly rowById: Places['rowById'];
  readonly modules: Places['modules'];
  readonly boards: Places['boards'];
  readonly boardById: Places['boardById'];
  #moduleById?: Places['moduleById'];

  constructor(
    { rows, rowById }: PlacedRows,
    modules: Places['modules'],
    { boards, boardById }: PlacedBoards,
  ) {
    this.rows = rows;
    this.rowById = rowById;
    this.modules = modules;
    this.boards = boards;
    this.boardById = boardById;
  }

  /** Made when it is first asked for, which a drag does not. */
  get moduleById() {
    this.#moduleById ??= new Map(this.modules.map((module) => [module.id, module]));
    return this.#moduleById;
  }
}

/** Puts rows, modules, boards and their headers in place. Linear in what the take holds. */
export function placeTake(kit: KitIndex, take: Take): Places {
  const placedRow = placedRows(take.rows);
  const { rows, rowById } = placedRow;
  const modules = placedModules(kit, take.modules, rows, rowById);
  return new TakePlaces(placedRow, modules, placedBoards(kit, take.supplies, rows, rowById));
}
