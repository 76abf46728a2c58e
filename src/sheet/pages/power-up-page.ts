import { figure, lineName, list, namesOf, targetInFull } from '../../checks/words.ts';
import { roomOn } from '../cut-rows.ts';
import { islandDraws, seatsToCheck, shortChecks, suppliesAlone } from '../power-up.ts';
import type { PageMaker } from '../sheet-page.ts';
import { pagedLots } from './paged.ts';
import { BLANK, type Cell, cautionLot, listLot, TICK, tableLot } from './table.ts';

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
  const { widthMm } = roomOn(options.paper);
  const seats = seatsToCheck(take);
  const alone = suppliesAlone(take);
  const islands = islandDraws(power);
  if (alone.length === 0) return [];
  return pagedLots(
    { id: 'power-up', title: 'Power-up', side: 'rear' },
    [
      cautionLot(
        'This plan covers extra-low voltages only. Mains parts belong in a closed, approved supply or in qualified hands. Never remove a protective earth. Smell, smoke or heat: off, unplug, and only then look.',
        widthMm,
      ),
      listLot('1. Unplugged', UNPLUGGED, widthMm, true),
      ...(seats.length > 0
        ? [
            tableLot({
              title: 'Stripe and seat at each open header',
              words:
                'These take a connector either way round and displaced. Count the free pins; all of them at the end away from pin 1.',
              columns: [
                { name: 'Header', widthMm: 62 },
                { name: 'Ribbon, connector', widthMm: 46 },
                { name: 'Pin 1 (rear)', widthMm: 30 },
                { name: 'Free pins', widthMm: 22, align: 'end' },
                { name: 'Right', widthMm: 16, align: 'middle' },
              ],
              rows: seats.map(({ seat, freePins, pin1 }): Cell[] => [
                targetInFull(seat.on),
                `${seat.ribbon.name}, ${seat.connector + 1}`,
                pin1 ?? 'not known: find it',
                String(freePins),
                TICK,
              ]),
            }),
          ]
        : []),
      tableLot({
        title: 'No short on any voltage',
        words:
          'Meter on beep, at any board, all leads seated, nothing switched on. A short chirp is capacitors being charged; a steady beep is a short: find it before going on.',
        columns: [
          { name: 'Supply', widthMm: 60 },
          { name: 'Between', widthMm: 60 },
          { name: 'No steady beep', widthMm: 30, align: 'middle' },
        ],
        rows: shortChecks(take).map(({ supply, a, b }): Cell[] => [
          supply.name,
          `${lineName(a)} and ${lineName(b)}`,
          TICK,
        ]),
      }),
      tableLot({
        title: '2. Supply alone, all module leads unplugged at the boards',
        words:
          'Black probe on the supply’s ground. ±2 % from 10 V up, ±3 % below: common practice; the supply’s own papers go first.',
        columns: [
          { name: 'Supply', widthMm: 56 },
          { name: 'Voltage', widthMm: 24, align: 'end' },
          { name: 'Expected', widthMm: 48 },
          { name: 'Measured, V', widthMm: 34 },
          { name: 'Right', widthMm: 16, align: 'middle' },
        ],
        rows: alone.map(({ supply, voltage, fromVolts, toVolts }): Cell[] => [
          supply.name,
          lineName(voltage.id),
          `${figure(fromVolts)} to ${figure(toVolts)} V`,
          BLANK,
          TICK,
        ]),
      }),
      ...(islands.length > 0
        ? [
            tableLot({
              title: '3. One island at a time: unplugged, seat its leads, switch on for 5 s, look, off, next',
              words:
                'What is joined by ribbons and fed together. Currents are what the drawing’s figures and wires make; a real module draws more at switch-on.',
              columns: [
                { name: 'Island', widthMm: 60 },
                { name: 'Fed by', widthMm: 28 },
                { name: 'Voltage', widthMm: 20, align: 'end' },
                { name: 'Expected', widthMm: 22, align: 'end' },
                { name: 'Measured, mA', widthMm: 28 },
                { name: 'Right', widthMm: 16, align: 'middle' },
              ],
              rows: islands.flatMap(({ island, byVoltage, unknown }) =>
                byVoltage.map(({ voltage, ma: current }, i): Cell[] => [
                  i === 0 ? namesOf(island.modules) : '',
                  i === 0 ? list([...new Set(island.feeds.map(({ seat }) => seat.ribbon.name))], 6) : '',
                  lineName(voltage),
                  `${ma(current)}${unknown.length > 0 ? ' and what is not known' : ''}`,
                  BLANK,
                  TICK,
                ]),
              ),
            }),
          ]
        : []),
      listLot(
        '4. All together',
        [
          'Read every voltage at the supply and at the module farthest from it: see the readings of the fault sheet.',
          'After 10 minutes feel for warm spots with the back of a finger, and read again.',
          'Loudspeakers on last, and off first.',
        ],
        widthMm,
        true,
      ),
      listLot('If one voltage is missing', MISSING, widthMm),
    ],
    options,
  );
};
