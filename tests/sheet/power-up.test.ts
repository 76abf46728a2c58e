import fc from 'fast-check';
import { expect, test } from 'vitest';
import { supplyBudgets } from '../../src/electrical/budget.ts';
import { powerOf } from '../../src/electrical/power.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import { expectedReadings } from '../../src/sheet/expected-readings.ts';
import { islandDraws, seatsToCheck, shortChecks, voltsAllowed } from '../../src/sheet/power-up.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { isHeaderJoint } from '../../src/wiring/harness.ts';
import { runs } from '../support/runs.ts';
import { treeLayout } from '../support/tree-layout.ts';

const demo = demoLayout();
const take = deriveTake(demo.kit, demo.takes[0] ?? expect.fail());

test('each island draws what its modules draw together', () => {
  const draws = islandDraws(powerOf(take)).map(({ island, byVoltage, unknown }) => [
    island.modules.map(({ name }) => name).join(' '),
    byVoltage.map(({ voltage, ma }) => `${voltage} ${ma.toFixed(3)}`).join(', '),
    unknown.length,
  ]);
  // Added up by hand from the kinds' draws: Jetty 50/45, Cobble 35/25, Boulder 60/45, and so on.
  expect(draws).toEqual([
    ['Harbour', '+12 120.000, -12 60.000', 0],
    ['Jetty A Cobble 1 Cobble 2 Boulder 1', '+12 180.000, -12 140.000', 0],
    ['Jetty B Boulder 2 Cobble 3 Cobble 4', '+12 180.000, -12 140.000', 0],
    ['Jetty C Cobble 5 Cobble 6', '+12 120.000, -12 95.000', 0],
    ['Gull 1', '+12 80.000, -12 30.000', 0],
    ['Foghorn', '+12 110.000, -12 40.000, +5 30.000', 0],
    ['Kelp', '+12 60.000, -12 55.000', 0],
    ['Gull 2', '+12 80.000, -12 30.000', 0],
  ]);
});

test('islands together draw what the supplies give, where each voltage comes from one supply', () => {
  let compared = 0;
  const property = fc.property(treeLayout, ({ kit, takes }) => {
    for (const each of takes) {
      if (each.supplies.length !== 1) continue;
      const power = powerOf(deriveTake(kit, each));
      const islands = islandDraws(power);
      for (const { voltage, ma } of supplyBudgets(power)) {
        const sum = islands
          .flatMap(({ byVoltage }) => byVoltage)
          .filter((one) => one.voltage === voltage)
          .reduce((total, one) => total + one.ma, 0);
        expect(sum).toBeCloseTo(ma, 6);
        if (ma > 0) compared++;
      }
    }
  });
  fc.assert(property, runs(200));
  expect(compared).toBeGreaterThan(5);
});

test('a voltage may be off by 2 % from 10 V up and by 3 % below (common practice, no source)', () => {
  expect([12, -12, 5].map((nominal) => voltsAllowed(nominal).toFixed(2))).toEqual(['0.24', '0.24', '0.15']);
});

test('every seat on an open header is looked at, with the pins that stay free', () => {
  const seats = seatsToCheck(take);
  expect(seats).toHaveLength(take.wiring.joints.filter(isHeaderJoint).length);
  // A 10-way connector has no pin free on 10 pins; a 10-way one on 16 pins would leave six.
  expect(seats.every(({ freePins }) => freePins === 0)).toBe(true);
  const kit = {
    ...demo.kit,
    buses: demo.kit.buses.map((bus) =>
      bus.id === 'power-10' ? { ...bus, pinout: [...bus.pinout, '+5', '+5'] } : bus,
    ),
  };
  const wide = seatsToCheck(deriveTake(kit, demo.takes[0] ?? expect.fail()));
  expect(wide.find(({ seat }) => seat.ribbon.name === 'L2' && seat.connector === 1)).toMatchObject({
    freePins: 2,
    pin1: 'down',
  });
});

test('what lies left from the front lies right from the rear', () => {
  const modules = demo.kit.modules.map((kind) => ({
    ...kind,
    headers: kind.headers.map((header) => ({
      ...header,
      axis: 'horizontal' as const,
      pin1: 'left' as const,
    })),
  }));
  const seats = seatsToCheck(deriveTake({ ...demo.kit, modules }, demo.takes[0] ?? expect.fail()));
  const onModules = seats.filter(({ seat }) => seat.on.header.owner.type === 'module');
  expect(new Set(onModules.map(({ pin1 }) => pin1))).toEqual(new Set(['right']));
});

test('each pair of lines of a supply is beeped once', () => {
  expect(shortChecks(take).map(({ a, b }) => `${a} ${b}`)).toEqual([
    '+12 -12',
    '+12 +5',
    '+12 GND',
    '-12 +5',
    '-12 GND',
    '+5 GND',
  ]);
});

test('what a meter should read stands with the pins to read it on', () => {
  const readings = expectedReadings(take);
  const foghorn = readings.filter(({ module }) => module.id === 'foghorn');
  // 2 × 8: −12 V on 1 and 2, ground on 3 to 8, +12 V on 9 and 10, +5 V on 11 and 12 (common practice, no source).
  expect(foghorn.map(({ line, pins, groundPins, header }) => [line, pins, groundPins, header?.id])).toEqual([
    ['+12', [9, 10], [3, 4, 5, 6, 7, 8], 'power'],
    ['-12', [1, 2], [3, 4, 5, 6, 7, 8], 'power'],
    ['+5', [11, 12], [3, 4, 5, 6, 7, 8], 'power'],
  ]);
  const powers = powerOf(take);
  for (const { module, line, volts } of readings) {
    const voltage = take.kit.voltages.get(line) ?? expect.fail(line);
    const part = powers.parts.find(({ part: own }) => own.places.modules.includes(module)) ?? expect.fail();
    const lost = (part.lossMv(module, voltage) ?? Number.NaN) / 1000;
    expect(volts).toBeCloseTo(voltage.volts - Math.sign(voltage.volts) * lost, 9);
  }
});

test('a module that nothing feeds is to read nothing', () => {
  const [first] = demo.takes;
  const unfed = deriveTake(demo.kit, { ...(first ?? expect.fail()), ribbons: [] });
  expect(expectedReadings(unfed).every(({ volts }) => volts === undefined)).toBe(true);
});
