import { figure, lineName, list, targetInFull } from '../../checks/words.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import { leadsInto, type PowerStep, powerSteps } from '../power-steps.ts';
import { seatsToCheck, shortChecks, voltsAllowed } from '../power-up.ts';
import type { PageMaker } from '../sheet-page.ts';
import { caution, pagesWith, sentences, toTick, type WideTable } from './table.ts';

const ma = (value: number): string => `${figure(value, 0)} mA`;

const MISSING = [
  'Switch off at once: modules that get one voltage and not the other can be damaged.',
  'Unplug, wait 30 s, and unplug the lead of the island that was fed last. Switch on again: if the voltage is back, the fault is in that island.',
  'If it is still missing with all leads unplugged, the supply or its lead to the board is at fault: measure at the supply.',
  'Within an island: unplug its ribbons one at a time, from the far end, until the voltage is back; then test the last ribbon by its table before blaming a module.',
  'A supply that lets go for a moment at switch-on and comes back may see many empty capacitors at once: feed fewer islands, then add them.',
];

const UNPLUGGED_SAYS =
  'These take a connector either way round and displaced. Count the free pins; all of them at the end away from pin 1.';

function unpluggedTables({ looks }: PowerStep, heading: string, take: WholeTake): readonly WideTable[] {
  return [
    toTick(heading, looks),
    {
      heading: 'Stripe and seat at each open header',
      says: UNPLUGGED_SAYS,
      columns: [
        { head: 'Header', share: 62 },
        { head: 'Ribbon, connector', share: 46 },
        { head: 'Pin 1 (rear)', share: 30 },
        { head: 'Free pins', share: 22, align: 'right' },
        { head: 'Right', share: 16, box: true },
      ],
      rows: seatsToCheck(take).map(({ seat, freePins, pin1 }): string[] => [
        targetInFull(seat.on),
        `${seat.ribbon.name}, ${seat.connector + 1}`,
        pin1 ?? 'not known: find it',
        String(freePins),
        '',
      ]),
    },
    {
      heading: 'No short on any voltage',
      says: 'Meter on beep, at any board, all leads seated, nothing switched on. A short chirp is capacitors being charged; a steady beep is a short: find it before going on.',
      columns: [
        { head: 'Supply', share: 60 },
        { head: 'Between', share: 60 },
        { head: 'No steady beep', share: 30, box: true },
      ],
      rows: shortChecks(take).map(({ supply, a, b }): string[] => [
        supply.name,
        `${lineName(a)} and ${lineName(b)}`,
        '',
      ]),
    },
  ];
}

const supplyTable = ({ looks, places }: PowerStep, heading: string): WideTable => ({
  heading,
  says: `${looks.join(' ')} Black probe on the supply’s ground. ±2 % from 10 V up, ±3 % below: common practice.`,
  columns: [
    { head: 'Supply', share: 56 },
    { head: 'Voltage', share: 24 },
    { head: 'Expected', share: 48 },
    { head: 'Measured, V', share: 34, box: true },
    { head: 'Right', share: 16, box: true },
  ],
  rows: places.flatMap(({ name, lines }) =>
    lines.map(({ line, nominal }): string[] => {
      const off = Math.sign(nominal) * voltsAllowed(nominal);
      return [name, lineName(line), `${figure(nominal - off)} to ${figure(nominal + off)} V`, '', ''];
    }),
  ),
});

const islandTable = (steps: readonly PowerStep[], heading: string): WideTable => ({
  heading,
  says: 'Unplugged: seat its leads. On for 5 s: watch, smell. Off before the next. An island is what ribbons join and feed together. Currents are what the drawing’s figures and wires make; a real module draws more at switch-on.',
  columns: [
    { head: 'Island', share: 60 },
    { head: 'Fed by', share: 28 },
    { head: 'Voltage', share: 20 },
    { head: 'Expected', share: 22, align: 'right' },
    { head: 'Measured, mA', share: 28, box: true },
    { head: 'Right', share: 16, box: true },
  ],
  rows: steps.flatMap(({ title, draw }) =>
    (draw?.byVoltage ?? []).map(({ voltage, ma: current }, i): string[] => [
      i === 0 ? title : '',
      i === 0 && draw ? list(leadsInto(draw.island), 6) : '',
      lineName(voltage),
      `${ma(current)}${draw && draw.unknown.length > 0 ? ' and what is not known' : ''}`,
      '',
      '',
    ]),
  ),
});

/** The tables of steps, numbered; all islands are one table. */
function tablesOf(steps: readonly PowerStep[], take: WholeTake): readonly WideTable[] {
  const stages = [...new Set(steps.map(({ stage }) => stage))];
  return stages.flatMap((stage, i): readonly WideTable[] => {
    const of = steps.filter((step) => step.stage === stage);
    const [step] = of as [PowerStep];
    const heading = `${i + 1}. ${stage === 'island' ? 'One island at a time' : step.title}`;
    if (stage === 'unplugged') return unpluggedTables(step, heading, take);
    if (stage === 'supply') return [supplyTable(step, heading)];
    if (stage === 'island') return [islandTable(of, heading)];
    return [toTick(heading, step.looks)];
  });
}

/** What is measured before and while the rack gets its power for the first time. */
export const powerUpPage: PageMaker = ({ take, power, options }) => {
  if (take.take.supplies.length === 0) return [];
  return pagesWith(
    { id: 'power-up', title: 'Powering up', side: 'rear' },
    [
      caution(
        'This plan covers extra-low voltages only. Mains parts belong in a closed, approved supply or in qualified hands. Never remove a protective earth. Smell, smoke or heat: off, unplug, and only then look.',
      ),
      ...tablesOf(powerSteps(power), take),
      sentences('If one voltage is missing', MISSING),
    ],
    options,
  );
};
