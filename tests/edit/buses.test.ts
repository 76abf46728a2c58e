import { describe, expect, it } from 'vitest';
import type { Bus, Layout, Limits } from '../../src/layout/layout.ts';
import { applied, littleLayout, module, refusalOf, ribbon, seats, takeOf } from '../support/little-layout.ts';

const layout = littleLayout({
  modules: [module('a', 'cobble', 0), module('b', 'cobble', 5)],
  ribbons: [ribbon('s', 'shore3', seats('a', 'b'))],
});
const busIn = ({ kit }: Layout, id: string) => kit.buses.find((bus) => bus.id === id) as Bus;
const shore = busIn(layout, 'shore');

describe('change-bus', () => {
  it('changes what lies on its pins and keeps what is not known; seats stay as they are', () => {
    const { later: _, ...known } = shore as Bus & { later: unknown };
    const bus: Bus = { ...known, name: 'Shoreline', pinout: ['+12', 'GND', '', 'mix'], membersPerHost: 4 };
    const changed = applied(layout, { type: 'change-bus', bus });
    expect(busIn(changed, 'shore')).toEqual({ ...bus, later: 1 });
    expect(changed.takes).toBe(layout.takes);
    expect(changed.kit.ribbons).toBe(layout.kit.ribbons);
    const free = applied(changed, { type: 'change-bus', bus: known });
    expect(busIn(free, 'shore')).toEqual(shore);
  });

  it('leaves no connector more contacts than there are conductors', () => {
    const lead = { id: 'n', name: 'Narrow', bus: 'shore', lay: 'loose', awg: 26 } as const;
    const connectors = [
      { atMm: 0, ways: 4 },
      { atMm: 99, ways: 2, later: 1 },
    ];
    const added = applied(layout, { type: 'add-ribbon-kind', kind: { ...lead, connectors } });
    const changed = applied(added, { type: 'change-bus', bus: { ...shore, pinout: ['GND', '+12'] } });
    expect(changed.kit.ribbons.at(-1)?.connectors).toEqual([{ atMm: 0 }, { atMm: 99, ways: 2, later: 1 }]);
    expect(changed.kit.ribbons[0]).toBe(layout.kit.ribbons[0]);
  });

  it('gives back the very layout where nothing changes', () => {
    expect(applied(layout, { type: 'change-bus', bus: structuredClone(shore) })).toBe(layout);
  });

  it.each([
    [{ ...shore, name: '' }, 'A bus needs a name'],
    [{ ...shore, pinout: ['GND'] }, 'Shore cannot be kept so: pinout: needs at least 2 entries'],
    [
      { ...shore, pinout: ['GND', '', ''] },
      'Shore cannot be kept so: pinout: pins come in pairs; there are 3',
    ],
  ])('refuses %j', (bus, words) => {
    expect(refusalOf(layout, { type: 'change-bus', bus })).toBe(words);
  });
});

describe('remove-bus', () => {
  it('takes a bus out that nothing has, and says where one is used', () => {
    const removed = applied(layout, { type: 'remove-bus', bus: 'surf' });
    expect(removed.kit.buses.map(({ id }) => id)).toEqual(['shore', 'tide']);
    expect(refusalOf(layout, { type: 'remove-bus', bus: 'shore' })).toBe(
      'Shore is in use: Cobble, Jetty, Shore 3, Extension, Lead and Board in Take',
    );
    expect(refusalOf(layout, { type: 'remove-bus', bus: 'tide' })).toBe('Tide is in use: Jetty');
  });
});

describe('add-voltage', () => {
  it('adds a voltage, and makes a supply line of what was a signal', () => {
    const voltage = { id: 'foam', volts: -15, dropMv: 100 };
    const { kit, takes } = applied(layout, { type: 'add-voltage', voltage });
    expect(kit.voltages.at(-1)).toBe(voltage);
    expect(kit.buses).toBe(layout.kit.buses);
    expect(takes).toBe(layout.takes);
  });

  it.each([
    [{ id: '+12', volts: 12 }, 'There is already a voltage "+12"'],
    [{ id: '', volts: 12 }, 'It cannot be kept so: id: must not be empty'],
    [{ id: '+9', volts: 0 }, '+9 cannot be kept so: volts: must not be 0'],
  ])('refuses %j', (voltage, words) => {
    expect(refusalOf(layout, { type: 'add-voltage', voltage })).toBe(words);
  });
});

describe('change-voltage', () => {
  const accepted = [
    { key: 'low-headroom/supply:supply/%2b12', why: 'seen' },
    { key: 'low-headroom/supply:supply' },
    { key: 'tight-bend/ribbon:s/shore' },
  ];
  const judged = littleLayout({
    supplies: [
      {
        ...(takeOf(layout).supplies[0] as Layout['takes'][number]['supplies'][number]),
        boards: [
          { id: 'board', name: 'Board', row: 'top', xMm: 0, headers: [], limits: { '+12': 500, '+15': 1 } },
        ],
      },
    ],
    accepted,
    built: {
      readings: [
        { on: 'supply', id: 'supply', line: '+12', volts: 11.98 },
        { on: 'supply', id: 'supply', line: '+15', ma: 3 },
      ],
    },
  });

  it('renames it on pins, in draws, ratings, limits, readings and notes put away, in one step', () => {
    const changed = applied(judged, {
      type: 'change-voltage',
      id: '+12',
      voltage: { id: '+12A', volts: 12 },
    });
    expect(changed.kit.voltages[0]).toEqual({ id: '+12A', volts: 12 });
    expect(busIn(changed, 'shore').pinout).toEqual(['GND', 'GND', '+12A', 'mix']);
    expect(busIn(changed, 'tide')).toBe(busIn(layout, 'tide'));
    expect(changed.kit.modules[0]?.draws).toEqual({ '+12A': 40 });
    expect(changed.kit.modules[1]).toBe(judged.kit.modules[1]);
    const [supply] = takeOf(changed).supplies;
    expect(supply?.ratings).toEqual({ '+12A': 1000 });
    expect(Object.entries(supply?.boards[0]?.limits ?? {})).toEqual([
      ['+12A', 500],
      ['+15', 1],
    ]);
    expect(takeOf(changed).accepted).toEqual([
      { key: 'low-headroom/supply:supply/%2b12A', why: 'seen' },
      ...accepted.slice(1),
    ]);
    expect(takeOf(changed).built?.readings).toEqual([
      { on: 'supply', id: 'supply', line: '+12A', volts: 11.98 },
      { on: 'supply', id: 'supply', line: '+15', ma: 3 },
    ]);
    expect(JSON.stringify(changed)).not.toContain('"+12"');
    const back = applied(changed, { type: 'change-voltage', id: '+12A', voltage: { id: '+12', volts: 12 } });
    expect(back).toEqual(judged);
  });

  it('changes its figures and leaves the rest the same', () => {
    const voltage = { id: '+12', volts: 12.2, dropMv: 100 };
    const changed = applied(judged, { type: 'change-voltage', id: '+12', voltage });
    expect(changed.kit.voltages[0]).toEqual(voltage);
    expect(changed.kit.buses).toBe(judged.kit.buses);
    expect(changed.takes).toBe(judged.takes);
    const same = { type: 'change-voltage', id: '+12', voltage: { id: '+12', volts: 12 } } as const;
    expect(applied(judged, same)).toBe(judged);
  });

  it.each([
    ['+15', 'There is already a voltage "+15"'],
    ['mix', '"mix" is a signal of Shore'],
    ['GND', 'GND cannot be kept so: id: GND is implied and no voltage'],
  ])('refuses to call it %s', (id, words) => {
    const edit = { type: 'change-voltage', id: '+12', voltage: { id, volts: 12 } } as const;
    expect(refusalOf(layout, edit)).toBe(words);
  });
});

describe('remove-voltage', () => {
  it('takes one out that nothing uses, with figures that say so and readings', () => {
    const [supply] = takeOf(layout).supplies;
    const rated = littleLayout({
      supplies: supply ? [{ ...supply, ratings: { '+12': 1, '+15': 0 } }] : [],
      built: { readings: [{ on: 'supply', id: 'supply', line: '+15', volts: 0 }] },
    });
    const removed = applied(rated, { type: 'remove-voltage', voltage: '+15' });
    expect(removed.kit.voltages).toEqual([{ id: '+12', volts: 12 }]);
    expect(takeOf(removed).supplies[0]?.ratings).toEqual({ '+12': 1 });
    expect(takeOf(removed).built).toBeUndefined();
    expect(removed.kit.modules).toBe(rated.kit.modules);
  });

  it('says where one is used', () => {
    expect(refusalOf(layout, { type: 'remove-voltage', voltage: '+12' })).toBe(
      '"+12" is in use: on pins of Shore, drawn by Cobble and given by Supply in Take',
    );
  });
});

describe('set-limits', () => {
  it('sets some, resets others, and leaves no empty record', () => {
    const set = applied(layout, { type: 'set-limits', limits: { skewMm: 5, headroom: 0 } });
    expect(set.kit.limits).toEqual({ skewMm: 5, headroom: 0 });
    expect(set.kit.buses).toBe(layout.kit.buses);
    const less = applied(set, { type: 'set-limits', limits: { skewMm: null } });
    expect(less.kit.limits).toEqual({ headroom: 0 });
    expect(applied(less, { type: 'set-limits', limits: { headroom: null } }).kit).toEqual(layout.kit);
    expect(applied(less, { type: 'set-limits', limits: { headroom: 0, ribbonMm: null } })).toBe(less);
  });

  it('refuses what a file could not be opened with', () => {
    expect(refusalOf(layout, { type: 'set-limits', limits: { ribbonMm: -1 } })).toBe(
      'The limits cannot be kept so: ribbonMm: must be at least 0, not -1',
    );
    const strange = { type: 'set-limits' as const, limits: { depth: 3 } as Partial<Limits> };
    expect(refusalOf(layout, strange)).toBe('There is no limit "depth"');
  });
});
