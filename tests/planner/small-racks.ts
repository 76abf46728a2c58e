import fc from 'fast-check';
import { kind, powerHeader, ribbonKind, SHORE, shoreHeader } from '../../src/checks/example.ts';
import type { Kit, Module, RibbonKind, Take } from '../../src/layout/layout.ts';

const POWER = {
  id: 'power',
  name: 'Power',
  pinout: ['-12', '-12', 'GND', 'GND', 'GND', 'GND', 'GND', 'GND', '+12', '+12'],
};

const VOICE = kind('voice', {
  draws: { '+12': 40, '-12': 20 },
  headers: [shoreHeader(), powerHeader({ xMm: 12.7 })],
});
const MUTE = kind('mute', { draws: { '+12': 70 }, headers: [shoreHeader()] });
const ODD = kind('odd', {
  draws: { '+12': 10 },
  headers: [shoreHeader({ pin1: 'up', yMm: 40 }), powerHeader()],
});
const COLLECTOR = kind('collector', { draws: { '+12': 50 }, headers: [shoreHeader({ role: 'host' })] });
const KINDS = [VOICE, MUTE, ODD, COLLECTOR];

const stock = fc.record({ owned: fc.integer({ min: 0, max: 2 }), price: fc.integer({ min: 1, max: 4 }) });

const flat: fc.Arbitrary<RibbonKind> = fc.oneof(
  fc.tuple(fc.integer({ min: 2, max: 4 }), stock).map(([n, more]) =>
    ribbonKind(
      'stiff',
      Array.from({ length: n }, (_, i) => 25.4 * i),
      more,
    ),
  ),
  fc.tuple(fc.integer({ min: 2, max: 4 }), fc.constantFrom(30, 36, 60), stock).map(([n, pitch, more]) =>
    ribbonKind(
      'bending',
      Array.from({ length: n }, (_, i) => pitch * i),
      { bends: true, ...more },
    ),
  ),
);

const second: fc.Arbitrary<RibbonKind> = fc.oneof(
  flat.map((each) => ({ ...each, id: 'second' })),
  fc
    .tuple(fc.constantFrom(120, 250), stock)
    .map(([mm, more]) => ribbonKind('second', [0, mm], { lay: 'loose', ...more })),
);

const lead: fc.Arbitrary<RibbonKind> = fc
  .tuple(fc.constantFrom(180, 300), stock)
  .map(([mm, more]) => ribbonKind('lead', [0, mm], { bus: 'power', lay: 'loose', ...more }));

/** Racks of few modules, three kinds of ribbon, counted and priced; up to seven are few enough to try every wiring. */
export const smallRacks = (
  least: number,
  most: number,
): fc.Arbitrary<{ readonly kit: Kit; readonly take: Take }> =>
  fc
    .tuple(
      fc.array(
        fc.tuple(
          fc.constantFrom('voice', 'voice', 'mute', 'odd', 'collector'),
          fc.constantFrom(0, 0, 0, 0.5, 2),
        ),
        { minLength: least, maxLength: most },
      ),
      flat,
      second,
      lead,
      fc.integer({ min: 1, max: 4 }),
      fc.integer({ min: 1, max: 4 }),
      fc.boolean(),
    )
    .map(([kinds, first, other, power, membersPerHost, boardHeaders, twoRows]) => {
      let atHp = 0;
      const modules = kinds.map(([kindId, gap], i): Module => {
        const row = twoRows && i >= 4 ? 'lower' : 'upper';
        if (twoRows && i === 4) atHp = 0;
        const module = { id: `m${i}`, kind: kindId, row, atHp: atHp + gap };
        atHp += gap + 5;
        return module;
      });
      return {
        kit: {
          voltages: [
            { id: '+12', volts: 12 },
            { id: '-12', volts: -12 },
          ],
          buses: [{ ...SHORE, membersPerHost }, POWER],
          modules: KINDS,
          ribbons: [first, other, power],
        },
        take: {
          id: 'take',
          name: 'Take',
          rows: [
            { id: 'upper', widthHp: 84, heightU: 3, depthMm: 60 },
            { id: 'lower', widthHp: 84, heightU: 3, depthMm: 60 },
          ],
          supplies: [
            {
              id: 'supply',
              name: 'Supply',
              ratings: { '+12': 2000, '-12': 2000 },
              boards: [
                {
                  id: 'board',
                  name: 'Board',
                  row: 'upper',
                  xMm: 60,
                  headers: Array.from({ length: boardHeaders }, (_, n) => ({
                    id: `p${n}`,
                    bus: 'power',
                    dxMm: 12 * n,
                  })),
                },
              ],
            },
          ],
          modules,
          ribbons: [],
        },
      };
    });
