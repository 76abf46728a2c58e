import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  along,
  BOARD,
  example,
  kind,
  onBoard,
  onModule,
  POWER16,
  powerHeader,
  ribbon,
  ribbonKind,
  SUPPLY,
  shoreHeader,
} from '../../src/checks/example.ts';
import type { Defect } from '../../src/electrical/defect.ts';
import { type Readings, readingsWith, voltsAt } from '../../src/electrical/readings.ts';
import { solveTake } from '../../src/electrical/solution.ts';
import { defectsOfSuspect, suspectsIn } from '../../src/electrical/suspect.ts';
import { supplyWays } from '../../src/electrical/ways.ts';
import { areaMm2 } from '../../src/electrical/wire.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import type { WholeTake } from '../../src/wiring/whole-take.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { loopedLayout } from '../support/looped-layout.ts';
import { runs } from '../support/runs.ts';
import { layoutWithLeads } from '../support/with-leads.ts';

const derive = ({ kit, takes }: Layout, at = 0): WholeTake => {
  const take = takes[at] ?? expect.fail('no take');
  return deriveTake(kit, take);
};

/** Length of AWG 28 that has so much resistance at 20 °C, mm. */
const lengthMm = (ohm: number): number => ((ohm * areaMm2(28)) / 0.017241) * 1000;

const told = ({ modules }: Readings): Record<string, string> =>
  Object.fromEntries(
    modules.map(({ module, readings }) => [
      module.id,
      readings.map(({ line, state }) => `${line} ${state}`).join(', '),
    ]),
  );

const dead = ({ modules }: Readings): string[] =>
  modules.flatMap(({ module, isDead }) => (isDead ? [module.id] : [])).sort();

const read = ({ modules }: Readings, id: string, line: string) =>
  modules.find(({ module }) => module.id === id)?.readings.find((reading) => reading.line === line) ??
  expect.fail('no reading');

/*
 * A lead of 60 mΩ conductors and 20 mΩ contacts: 100 mΩ for each way of a line, two of +12 V and six of ground. At
 * 240 mA:
 *   whole:           12 − 0.24 · 0.1/2 = 11.988 V, ground 0.24 · 0.1/6 = 0.004 V, between them 11.984 V
 *   one contact of +12 V off at the module: 0.02/2 + 0.06/2 + 0.02 = 0.06 Ω, 12 − 0.24 · 0.06 = 11.9856 V,
 *                    between them 11.9816 V
 */
describe('by hand: a module at the end of a lead', () => {
  const layout = example({
    limits: { ambientC: 20 },
    kinds: [kind('m', { draws: { '+12': 240 }, headers: [powerHeader()] })],
    ribbonKinds: [ribbonKind('way', [0, lengthMm(0.06)], { bus: 'power', lay: 'loose' })],
    modules: [['a', 'm', 40]],
    ribbons: [ribbon('l', 'way', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });
  const take = derive(layout);
  const contact = (...contacts: number[]): Defect[] =>
    contacts.map((each) => ({ type: 'open-contact', ribbon: 'l', connector: 1, contact: each }));

  it('reads what the wire leaves', () => {
    const whole = readingsWith(take, []);
    expect(read(whole, 'a', '+12').volts).toBeCloseTo(11.988, 9);
    expect(read(whole, 'a', '+12').ownVolts).toBeCloseTo(11.984, 9);
    expect(read(whole, 'a', 'GND').volts).toBeCloseTo(0.004, 9);
    expect(whole.modules[0]).toMatchObject({ isDead: false, wasDead: false, isTouched: false });
  });

  it('one of two contacts off is felt, and kills nothing', () => {
    const one = readingsWith(take, contact(8));
    expect(read(one, 'a', '+12').volts).toBeCloseTo(11.9856, 9);
    expect(read(one, 'a', '+12').ownVolts).toBeCloseTo(11.9816, 9);
    expect(one.modules[0]).toMatchObject({ isDead: false, isTouched: true });
  });

  it('both off leave nothing, and its ground where it was', () => {
    const both = readingsWith(take, contact(8, 9));
    expect(read(both, 'a', '+12')).toEqual({ line: '+12', nominal: 12, state: 'nothing' });
    expect(read(both, 'a', 'GND')).toMatchObject({ volts: 0, state: 'right' });
    expect(both.modules[0]).toMatchObject({ isDead: true, wasDead: false, isTouched: false });
  });

  it('without ground the voltage is there, and has no return', () => {
    const off = readingsWith(take, contact(2, 3, 4, 5, 6, 7));
    expect(read(off, 'a', '+12')).toEqual({ line: '+12', nominal: 12, volts: 12, state: 'no-ground' });
    expect(read(off, 'a', 'GND')).toEqual({ line: 'GND', nominal: 0, state: 'nothing' });
  });

  it('unplugged at either end nothing is left', () => {
    for (const connector of [0, 1])
      expect(told(readingsWith(take, [{ type: 'unplugged', ribbon: 'l', connector }]))).toEqual({
        a: '+12 nothing, GND nothing',
      });
  });
});

describe('a short', () => {
  const layout = example({
    kinds: [
      kind('first', { draws: { '+12': 40, '-12': 20 }, headers: [powerHeader(), shoreHeader()] }),
      kind('next', { draws: { '+12': 40 }, headers: [shoreHeader()] }),
    ],
    modules: [
      ['a', 'first', 40],
      ['b', 'next', 35],
      ['c', 'plain', 60],
    ],
    ribbons: [
      ribbon('l', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')]),
      ribbon('k', 'lead', [onBoard(0, 'p2'), onModule(1, 'c', 'power')]),
      ribbon('s', 'stiff', along('a', 'b')),
    ],
  });
  const take = derive(layout);
  const places: readonly Defect[] = [
    { type: 'short', ribbon: 's', connector: 1, lines: ['+12', 'GND'] },
    { type: 'module-short', module: 'b', lines: ['GND', '+12'] },
    { type: 'board-short', board: 'board', lines: ['+12', 'GND'] },
  ];

  it.each(places)('of +12 V to ground pulls it down everywhere, and nothing else: $type', (short) => {
    const readings = readingsWith(take, [short]);
    expect(readings.trips).toEqual([{ supply: 'supply', line: '+12' }]);
    expect(told(readings)).toEqual({
      a: '+12 shorted, -12 right, GND right',
      b: '+12 shorted, GND right',
      c: '+12 shorted, GND right',
    });
    expect(read(readings, 'c', '+12')).toMatchObject({ volts: 0, ownVolts: 0 });
  });

  it('of two voltages pulls both down', () => {
    const readings = readingsWith(take, [
      { type: 'short', ribbon: 'l', connector: 0, lines: ['-12', '+12'] },
    ]);
    expect(readings.trips.map(({ line }) => line)).toEqual(['+12', '-12']);
    expect(told(readings).a).toBe('+12 shorted, -12 shorted, GND right');
  });

  it('behind a seat that is unplugged does nothing to the others', () => {
    const readings = readingsWith(take, [
      { type: 'module-short', module: 'b', lines: ['+12', 'GND'] },
      { type: 'unplugged', ribbon: 's', connector: 1 },
    ]);
    expect(readings.trips).toEqual([]);
    expect(dead(readings)).toEqual(['b']);
  });

  it('on a board with nothing on it is one, too', () => {
    const empty = { ...BOARD, id: 'empty', xMm: 200 };
    const two = derive(example({ ...layout, supplies: [{ ...SUPPLY, boards: [BOARD, empty] }] }));
    const { trips } = readingsWith(two, [{ type: 'board-short', board: 'empty', lines: ['+12', 'GND'] }]);
    expect(trips).toEqual([{ supply: 'supply', line: '+12' }]);
  });

  it('to a voltage that no supply gives brings the other one there', () => {
    const wide = { ...BOARD, headers: [{ id: 'p1', bus: 'power16', pin1: 'down' as const }] };
    const five = derive(
      example({
        buses: [POWER16],
        kinds: [kind('five', { draws: { '+12': 10, '+5': 30 }, headers: [powerHeader({ bus: 'power16' })] })],
        ribbonKinds: [ribbonKind('wide', [0, 300], { bus: 'power16', lay: 'loose' })],
        supplies: [{ ...SUPPLY, boards: [wide] }],
        modules: [['f', 'five', 40]],
        ribbons: [ribbon('w', 'wide', [onBoard(0, 'p1'), onModule(1, 'f', 'power')])],
      }),
    );
    const before = readingsWith(five, []);
    expect(told(before)).toEqual({ f: '+12 right, +5 nothing, GND right' });
    expect(before.modules[0]).toMatchObject({ isDead: true, wasDead: true });
    const readings = readingsWith(five, [{ type: 'short', ribbon: 'w', connector: 0, lines: ['+12', '+5'] }]);
    expect(readings.trips).toEqual([]);
    expect(told(readings)).toEqual({ f: '+12 right, +5 wrong, GND right' });
    expect(read(readings, 'f', '+5').volts).toBeCloseTo(12, 1);
  });
});

describe('any take', () => {
  it('without defects reads what the solution says', () => {
    const property = fc.property(fc.oneof(arbitraryLayout, loopedLayout, layoutWithLeads), (layout) => {
      const take = derive(layout);
      const { modules } = solveTake(take);
      for (const { module, readings, isDead, wasDead, isTouched } of readingsWith(take, []).modules) {
        for (const { line, volts } of readings) {
          const solved = modules[module.id]?.[line];
          expect(volts === undefined).toBe(solved === undefined);
          expect(Math.abs((volts ?? 0) - (solved ?? 0))).toBeLessThan(1e-9);
        }
        expect(isDead).toBe(wasDead);
        expect(isTouched).toBe(false);
      }
    });
    fc.assert(property, runs(50));
  });

  it('loses with its only feed exactly the island', () => {
    let seen = 0;
    const check = (take: WholeTake): void => {
      for (const { modules, feeds } of take.supplyNet.islands) {
        const [only, ...more] = feeds;
        if (!only || more.length > 0) continue;
        seen++;
        const { ribbon, connector } = only.seat;
        const after = readingsWith(take, [{ type: 'unplugged', ribbon: ribbon.id, connector }]);
        const before = readingsWith(take, []);
        const needy = modules.filter(({ facts }) => facts.needs.length > 0).map(({ id }) => id);
        // Ground may still come by another way; the voltages do not.
        expect(dead(after)).toEqual([...new Set([...dead(before), ...needy])].sort());
      }
    };
    for (const i of [0, 1]) check(derive(demoLayout(), i));
    fc.assert(
      fc.property(layoutWithLeads, (layout) => check(derive(layout))),
      runs(50),
    );
    expect(seen).toBeGreaterThan(10);
  });

  it('with any defects together is read without failing, each figure finite', () => {
    const property = fc.property(
      fc.oneof(arbitraryLayout, loopedLayout, fc.constant(demoLayout())),
      fc.array(fc.nat(), { maxLength: 6 }),
      (layout, picks) => {
        const take = derive(layout);
        const all = suspectsIn(supplyWays(take));
        const defects = picks.flatMap((pick) => {
          const suspect = all[pick % Math.max(1, all.length)];
          return suspect ? defectsOfSuspect(suspect, take) : [];
        });
        const { modules, boards } = readingsWith(take, defects);
        for (const { readings } of [...modules, ...boards]) {
          for (const { volts, ownVolts } of readings) {
            for (const figure of [volts, ownVolts])
              if (figure !== undefined) expect(Number.isFinite(figure)).toBe(true);
          }
        }
        expect(readingsWith(take, defects)).toEqual(readingsWith(take, defects));
      },
    );
    fc.assert(property, runs(50));
  });
});

describe('a probe', () => {
  it('reads on both halves of a seat', () => {
    const take = derive(
      example({
        modules: [['a', 'plain', 40]],
        ribbons: [ribbon('l', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
      }),
    );
    const off: Defect[] = [{ type: 'unplugged', ribbon: 'l', connector: 1 }];
    const at = { ribbon: 'l', connector: 1, line: '+12' };
    expect(voltsAt(take, off, [at, { ...at, isUnder: true }, { module: 'a', line: '+12' }])).toEqual([
      12,
      undefined,
      undefined,
    ]);
    expect(
      voltsAt(
        take,
        [],
        [
          { board: 'board', line: '+12' },
          { board: 'nobody', line: '+12' },
        ],
      ),
    ).toEqual([12, undefined]);
  });
});
