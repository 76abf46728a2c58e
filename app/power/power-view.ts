import {
  boardBudgets,
  type PlacedBoard,
  type PlacedModule,
  type Power,
  type Supply,
  supplyBudgets,
  wattsOf,
} from '../../src/index.ts';

/** A module and what it draws on a voltage. */
interface Eater {
  readonly id: string;
  readonly name: string;
  readonly ma: number;
  /** Of what is drawn on that voltage. */
  readonly share: number;
}

/** What is drawn on a voltage, beside what a supply gives. */
export interface Bar {
  readonly voltage: string;
  readonly ma: number;
  readonly ratingMa: number;
  /** Up to here the headroom that is kept stays free. */
  readonly untilHeadroomMa: number;
  /** Those that draw, most first. */
  readonly eaters: readonly Eater[];
  /** Names of those that draw nobody knows how much besides. */
  readonly unknown: readonly string[];
}

interface SupplyView {
  readonly id: string;
  readonly name: string;
  readonly watts: number;
  readonly bars: readonly Bar[];
}

interface BoardLine {
  readonly voltage: string;
  readonly ma: number;
  readonly limitMa?: number;
}

interface BoardView {
  readonly id: string;
  readonly name: string;
  readonly used: number;
  readonly headers: number;
  readonly lines: readonly BoardLine[];
}

/** A module that draws on voltages that do not arrive. */
interface Unfed {
  readonly id: string;
  readonly name: string;
  readonly voltages: readonly string[];
}

/** All that the panel tells of the currents of a take, apart from what arrives at each module. */
export interface PowerView {
  /** The share of each rating that is kept free. */
  readonly headroom: number;
  readonly supplies: readonly SupplyView[];
  readonly boards: readonly BoardView[];
  readonly unfed: readonly Unfed[];
  readonly watts: {
    readonly given: number;
    readonly used: number;
    readonly lost: number;
    readonly rows: readonly { readonly name: string; readonly watts: number }[];
  };
}

/** By supply, the modules that it feeds; one that two feed is told with both. */
function fedBy({ take: { take, supplyNet } }: Power): ReadonlyMap<string, ReadonlySet<PlacedModule>> {
  const fed = new Map(take.supplies.map(({ id }) => [id, new Set<PlacedModule>()]));
  for (const { modules, feeds } of supplyNet.islands) {
    for (const { harness } of feeds) {
      for (const { on } of harness.boardSeats) {
        const own = fed.get((on.header.owner as PlacedBoard).supply.id);
        for (const module of modules) own?.add(module);
      }
    }
  }
  return fed;
}

type Budget = ReturnType<typeof supplyBudgets> extends Iterable<infer T> ? T : never;

function barOf(power: Power, { voltage, ma, allowedMa }: Budget, fed: Iterable<PlacedModule>): Bar {
  const reached = [...fed].filter((module) => power.take.supplyNet.reaches(module, voltage));
  const draws = reached.flatMap(({ id, name, facts }) =>
    facts.draws.flatMap(([line, draw]) => (line === voltage ? [{ id, name, ma: draw }] : [])),
  );
  const all = draws.reduce((sum, draw) => sum + (draw.ma ?? 0), 0);
  const eaters = draws.flatMap((draw) =>
    draw.ma === null ? [] : [{ ...draw, ma: draw.ma, share: draw.ma / all }],
  );
  return {
    voltage,
    ma,
    ratingMa: allowedMa,
    untilHeadroomMa: allowedMa * (1 - power.take.limits.headroom),
    eaters: eaters.sort((a, b) => b.ma - a.ma),
    unknown: draws.filter((draw) => draw.ma === null).map(({ name }) => name),
  };
}

function supplyView(
  power: Power,
  { id, name }: Supply,
  watts: number,
  fed: ReadonlySet<PlacedModule>,
): SupplyView {
  const budgets = [...supplyBudgets(power)].filter(({ supply }) => supply.id === id);
  return { id, name, watts, bars: budgets.map((budget) => barOf(power, budget, fed)) };
}

function boardViews(power: Power): BoardView[] {
  const { take, draws } = power;
  const limits = new Map(
    [...boardBudgets(power)].map(({ board, voltage, allowedMa }) => [`${board.index} ${voltage}`, allowedMa]),
  );
  return take.places.boards.map(({ id, name, index, headers }) => {
    const lines = [...take.kit.voltages.keys()].flatMap((voltage, line): BoardLine[] => {
      const ma = draws.boards[index]?.[line] ?? 0;
      const limitMa = limits.get(`${index} ${voltage}`);
      const isTold = ma !== 0 || limitMa !== undefined;
      return isTold ? [{ voltage, ma, ...(limitMa !== undefined && { limitMa }) }] : [];
    });
    const used = headers.filter((header) => take.wiring.seatedOn.has(header)).length;
    return { id, name, used, headers: headers.length, lines };
  });
}

const unfedIn = ({ places, supplyNet }: Power['take']): Unfed[] =>
  places.modules.flatMap((module) => {
    const voltages = module.facts.draws.flatMap(([line]) => (supplyNet.reaches(module, line) ? [] : [line]));
    return voltages.length > 0 ? [{ id: module.id, name: module.name, voltages }] : [];
  });

/** The view of a take's currents; every figure in it is the solution's. */
export function powerView(power: Power): PowerView {
  const { take } = power;
  const watts = wattsOf(power);
  const fed = fedBy(power);
  const rows = take.places.rows.map(({ row, index }) => {
    const own = [...watts.modules].filter(([module]) => module.row.index === index);
    return {
      name: row.name ?? `Row ${index + 1}`,
      watts: own.reduce((sum, [, value]) => sum + value, 0),
    };
  });
  return {
    headroom: take.limits.headroom,
    supplies: take.take.supplies.map((supply, i) =>
      supplyView(power, supply, watts.supplies[i] ?? 0, fed.get(supply.id) ?? new Set()),
    ),
    boards: boardViews(power),
    unfed: unfedIn(take),
    watts: {
      given: watts.supplies.reduce((sum, value) => sum + value, 0),
      used: rows.reduce((sum, row) => sum + row.watts, 0),
      lost: watts.lost,
      rows,
    },
  };
}
