/** A linear program over variables of which some are whole numbers; all variables lie between 0 and `most`. */
export interface Program {
  readonly most: readonly number[];
  readonly whole: readonly boolean[];
  readonly rows: readonly ProgramRow[];
}

/** A weighted sum of variables that must lie between two bounds. */
export interface ProgramRow {
  readonly least: number;
  readonly most: number;
  readonly columns: readonly number[];
  readonly weights: readonly number[];
}

/** Of some columns at most so many. */
export const togetherAtMost = (most: number, columns: readonly number[]): ProgramRow => ({
  least: Number.NEGATIVE_INFINITY,
  most,
  columns,
  weights: columns.map(() => 1),
});

/** What a search came to. */
interface Minimum {
  /** proven: none is lower. open: the search was ended before; there may be no values then. none: nothing suits all rows. */
  readonly state: 'proven' | 'open' | 'none';
  readonly values: readonly number[] | undefined;
  readonly sum: number;
  /** No choice has a lower sum. */
  readonly bound: number;
}

/** A program in an engine's hands. */
export interface Search {
  minimise(costs: readonly number[], gap: number): Minimum;
  addRow(row: ProgramRow): void;
  /** A variable that need not be whole; its number. Costs nothing from then on unless `minimise` is told more costs. */
  addColumn(most: number): number;
  close(): void;
}

/** Whoever solves linear programs in whole numbers; the core knows none of its own. */
export type Engine = (program: Program) => Search;

/** As much of the HiGHS package as is used. */
interface HighsModel {
  readonly options: { set(values: Readonly<Record<string, boolean | number | string>>): unknown };
  readonly info: { get(name: string): unknown };
  passModel(model: object): unknown;
  addRow(least: number, most: number, entries: object): unknown;
  addVar(least: number, most: number): unknown;
  changeColsCost(selection: object, costs: readonly number[]): unknown;
  run(): unknown;
  clearSolver(): unknown;
  getModelStatus(): number;
  getObjectiveValue(): number;
  getSolution(): { readonly colValue: ArrayLike<number> };
  dispose(): void;
}

export interface Highs {
  readonly infinity: number;
  createModel(): object;
}

const OPTIMAL = 7;
const INFEASIBLE = 8;

/** Nodes after which a search is ended: counted and not timed, so that the same layout gets the same answer. */
const MOST_NODES = 20_000;

/** Whether a run came to an end. HiGHS breaks off now and then where it simplifies first; it then does without. */
function hasRun(model: HighsModel): boolean {
  for (const presolve of ['choose', 'off']) {
    try {
      model.options.set({ presolve });
      model.run();
      return true;
    } catch {
      model.clearSolver();
    }
  }
  return false;
}

/** The engine of a loaded HiGHS. */
export const engineOf =
  (highs: Highs): Engine =>
  ({ most, whole, rows }) => {
    const model = highs.createModel() as HighsModel;
    const starts = [0];
    for (const { columns } of rows) starts.push((starts[starts.length - 1] as number) + columns.length);
    model.options.set({
      output_flag: false,
      mip_rel_gap: 0,
      mip_max_nodes: MOST_NODES,
      mip_feasibility_tolerance: 1e-7,
    });
    model.passModel({
      numCols: most.length,
      numRows: rows.length,
      colCost: most.map(() => 0),
      colLower: most.map(() => 0),
      colUpper: most,
      rowLower: rows.map(({ least }) => Math.max(least, -highs.infinity)),
      rowUpper: rows.map((row) => Math.min(row.most, highs.infinity)),
      matrix: {
        format: 'csr',
        numRows: rows.length,
        numCols: most.length,
        starts,
        indices: rows.flatMap(({ columns }) => columns),
        values: rows.flatMap(({ weights }) => weights),
      },
      integrality: whole.map((is) => (is ? 1 : 0)),
    });
    let columnCount = most.length;
    return {
      addColumn: (atMost) => {
        model.addVar(0, atMost);
        return columnCount++;
      },
      addRow: ({ least, most: atMost, columns, weights }) => {
        model.addRow(Math.max(least, -highs.infinity), Math.min(atMost, highs.infinity), {
          indices: columns,
          values: weights,
        });
      },
      minimise: (costs, gap) => {
        model.changeColsCost({ kind: 'range', from: 0, to: costs.length - 1 }, costs);
        model.options.set({ mip_abs_gap: gap });
        if (!hasRun(model))
          return { state: 'open', values: undefined, sum: Number.NaN, bound: -highs.infinity };
        const status = model.getModelStatus();
        if (status === INFEASIBLE) return { state: 'none', values: undefined, sum: 0, bound: 0 };
        const found =
          Number.isFinite(model.getObjectiveValue()) && model.info.get('primal_solution_status') === 2;
        return {
          state: status === OPTIMAL ? 'proven' : 'open',
          values: found ? Array.from(model.getSolution().colValue) : undefined,
          sum: model.getObjectiveValue(),
          bound: model.info.get('mip_dual_bound') as number,
        };
      },
      close: () => model.dispose(),
    };
  };
