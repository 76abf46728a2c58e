import { estimate, ma, mv } from '../checks/load-words.ts';
import { count, figure, lineName } from '../checks/words.ts';
import { boardBudgets, headroomOf, supplyBudgets } from '../electrical/budget.ts';
import { type PartPower, type Power, powerOf } from '../electrical/power.ts';
import { solveTake } from '../electrical/solution.ts';
import type { PlacedModule } from '../geometry/place.ts';
import { dropMvOf, GND } from '../layout/defaults.ts';
import type { Layout, Take } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import { onlyFile, parse, readLayout } from './arguments.ts';
import { type Command, json, takesOf } from './command.ts';

/** Rows of cells in columns: the first to the left, the others to the right. */
function table(rows: readonly (readonly string[])[]): string {
  const widths: number[] = [];
  for (const row of rows)
    row.forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, cell.length);
    });
  const line = (row: readonly string[]): string =>
    row
      .map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
      .join('   ')
      .trimEnd();
  return rows.map((row) => `  ${line(row)}\n`).join('');
}

const percent = (share: number): string => `${figure(100 * share, 0)} %`;

function suppliesText(power: Power): string {
  const rows = [...supplyBudgets(power)].map((budget) => [
    `${budget.supply.name}, ${lineName(budget.voltage)}`,
    ma(budget.ma),
    `of ${ma(budget.allowedMa)}`,
    `${percent(headroomOf(budget))} headroom`,
  ]);
  return rows.length > 0 ? table(rows) : '  No supply gives any voltage.\n';
}

function boardsText(power: Power): string {
  const limits = new Map(
    [...boardBudgets(power)].map(({ board, voltage, allowedMa }) => [`${board.index} ${voltage}`, allowedMa]),
  );
  const rows = power.take.places.boards.flatMap(({ name, index }) =>
    power.take.kit.supplyLines.flatMap((line, i) => {
      const limit = limits.get(`${index} ${line}`);
      const drawn = power.draws.boards[index]?.[i] ?? 0;
      const isTold = line !== GND && (drawn !== 0 || limit !== undefined);
      return isTold
        ? [[`${name}, ${lineName(line)}`, ma(drawn), limit === undefined ? '' : `of ${ma(limit)}`]]
        : [];
    }),
  );
  return table(rows);
}

interface Loss {
  readonly module: PlacedModule;
  readonly line: string;
  readonly mv: number;
  readonly allowedMv: number;
  readonly volts: number;
}

/** What each module loses on each voltage that it draws. */
const lossesOf = (power: PartPower): Loss[] =>
  power.part.places.modules.flatMap((module) =>
    module.facts.draws.flatMap(([line]): Loss[] => {
      const voltage = power.part.kit.voltages.get(line);
      const lost = voltage && power.lossMv(module, voltage);
      if (!voltage || lost === undefined) return [];
      const volts = voltage.volts - (Math.sign(voltage.volts) * lost) / 1000;
      return [{ module, line, mv: lost, allowedMv: dropMvOf(voltage), volts }];
    }),
  );

/** Modules told of; the others lose less. */
const MOST_MODULES = 8;

function modulesText({ parts }: Power): string {
  const worst = new Map<PlacedModule, { loss: Loss; power: PartPower }>();
  for (const power of parts) {
    for (const loss of lossesOf(power)) {
      const known = worst.get(loss.module);
      if (!known || loss.mv > known.loss.mv) worst.set(loss.module, { loss, power });
    }
  }
  const sorted = [...worst.values()].sort((a, b) => b.loss.mv - a.loss.mv);
  const rows = sorted
    .slice(0, MOST_MODULES)
    .map(({ loss, power }) => [
      loss.module.name,
      `${loss.volts.toFixed(2).replace('-', '\u2212')} V of ${lineName(loss.line)}`,
      `${mv(loss.mv)} lost`,
      `${mv(loss.allowedMv)} allowed`,
      `ground ${mv(power.shiftMv(loss.module, GND) ?? 0)}`,
    ]);
  const rest = sorted.length - rows.length;
  return `${table(rows)}${rest > 0 ? `  ${count(rest, 'more module')}, each of which loses less\n` : ''}`;
}

/** The most that any contact or conductor carries. */
function contactsText({ parts, take }: Power): string {
  let most = 0;
  for (const power of parts) {
    const spans = power.network.ribbons.flatMap(({ spans }) => spans);
    for (const { branches, shares } of [...power.network.seats, ...spans])
      branches.forEach((branch, i) => {
        const share = shares[i] as number;
        if (share > 0) most = Math.max(most, Math.abs(power.maIn(branch)) / share);
      });
  }
  return `  At most ${estimate(most)} mA in a contact, of ${ma(take.limits.contactMa)} allowed\n`;
}

function takeText(power: Power): string {
  const boards = boardsText(power);
  const modules = modulesText(power);
  return [
    `${power.take.take.name}\n\nSupplies\n${suppliesText(power)}`,
    boards && `\nBoards\n${boards}`,
    modules && `\nModules, those that lose most first\n${modules}`,
    `\nRibbons\n${contactsText(power)}`,
  ].join('');
}

const CAUTION =
  'Estimated from nominal values: constant currents, copper, contacts alike. Draws that nobody knows count as 0.\nThis knows only the data entered; measure before you rely on it.\n';

function peopleText(layout: Layout, powers: readonly Power[]): string {
  return `${layout.title}\n\n${powers.map(takeText).join('\n')}\n${CAUTION}`;
}

export const solve: Command = {
  usage: 'FILE [--take ID] [--json]',
  says: 'what every supply, board and ribbon carries and what voltage every module gets, estimated',
  run(args) {
    const { values, positionals } = parse(args, { take: { type: 'string' }, json: { type: 'boolean' } });
    const layout = readLayout(onlyFile(positionals));
    const derived = takesOf(layout, values.take).map((take: Take) => deriveTake(layout.kit, take));
    if (!values.json) return { text: peopleText(layout, derived.map(powerOf)), exit: 0 };
    const solutions = derived.map(solveTake);
    const [only, ...others] = solutions;
    return { text: json(others.length === 0 ? only : { takes: solutions }), exit: 0 };
  },
};
