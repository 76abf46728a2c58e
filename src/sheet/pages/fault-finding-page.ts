import { lineName } from '../../checks/words.ts';
import { expectedReadings } from '../expected-readings.ts';
import type { PageMaker } from '../sheet-page.ts';
import { ranges } from './continuity-page.ts';
import { caution, pagesWith } from './table.ts';

/** Symptom, what is likely, and what to do next (common practice, no source). */
const SYMPTOMS: readonly (readonly [string, string, string])[] = [
  [
    'Smell, smoke, something hot',
    'reversed or displaced connector, short',
    'Off and unplug at once. Look at stripe and free pins of the last thing seated; beep each voltage to ground.',
  ],
  [
    'One voltage missing everywhere',
    'supply overloaded or let go, short in one island',
    'Off. Unplug half of the leads at the boards; if it comes back, the fault is in that half. Halve again.',
  ],
  [
    'One voltage low everywhere',
    'too much drawn, thin or long supply lead',
    'Read at the supply, then at the board: what is lost between them is lost in the lead.',
  ],
  [
    'One island dead',
    'its lead, or the connector of it',
    'Read at the board header, then at the first module: see the readings below.',
  ],
  [
    'One module dead',
    'its connector, a conductor, the module',
    'Read at its header, each voltage to its own ground. Swap its ribbon for one that is known to be good.',
  ],
  [
    'Module works, its link does not',
    'link ribbon open, displaced or reversed',
    'Take the ribbon out and test it by its table; then try another header of the host.',
  ],
  [
    'Dead or odd after a move',
    'connector lifted, conductor broken at a connector',
    'Press every connector home; bend ribbons gently while watching.',
  ],
  [
    'Two things answer at once',
    'neighbours shorted in a ribbon',
    'Continuity table, the column of what must not beep.',
  ],
  [
    'Voltage reads wrong by its sign',
    'reversed connector',
    'Off at once. Do not switch on again before every stripe is looked at.',
  ],
  [
    'Hum, or pitch drifts with lamps',
    'ground that carries current',
    'Read ground to ground between the far and the near module, in mV, loaded. Give the far one a lead of its own.',
  ],
  [
    'Clicks from pulses in sound',
    'shared conductors of a long chain',
    'Unplug the pulsing module; if it is gone, feed it from another header.',
  ],
];

/** From what is noticed to what is measured next, with what should be read. */
export const faultFindingPage: PageMaker = ({ take, options }) => {
  const readings = expectedReadings(take);
  if (readings.length === 0) return [];
  return pagesWith(
    { id: 'fault-finding', title: 'Fault finding', side: 'rear' },
    [
      caution(
        'Unplug and wait 30 s before any connector is touched. Probes short neighbouring pins easily: one hand, fine tips, and look at the pin, not at the meter.',
      ),
      {
        heading: 'From what is noticed',
        columns: [
          { head: 'What is noticed', share: 46 },
          { head: 'Likely', share: 52 },
          { head: 'Next', share: 86 },
        ],
        rows: SYMPTOMS,
      },
      {
        heading: 'What a meter should read at each module, all switched on',
        says: 'Red probe on any of the pins named, black on a ground pin of the same header. As the drawing’s figures make it, with the supply at its nominal voltage.',
        columns: [
          { head: 'Module', share: 48 },
          { head: 'Header', share: 28 },
          { head: 'Line', share: 22 },
          { head: 'Pins', share: 24 },
          { head: 'Ground pins', share: 24 },
          { head: 'Expected', share: 21, align: 'right' },
          { head: 'Read', share: 18, box: true },
        ],
        rows: readings.map(({ module, header, line, pins, groundPins, volts }): string[] => [
          module.name,
          header?.name ?? 'none brings it',
          lineName(line),
          ranges(pins),
          ranges(groundPins),
          volts === undefined ? 'nothing' : `${volts < 0 ? '−' : ''}${Math.abs(volts).toFixed(2)} V`,
          '',
        ]),
      },
    ],
    options,
  );
};
