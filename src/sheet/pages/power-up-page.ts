import { figure, lineName, list, namesOf, targetInFull } from '../../checks/words.ts';
import { islandDraws, seatsToCheck, shortChecks, suppliesAlone } from '../power-up.ts';
import type { PageMaker } from '../sheet-page.ts';
import { caution, pagesWith, sentences, toTick } from './table.ts';

const ma = (value: number): string => `${figure(value, 0)} mA`;

const UNPLUGGED = [
  'Mains and adapter unplugged, 30 s waited. Loose screws counted; none is left behind a panel.',
  'Every connector seated at both ends, none tilted, stripe at pin 1.',
  'Every continuity table is signed.',
];

const MISSING = [
  'Switch off at once: modules that get one voltage and not the other can be damaged.',
  'Unplug, wait 30 s, and unplug the lead of the island that was fed last. Switch on again: if the voltage is back, the fault is in that island.',
  'If it is still missing with all leads unplugged, the supply or its lead to the board is at fault: measure at the supply.',
  'Within an island: unplug its ribbons one at a time, from the far end, until the voltage is back; then test the last ribbon by its table before blaming a module.',
  'A supply that lets go for a moment at switch-on and comes back may see many empty capacitors at once: feed fewer islands, then add them.',
];

/** What is measured before and while the rack gets its power for the first time. */
export const powerUpPage: PageMaker = ({ take, power, options }) => {
  const seats = seatsToCheck(take);
  const alone = suppliesAlone(take);
  const islands = islandDraws(power);
  if (alone.length === 0) return [];
  return pagesWith(
    { id: 'power-up', title: 'Powering up', side: 'rear' },
    [
      caution(
        'This plan covers extra-low voltages only. Mains parts belong in a closed, approved supply or in qualified hands. Never remove a protective earth. Smell, smoke or heat: off, unplug, and only then look.',
      ),
      toTick('1. Unplugged', UNPLUGGED),
      {
        heading: 'Stripe and seat at each open header',
        says: 'These take a connector either way round and displaced. Count the free pins; all of them at the end away from pin 1.',
        columns: [
          { head: 'Header', share: 62 },
          { head: 'Ribbon, connector', share: 46 },
          { head: 'Pin 1 (rear)', share: 30 },
          { head: 'Free pins', share: 22, align: 'right' },
          { head: 'Right', share: 16, box: true },
        ],
        rows: seats.map(({ seat, freePins, pin1 }): string[] => [
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
      {
        heading: '2. Supply alone, all module leads unplugged at the boards',
        says: 'Black probe on the supply’s ground. ±2 % from 10 V up, ±3 % below: common practice; the supply’s own papers go first.',
        columns: [
          { head: 'Supply', share: 56 },
          { head: 'Voltage', share: 24 },
          { head: 'Expected', share: 48 },
          { head: 'Measured, V', share: 34, box: true },
          { head: 'Right', share: 16, box: true },
        ],
        rows: alone.map(({ supply, voltage, fromVolts, toVolts }): string[] => [
          supply.name,
          lineName(voltage.id),
          `${figure(fromVolts)} to ${figure(toVolts)} V`,
          '',
          '',
        ]),
      },
      {
        heading: '3. One island at a time: unplugged, seat its leads, switch on for 5 s, look, off, next',
        says: 'What is joined by ribbons and fed together. Currents are what the drawing’s figures and wires make; a real module draws more at switch-on.',
        columns: [
          { head: 'Island', share: 60 },
          { head: 'Fed by', share: 28 },
          { head: 'Voltage', share: 20 },
          { head: 'Expected', share: 22, align: 'right' },
          { head: 'Measured, mA', share: 28, box: true },
          { head: 'Right', share: 16, box: true },
        ],
        rows: islands.flatMap(({ island, byVoltage, unknown }) =>
          byVoltage.map(({ voltage, ma: current }, i): string[] => [
            i === 0 ? namesOf(island.modules) : '',
            i === 0 ? list([...new Set(island.feeds.map(({ seat }) => seat.ribbon.name))], 6) : '',
            lineName(voltage),
            `${ma(current)}${unknown.length > 0 ? ' and what is not known' : ''}`,
            '',
            '',
          ]),
        ),
      },
      toTick('4. All together', [
        'Read every voltage at the supply and at the module farthest from it: see the readings of the fault sheet.',
        'After 10 minutes feel for warm spots with the back of a finger, and read again.',
        'Loudspeakers on last, and off first.',
      ]),
      sentences('If one voltage is missing', MISSING),
    ],
    options,
  );
};
