import { figure, lineName, list, namesOf, targetInFull } from '../../checks/words.ts';
import { boardBudgets, headroomOf, supplyBudgets } from '../../electrical/budget.ts';
import type { PartPower } from '../../electrical/power.ts';
import type { PlacedModule } from '../../geometry/place.ts';
import { dropMvOf, GND } from '../../layout/defaults.ts';
import { lengthMmOf } from '../../wiring/shortest-lead.ts';
import { bodyMm } from '../page-size.ts';
import { type Column, type Table, type TableRow, tablesOnPages } from '../paginate.ts';
import type { PageMaker, SheetFacts, SheetPage } from '../sheet-page.ts';
import { reading, stripeWords } from '../words.ts';

/** Columns in shares of the width. */
const columns = (
  widthMm: number,
  ...shares: readonly (Omit<Column, 'widthMm'> & { share: number })[]
): Column[] => {
  const all = shares.reduce((sum, { share }) => sum + share, 0);
  return shares.map(({ share, ...column }) => ({ ...column, widthMm: (widthMm * share) / all }));
};

/** Room to write a figure by hand, mm. */
const HAND_MM = 7;

/** Everything that stays plugged to a board, and what hangs on it. */
function feedTable({ take }: SheetFacts, widthMm: number): Table {
  const { islands } = take.supplyNet;
  const rows = islands.flatMap(({ feeds, modules }) =>
    feeds.map(({ seat, harness }): TableRow => {
      const from = harness.boardSeats.map(
        ({ on, ribbon, connector }) => `${targetInFull(on)}, ${stripeWords(ribbon, connector, on.header)}`,
      );
      const { ribbon, connector, on } = seat;
      return {
        cells: [
          list(from),
          list(harness.ribbons.map(({ name }) => name)),
          list(harness.ribbons.map(({ facts }) => figure(lengthMmOf(facts), 0))),
          `${targetInFull(on)}, ${stripeWords(ribbon, connector, on.header)}`,
          namesOf(modules),
        ],
      };
    }),
  );
  return {
    heading: 'What feeds what',
    says: 'Stripes as seen from the rear. Unplug and wait before a lead is plugged or pulled.',
    columns: columns(
      widthMm,
      { head: 'From', share: 46 },
      { head: 'Lead', share: 26, bold: true },
      { head: 'mm', share: 13, align: 'right' },
      { head: 'To', share: 50 },
      { head: 'Feeds', share: 55 },
    ),
    rows: rows.sort((a, b) => ((a.cells[0] as string) < (b.cells[0] as string) ? -1 : 1)),
  };
}

const unfedTable = ({ take }: SheetFacts, widthMm: number): Table => ({
  heading: 'Nothing feeds these',
  columns: columns(widthMm, { head: 'Modules', share: 1 }),
  rows: take.supplyNet.islands
    .filter(({ feeds, modules }) => feeds.length === 0 && modules.some(({ facts }) => facts.needs.length > 0))
    .map(({ modules }) => ({
      cells: [
        list(
          modules.map(({ name }) => name),
          40,
        ),
      ],
    })),
});

const percent = (share: number): string => (Number.isFinite(share) ? `${figure(100 * share, 0)} %` : '');

/** Modules whose draw nobody knows on some voltage: what is expected is at least what stands there. */
const unknown = ({ take }: SheetFacts): PlacedModule[] =>
  take.places.modules.filter(({ facts }) => facts.unknownDraws.length > 0);

function budgetTable(facts: SheetFacts, widthMm: number): Table {
  const { power } = facts;
  const row = (name: string, budget: { voltage: string; ma: number; allowedMa: number }): TableRow => ({
    cells: [
      name,
      lineName(budget.voltage),
      figure(budget.ma, 0),
      figure(budget.allowedMa, 0),
      percent(headroomOf(budget)),
    ],
    leastMm: HAND_MM,
  });
  const missing = unknown(facts);
  return {
    heading: 'Budget',
    says:
      missing.length > 0
        ? `Draws that nobody knows count as 0: ${namesOf(missing)}. What flows is more.`
        : 'Expected from what the kinds say; the measured figure counts.',
    columns: columns(
      widthMm,
      { head: 'Supply or board', share: 44 },
      { head: 'Voltage', share: 20, bold: true },
      { head: 'Expected, mA', share: 22, align: 'right' },
      { head: 'Allowed, mA', share: 22, align: 'right' },
      { head: 'Headroom', share: 20, align: 'right' },
      { head: 'V, alone', share: 20, box: true },
      { head: 'V, loaded', share: 20, box: true },
      { head: 'mA measured', share: 22, box: true },
    ),
    rows: [
      ...Array.from(supplyBudgets(power), (budget) => row(budget.supply.name, budget)),
      ...Array.from(boardBudgets(power), (budget) => row(budget.board.name, budget)),
    ],
  };
}

function moduleRows(power: PartPower): { readonly module: PlacedModule; readonly row: TableRow }[] {
  const { kit, places } = power.part;
  return places.modules.flatMap((module) =>
    module.facts.draws.map(([line, ma]) => {
      const voltage = kit.voltages.get(line);
      const volts = voltage && power.voltsAt(module, voltage);
      const least = voltage && voltage.volts - (Math.sign(voltage.volts) * dropMvOf(voltage)) / 1000;
      const ground = power.shiftMv(module, GND);
      const cells = [
        module.name,
        lineName(line),
        ma === null ? 'not known' : figure(ma, 0),
        volts === undefined ? 'not fed' : reading(volts, 2),
        least === undefined ? '' : reading(least, 2),
        ground === undefined ? '' : reading(ground, 1),
      ];
      return { module, row: { cells, leastMm: HAND_MM } };
    }),
  );
}

function modulesTable({ power }: SheetFacts, widthMm: number): Table {
  const rows = power.parts.flatMap(moduleRows).sort((a, b) => a.module.index - b.module.index);
  return {
    heading: 'At the modules, loaded',
    says: 'Black probe on the module’s own ground. Ground is measured against the supply’s.',
    columns: columns(
      widthMm,
      { head: 'Module', share: 52, bold: true },
      { head: 'Voltage', share: 20 },
      { head: 'Draws, mA', share: 22, align: 'right' },
      { head: 'Expected, V', share: 22, align: 'right' },
      { head: 'At least, V', share: 20, align: 'right' },
      { head: 'Ground, mV', share: 20, align: 'right' },
      { head: 'V measured', share: 22, box: true },
      { head: 'mV measured', share: 22, box: true },
    ),
    rows: rows.map(({ row }) => row),
  };
}

/** What feeds what, and what should then be measured. */
export const feeds: PageMaker = (facts) => {
  const body = bodyMm(facts.options.paper);
  const tables = [feedTable, unfedTable, budgetTable, modulesTable].map((table) =>
    table(facts, body.widthMm),
  );
  return tablesOnPages(tables, body).map(
    (page): SheetPage => ({ id: 'feeds', title: 'Feeds and budget', side: 'rear', body: page }),
  );
};
