import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
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
import { powerOf } from '../../src/electrical/power.ts';
import { solveTake, solveWith } from '../../src/electrical/solution.ts';
import { areaMm2 } from '../../src/electrical/wire.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import type { WholeTake } from '../../src/wiring/whole-take.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { bigLayout } from '../support/big-take.ts';
import { byLibrary } from '../support/circuit.ts';
import { loopedLayout } from '../support/looped-layout.ts';
import { key, plainNetwork } from '../support/plain-network.ts';
import { runs } from '../support/runs.ts';
import { layoutWithLeads } from '../support/with-leads.ts';

const derive = ({ kit, takes }: Layout, at = 0): WholeTake => {
  const take = takes[at] ?? expect.fail('no take');
  return deriveTake(kit, take);
};
const solve = (layout: Layout) => solveTake(derive(layout));

/** Length of AWG 28 that has so much resistance at 20 °C, mm. */
const lengthMm = (ohm: number): number => ((ohm * areaMm2(28)) / 0.017241) * 1000;

const at = <T>(list: readonly T[], found: (item: T) => boolean): T =>
  list.find(found) ?? expect.fail('not there');

describe('a lead of 60 mΩ conductors and 20 mΩ contacts, 240 mA, two conductors there and six back', () => {
  // Worked by hand: 100 mΩ in each of the conductors; 2997/250 V, ground 1/250 V, 1498/125 V between them.
  const layout = example({
    limits: { ambientC: 20 },
    kinds: [kind('m', { draws: { '+12': 240 }, headers: [powerHeader()] })],
    ribbonKinds: [ribbonKind('way', [0, lengthMm(0.06)], { bus: 'power', lay: 'loose' })],
    modules: [['a', 'm', 40]],
    ribbons: [ribbon('l', 'way', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });
  const { modules, seats, segments, supplies, boards } = solve(layout);

  it('gives what W7 says', () => {
    const volts = modules.a ?? expect.fail('not reached');
    expect(volts['+12']).toBeCloseTo(2997 / 250, 9);
    expect(volts.GND).toBeCloseTo(1 / 250, 9);
    expect((volts['+12'] ?? 0) - (volts.GND ?? 0)).toBeCloseTo(1498 / 125, 9);
    expect(volts['-12']).toBeCloseTo(-12, 9);
  });

  it('lists every voltage of the kit and GND for each seat and segment, in order, zeros too', () => {
    const lines = ['+12', '-12', '+5', 'GND'];
    expect(seats.map(({ connector, line }) => [connector, line])).toEqual(
      [0, 1].flatMap((connector) => lines.map((line) => [connector, line])),
    );
    expect(segments.map(({ from, to, line }) => [from, to, line])).toEqual(lines.map((line) => [0, 1, line]));
    const told = (list: readonly { ma: number; perContactMa: number }[]) =>
      list.map(({ ma, perContactMa }) => [ma, perContactMa]);
    // Out of the ribbon is positive: it takes +12 V in at the board and gives it out at the module.
    expect(told(seats)).toEqual([
      [-240, -120],
      [0, 0],
      [0, 0],
      [240, 40],
      [240, 120],
      [0, 0],
      [0, 0],
      [-240, -40],
    ]);
    expect(told(segments)).toEqual([
      [240, 120],
      [0, 0],
      [0, 0],
      [-240, -40],
    ]);
    expect(supplies).toEqual({ supply: { '+12': 240, '-12': 0, '+5': 0 } });
    expect(boards).toEqual({ board: { '+12': 240, '-12': 0, '+5': 0 } });
  });
});

describe('a ribbon of ±12 V with a shared return and two modules', () => {
  // Sections of 50 mΩ for each voltage and 20 mΩ for the return, contacts included; worked by hand.
  const bus = {
    id: 'share',
    name: 'Share',
    pinout: ['+12', '+12', '-12', '-12', 'GND', 'GND', 'GND', 'GND', 'GND', ''],
  };
  const header = { id: 'h', bus: 'share', role: 'member', xMm: 10, yMm: 50, pin1: 'down' } as const;
  // Per section 99 mΩ of wire in each conductor and two contacts of half a milliohm: 100 mΩ over 2, 2 and 5.
  const draw = (plus: number, minus: number) => ({ draws: { '+12': plus, '-12': minus } });
  const layout = example({
    limits: { ambientC: 20, contactMilliohm: 0.5 },
    buses: [bus],
    kinds: [
      kind('m1', { ...draw(300, 100), headers: [header, { ...header, id: 'k', yMm: 90 }] }),
      kind('m2', { ...draw(200, 400), headers: [header] }),
    ],
    ribbonKinds: [ribbonKind('section', [0, lengthMm(0.099)], { bus: 'share', lay: 'loose' })],
    supplies: [{ ...SUPPLY, boards: [{ ...BOARD, headers: [{ id: 'p', bus: 'share', pin1: 'down' }] }] }],
    modules: [
      ['one', 'm1', 10],
      ['two', 'm2', 20],
    ],
    ribbons: [
      ribbon('first', 'section', [onBoard(0, 'p'), onModule(1, 'one', 'h')]),
      ribbon('second', 'section', [onModule(0, 'one', 'k'), onModule(1, 'two', 'h')]),
    ],
  });

  it('gives what W4 says: the currents in the return partly cancel', () => {
    const { modules, supplies } = solve(layout);
    expect(modules.one?.['+12']).toBeCloseTo(479 / 40, 9);
    expect(modules.one?.['-12']).toBeCloseTo(-479 / 40, 9);
    expect(modules.one?.GND).toBeCloseTo(0, 9);
    expect(modules.two?.['+12']).toBeCloseTo(2393 / 200, 9);
    expect(modules.two?.['-12']).toBeCloseTo(-2391 / 200, 9);
    expect(modules.two?.GND).toBeCloseTo(-1 / 250, 9);
    expect(supplies.supply).toEqual({ '+12': 500, '-12': 500, '+5': 0 });
  });
});

describe('what is reached', () => {
  const fed = (more: Parameters<typeof example>[0]) =>
    solve(
      example({ ribbons: [ribbon('l', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])], ...more }),
    );

  it('has an entry, and nothing else', () => {
    const { modules, seats, supplies } = fed({
      modules: [
        ['a', 'plain', 40],
        ['b', 'plain', 60],
      ],
      supplies: [{ ...SUPPLY, ratings: { '-12': 100 } }],
    });
    expect(modules).toEqual({ a: { '-12': -12, GND: 0 } });
    // A draw on a voltage that does not arrive is left out, and so is its return.
    expect(seats.every(({ ma }) => Object.is(ma, 0))).toBe(true);
    expect(supplies).toEqual({ supply: { '+12': 0, '-12': 0, '+5': 0 } });
  });

  it('leaves out a draw whose ground is not there, and counts an unknown one as none', () => {
    const onlyPlus = { id: 'plus', name: 'Plus', pinout: ['+12', '+12'] };
    const header = { id: 'power', bus: 'plus', role: 'member', xMm: 20, yMm: 90, pin1: 'down' } as const;
    const { supplies, modules } = fed({
      buses: [onlyPlus],
      kinds: [kind('half', { draws: { '+12': 50 }, headers: [header] })],
      ribbonKinds: [ribbonKind('two', [0, 100], { bus: 'plus', lay: 'loose' })],
      supplies: [{ ...SUPPLY, boards: [{ ...BOARD, headers: [{ id: 'p1', bus: 'plus', pin1: 'down' }] }] }],
      modules: [['a', 'half', 40]],
      ribbons: [ribbon('l', 'two', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
    });
    expect(supplies.supply?.['+12']).toBe(0);
    expect(modules).toEqual({ a: { '+12': 12 } });
    const unknown = fed({
      kinds: [kind('dark', { draws: { '+12': null, '-12': 30 }, headers: [powerHeader()] })],
      modules: [['a', 'dark', 40]],
    });
    expect(unknown.supplies.supply).toEqual({ '+12': 0, '-12': 30, '+5': 0 });
  });

  it('goes past a module by isolated headers that pass on, and not into it', () => {
    const past = (isolated: boolean) =>
      kind('past', {
        draws: { '+12': 100 },
        headers: [
          powerHeader({ id: 'in', isolated, passes: true }),
          powerHeader({ id: 'out', xMm: 30, isolated, passes: true }),
        ],
      });
    const through = (isolated: boolean) =>
      fed({
        kinds: [past(isolated)],
        modules: [
          ['a', 'past', 30],
          ['b', 'plain', 50],
        ],
        ribbons: [
          ribbon('l', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'in')]),
          ribbon('k', 'lead', [onModule(0, 'a', 'out'), onModule(1, 'b', 'power')]),
        ],
      });
    expect(Object.keys(through(true).modules)).toEqual(['b']);
    expect(through(true).supplies.supply?.['+12']).toBe(60);
    expect(Object.keys(through(false).modules)).toEqual(['a', 'b']);
    expect(through(false).supplies.supply?.['+12']).toBe(160);
  });

  it('brings a voltage that one supply lacks from another that is joined to it', () => {
    const second = { ...BOARD, id: 'board2', xMm: 340 };
    const { modules, supplies, boards } = solve(
      example({
        kinds: [kind('twice', { draws: {}, headers: [powerHeader(), powerHeader({ id: 'more', xMm: 30 })] })],
        supplies: [
          { ...SUPPLY, ratings: { '+12': 1000 } },
          { ...SUPPLY, id: 'second', ratings: { '-12': 1000 }, boards: [second] },
        ],
        modules: [
          ['a', 'twice', 20],
          ['b', 'plain', 50],
        ],
        ribbons: [
          ribbon('l', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')]),
          ribbon('m', 'lead', [onBoard(0, 'p1', 'board2'), onModule(1, 'a', 'more')]),
          ribbon('n', 'lead', [onBoard(0, 'p2', 'board2'), onModule(1, 'b', 'power')]),
        ],
      }),
    );
    expect(Object.keys(modules.b ?? {})).toEqual(['+12', '-12', 'GND']);
    expect(supplies.supply?.['+12']).toBeCloseTo(60, 9);
    expect(supplies.second?.['+12']).toBeCloseTo(0, 9);
    expect(boards.board?.['+12']).toBeCloseTo(60, 9);
  });
});

/** Everything that a solution says, held to the plain network of the same take as mathjs solves it. */
function compare(take: WholeTake): void {
  const { circuit, nodeOf, branchOf, reached } = plainNetwork(take);
  const { volts, amperes } = byLibrary(circuit);
  const { modules, seats, segments, supplies, boards } = solveTake(take);
  // 1e-9 of the largest there is: 12 V, or what all modules draw. The library loses some digits of its own where a
  // contact of 0.1 mΩ carries the difference of two voltages of 12 V.
  const most = Math.max(12, ...amperes.map(Math.abs));
  const near = (ours: number, theirs: number) => expect(Math.abs(ours - theirs)).toBeLessThan(1e-9 * most);
  for (const { id } of take.take.modules) {
    for (const line of take.kit.supplyLines) {
      const node = nodeOf.get(key('module', id, line)) as number;
      const ours = modules[id]?.[line];
      expect(ours !== undefined, `${id} ${line}`).toBe(reached.has(node));
      if (ours !== undefined) near(ours, volts[node] as number);
    }
  }
  const current = (branch: number | undefined) => (branch === undefined ? 0 : (amperes[branch] as number));
  for (const { ribbon, connector, line, ma } of seats)
    near(ma / 1000, current(branchOf.get(key('seat', ribbon, connector, line))));
  for (const { ribbon, from, line, ma } of segments)
    near(ma / 1000, current(branchOf.get(key('segment', ribbon, from, line))));
  const isNegative = (line: string) => (take.kit.voltages.get(line)?.volts ?? 0) < 0;
  for (const supply of take.take.supplies) {
    for (const line of take.kit.voltages.keys()) {
      const fed = seats.filter(({ ribbon, connector, line: own }) => {
        const joint = take.wiring.ribbonById.get(ribbon)?.uses[connector]?.find(({ conducts }) => conducts);
        const owner = joint?.on.type === 'header' ? joint.on.header.owner : undefined;
        return own === line && owner?.type === 'board' && owner.supply === supply;
      });
      const out = -fed.reduce((sum, { ma }) => sum + ma, 0);
      expect(supplies[supply.id]?.[line]).toBeCloseTo(isNegative(line) ? -out : out, 6);
      const ofBoards = supply.boards.reduce((sum, { id }) => sum + (boards[id]?.[line] ?? 0), 0);
      expect(supplies[supply.id]?.[line]).toBeCloseTo(ofBoards, 6);
    }
  }
}

describe('any take', () => {
  it('is solved as the plain network of it is by mathjs', () => {
    const property = fc.property(arbitraryLayout, ({ kit, takes }) => {
      for (const take of takes) compare(deriveTake(kit, take));
    });
    fc.assert(property, runs(40));
  });

  it('with loops, leads and two supplies is, too', () => {
    let loops = 0;
    const property = fc.property(loopedLayout, (layout) => {
      const take = derive(layout);
      compare(take);
      if (take.supplyNet.islands.some(({ feeds }) => feeds.length > 1)) loops++;
    });
    fc.assert(property, runs(60));
    expect(loops).toBeGreaterThan(20);
  });

  it('of leads is, too', () => {
    fc.assert(
      fc.property(layoutWithLeads, (layout) => compare(derive(layout))),
      runs(30),
    );
  });

  it('of the demo is, too', () => {
    for (const i of [0, 1]) compare(derive(demoLayout(), i));
  });

  it('is the same part by part as all at once', () => {
    const same = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-6);
    const property = fc.property(fc.oneof(arbitraryLayout, loopedLayout), ({ kit, takes }) => {
      for (const take of takes) {
        const derived = deriveTake(kit, take);
        const [parts, once] = [solveTake(derived), solveWith(derived, [])];
        expect(Object.keys(parts.modules).sort()).toEqual(Object.keys(once.modules).sort());
        parts.seats.forEach(({ ma }, i) => {
          same(ma, once.seats[i]?.ma ?? Number.NaN);
        });
        for (const [id, volts] of Object.entries(parts.modules))
          for (const [line, v] of Object.entries(volts)) same(v, once.modules[id]?.[line] ?? Number.NaN);
        for (const { ma, perContactMa } of [...parts.seats, ...parts.segments])
          expect(Object.is(ma, -0) || Object.is(perContactMa, -0)).toBe(false);
      }
    });
    fc.assert(property, runs(150));
  });

  it('grows with what it holds, and a part that stays is not worked out again', () => {
    const { kit, takes } = bigLayout(60);
    const [take] = takes;
    if (!take) throw new Error('no take');
    const before = powerOf(deriveTake(kit, take));
    const [first, ...others] = take.modules;
    if (!first) throw new Error('no module');
    const moved = { ...take, modules: [{ ...first, atHp: first.atHp + 0.5 }, ...others] };
    const after = powerOf(deriveTake(kit, moved));
    expect(after.parts.filter((part) => !before.parts.includes(part))).toHaveLength(1);
    expect(after.draws).toBe(before.draws);
  });
});

describe('boards with leads', () => {
  const leads = (more: Partial<typeof BOARD>) =>
    example({
      limits: { ambientC: 20 },
      supplies: [{ ...SUPPLY, boards: [{ ...BOARD, ...more }] }],
      modules: [
        ['a', 'plain', 20],
        ['b', 'plain', 50],
      ],
      ribbons: [
        ribbon('l', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')]),
        ribbon('m', 'lead', [onBoard(0, 'p2'), onModule(1, 'b', 'power')]),
      ],
    });

  it('lose for each module what all of them draw through the lead', () => {
    const ohm = 0.1;
    const with_ = solve(leads({ lead: { lengthMm: lengthMm(ohm), awg: 28 } })).modules;
    const without = solve(leads({})).modules;
    for (const id of ['a', 'b']) {
      expect((without[id]?.['+12'] ?? 0) - (with_[id]?.['+12'] ?? 0)).toBeCloseTo(0.12 * ohm, 9);
      expect((with_[id]?.GND ?? 0) - (without[id]?.GND ?? 0)).toBeCloseTo(0.12 * ohm, 9);
    }
  });
});

describe('something broken or bridged', () => {
  const layout = example({
    limits: { ambientC: 20 },
    kinds: [
      kind('m', { draws: { '+12': 240 }, headers: [powerHeader()] }),
      kind('v', { headers: [shoreHeader()] }),
    ],
    buses: [POWER16].slice(1),
    ribbonKinds: [ribbonKind('way', [0, lengthMm(0.06)], { bus: 'power', lay: 'loose' })],
    modules: [['a', 'm', 40]],
    ribbons: [ribbon('l', 'way', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });
  const take = derive(layout);

  it('an open contact leaves its current to the others', () => {
    const { seats, modules } = solveWith(take, [
      { type: 'open-contact', ribbon: 'l', connector: 1, contact: 8 },
    ]);
    const seat = at(seats, ({ connector, line }) => connector === 1 && line === '+12');
    expect([seat.ma, seat.perContactMa]).toEqual([expect.closeTo(240, 9), expect.closeTo(240, 9)]);
    // 20/2 + 60/2 + 20 mΩ there.
    expect(modules.a?.['+12']).toBeCloseTo(12 - 0.24 * 0.06, 9);
  });

  it('a broken conductor does, too, and all of them end the line', () => {
    const broken = (...conductors: number[]) =>
      solveWith(
        take,
        conductors.map((conductor) => ({ type: 'open-conductor', ribbon: 'l', from: 0, conductor }) as const),
      );
    expect(broken(9).segments[0]).toMatchObject({ line: '+12', perContactMa: expect.closeTo(240, 9) });
    expect(broken(8, 9).modules.a).not.toHaveProperty('+12');
    expect(broken(8, 9).supplies.supply?.['+12']).toBe(0);
    expect(broken(2, 3, 4, 5, 6, 7).supplies.supply?.['+12']).toBe(0);
  });

  it('a wire of a lead that is off ends the line at its board', () => {
    const off = solveWith(take, [{ type: 'open-lead', board: 'board', line: '+12' }]);
    expect(off.modules.a).toEqual({ '-12': -12, GND: 0 });
    expect(off.supplies.supply?.['+12']).toBe(0);
  });

  it('a short draws what wire and contacts let through', () => {
    // 80 mΩ over 2 there and over 6 back, and the touch of 20 mΩ; the module draws 0.24 A beside it.
    const idle = {
      ...layout,
      kit: { ...layout.kit, modules: layout.kit.modules.map((m) => ({ ...m, draws: {} })) },
    };
    const { supplies } = solveWith(derive(idle), [
      { type: 'short', ribbon: 'l', connector: 1, lines: ['+12', 'GND'] },
    ]);
    expect((supplies.supply?.['+12'] ?? 0) / 1000).toBeCloseTo(12 / (0.08 / 2 + 0.08 / 6 + 0.02), 6);
  });

  it('nothing that is not there changes nothing', () => {
    const none = solveWith(take, [
      { type: 'short', ribbon: 'l', connector: 7, lines: ['+12', 'GND'] },
      { type: 'short', ribbon: 'nobody', connector: 0, lines: ['+12', 'GND'] },
      { type: 'short', ribbon: 'l', connector: 1, lines: ['+12', '+5'] },
      { type: 'open-lead', board: 'nobody', line: '+12' },
    ]);
    expect(none.supplies).toEqual(solveTake(take).supplies);
  });
});
