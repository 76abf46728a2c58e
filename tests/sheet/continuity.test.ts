import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GND } from '../../src/layout/defaults.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout, Ribbon, RibbonKind } from '../../src/layout/layout.ts';
import { continuitiesOf, continuityOf } from '../../src/sheet/continuity.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { isHeaderJoint } from '../../src/wiring/harness.ts';
import { linesUnder } from '../../src/wiring/laid-ribbon.ts';
import type { WholeTake } from '../../src/wiring/whole-take.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { runs } from '../support/runs.ts';

const demo = demoLayout();
const take = deriveTake(demo.kit, demo.takes[0] ?? expect.fail());

function harnessOf(name: string, whole: WholeTake = take) {
  const found = whole.harnesses.find(({ ribbons }) => ribbons.some((ribbon) => ribbon.name === name));
  return continuityOf(found ?? expect.fail(name), whole.kit);
}

describe('the demo', () => {
  it('has a net for each conductor of a ribbon, with the neighbours in the ribbon and in the connector', () => {
    const { nets, points } = harnessOf('S1');
    expect(points).toHaveLength(5);
    expect(nets.map(({ pin, line }) => [pin, line])).toEqual([
      [1, '-12'],
      [2, '-12'],
      [3, 'GND'],
      [4, 'GND'],
      [5, 'GND'],
      [6, '+12'],
      [7, '+12'],
      [8, 'GND'],
      [9, 'mix'],
      [10, 'strike'],
    ]);
    expect(nets.every((net) => net.points.length === 5)).toBe(true);
    // Next in the ribbon: 4 and 6. Next in a row of the connector: 3 and 7.
    expect(nets[4]?.besides.map((i) => nets[i]?.pin)).toEqual([3, 4, 6, 7]);
    expect(nets[0]?.besides.map((i) => nets[i]?.pin)).toEqual([2, 3]);
  });

  it('has nothing to beep to for the conductors beyond a shorter connector', () => {
    const { nets } = harnessOf('L2');
    expect(nets.map(({ points }) => points.length)).toEqual([...Array(10).fill(2), ...Array(6).fill(1)]);
  });

  it('tests plugged ribbons as one, at the connectors that are open', () => {
    const { points, nets } = harnessOf('T2');
    expect(points.map(({ ribbon, connector }) => `${ribbon.name}·${connector + 1}`)).toEqual([
      'T1·2',
      'T1·3',
      'T2·1',
      'T3·2',
    ]);
    expect(nets).toHaveLength(10);
  });

  it('names ground and each voltage with its pins: none may beep to another', () => {
    expect(harnessOf('S2').supplies).toEqual([
      { line: GND, pins: [3, 4, 5, 8] },
      { line: '+12', pins: [6, 7] },
      { line: '-12', pins: [1, 2] },
    ]);
  });

  it('has one table for leads that differ in length alone', () => {
    const groups = continuitiesOf(take).map(({ harnesses }) =>
      harnesses.map(({ ribbons }) => ribbons.map(({ name }) => name).join('+')),
    );
    expect(groups).toEqual([
      ['S1'],
      ['S2'],
      ['S3'],
      ['T1+T2+T3'],
      ['L1', 'L4', 'L5', 'L7', 'L8'],
      ['L2', 'L3', 'L6'],
    ]);
  });
});

/** Which contacts conduct to which, by walking from one contact to all it reaches; a contact is "ribbon connector pin". */
function reached(whole: WholeTake, start: readonly [string, number, number]): Set<string> {
  const seen = new Set<string>();
  const waiting = [start];
  for (let at = waiting.pop(); at; at = waiting.pop()) {
    const [id, connector, pin] = at;
    const key = `${id} ${connector} ${pin}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const ribbon = whole.wiring.ribbonById.get(id) ?? expect.fail(id);
    for (const [other, ways] of ribbon.facts.ways.entries()) if (pin < ways) waiting.push([id, other, pin]);
    for (const { conducts, ribbon: plug, connector: own, on } of whole.wiring.joints) {
      if (!conducts || on.type !== 'connector') continue;
      if (plug.id === id && own === connector && pin < (on.ribbon.facts.ways[on.connector] ?? 0))
        waiting.push([on.ribbon.id, on.connector, pin]);
      if (on.ribbon.id === id && on.connector === connector && pin < (plug.facts.ways[own] ?? 0))
        waiting.push([plug.id, own, pin]);
    }
  }
  return seen;
}

/** Loose ribbons of any contacts, the plug of each in a socket of one before it or in none. */
const plugged: fc.Arbitrary<Layout> = fc
  .tuple(
    fc.constantFrom(4, 6, 10),
    fc.array(
      fc.record({
        ways: fc.array(fc.constantFrom(2, 4, 99), { minLength: 1, maxLength: 3 }),
        plugWays: fc.constantFrom(2, 4, 99),
        into: fc.nat(),
        socket: fc.nat(),
        isFree: fc.boolean(),
      }),
      { minLength: 2, maxLength: 5 },
    ),
  )
  .map(([pins, drawn]): Layout => {
    const lines = ['GND', '+12', 'tone', '', 'GND', '+12', '', 'clock', 'left', 'right'];
    const kinds = drawn.map(({ ways, plugWays }, i): RibbonKind => {
      const plug = { atMm: 0, type: 'plug', ways: Math.min(plugWays, pins) } as const;
      const sockets = ways.map((most, k) => ({ atMm: 60 * (k + 1), ways: Math.min(most, pins) }));
      return { id: `k${i}`, name: `Kind ${i}`, bus: 'any', lay: 'loose', connectors: [plug, ...sockets] };
    });
    const ribbons = drawn.map(({ into, socket, isFree }, i): Ribbon => {
      const other = into % Math.max(1, i);
      const connector = 1 + (socket % ((kinds[other]?.connectors.length ?? 2) - 1));
      const seats = i === 0 || isFree ? [] : [{ connector: 0, on: { ribbon: `w${other}`, connector } }];
      return { id: `w${i}`, kind: `k${i}`, seats };
    });
    return {
      format: 'ribbonwright',
      version: 1,
      title: 'Plugged',
      kit: {
        voltages: [{ id: '+12', volts: 12 }],
        buses: [{ id: 'any', name: 'Any', pinout: lines.slice(0, pins) }],
        modules: [],
        ribbons: kinds,
      },
      takes: [{ id: 't', name: 'T', rows: [], supplies: [], modules: [], ribbons }],
    };
  });

const anyLayout = fc.oneof(arbitraryLayout, plugged);

describe('any take', () => {
  it('beeps between exactly those open contacts that conductors and joints connect', () => {
    const tested = { beeps: 0, joined: 0 };
    const property = fc.property(anyLayout, ({ kit, takes }) => {
      for (const one of takes) {
        const whole = deriveTake(kit, one);
        for (const harness of whole.harnesses) {
          const { points, nets } = continuityOf(harness, whole.kit);
          const netAt = new Map<string, number>();
          nets.forEach(({ points: some, pin }, i) => {
            for (const { ribbon, connector } of some) netAt.set(`${ribbon.id} ${connector} ${pin - 1}`, i);
          });
          const contacts = points.flatMap(({ ribbon, connector }) =>
            Array.from(
              { length: ribbon.facts.ways[connector] ?? 0 },
              (_, pin) => [ribbon.id, connector, pin] as const,
            ),
          );
          expect(netAt.size).toBe(contacts.length);
          for (const contact of contacts) {
            const from = reached(whole, contact);
            for (const other of contacts) {
              const beeps = netAt.get(contact.join(' ')) === netAt.get(other.join(' '));
              expect(beeps).toBe(from.has(other.join(' ')));
              if (beeps && contact !== other) tested.beeps++;
              if (beeps && contact[0] !== other[0]) tested.joined++;
            }
          }
        }
      }
    });
    fc.assert(property, runs(60));
    expect(tested.beeps).toBeGreaterThan(100);
    expect(tested.joined).toBeGreaterThan(10);
  });

  it('has the line of each header under the pins that beep to it', () => {
    const property = fc.property(anyLayout, ({ kit, takes }) => {
      for (const one of takes) {
        const whole = deriveTake(kit, one);
        for (const harness of whole.harnesses) {
          const { nets, supplies } = continuityOf(harness, whole.kit);
          for (const joint of harness.ribbons.flatMap(({ uses }) => uses.flat())) {
            if (!joint.conducts || !isHeaderJoint(joint)) continue;
            const under = linesUnder(joint.on);
            for (const { points, pin } of nets) {
              const touches = points.some(
                ({ ribbon, connector }) => ribbon === joint.ribbon && connector === joint.connector,
              );
              const line = under[pin - 1] ?? '';
              if (!touches || (line !== GND && !whole.kit.voltages.has(line))) continue;
              expect(supplies.find((supply) => supply.line === line)?.pins).toContain(pin);
            }
          }
        }
      }
    });
    fc.assert(property, runs(60));
  });

  it('names as neighbours only what must not beep, each way round', () => {
    const property = fc.property(anyLayout, ({ kit, takes }) => {
      for (const one of takes) {
        const whole = deriveTake(kit, one);
        for (const harness of whole.harnesses) {
          const { nets } = continuityOf(harness, whole.kit);
          nets.forEach(({ besides, pin }, i) => {
            for (const k of besides) {
              expect(k).not.toBe(i);
              expect(Math.abs((nets[k]?.pin ?? 0) - pin)).toBeLessThanOrEqual(2);
              expect(nets[k]?.besides).toContain(i);
            }
          });
        }
      }
    });
    fc.assert(property, runs(60));
  });
});
