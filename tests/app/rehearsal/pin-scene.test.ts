import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Facing, facingOf } from '../../../app/rehearsal/facing.ts';
import { groupsOf, levelOf, tiedThrough } from '../../../app/rehearsal/groups.ts';
import { meetsOf, ranges } from '../../../app/rehearsal/meets.ts';
import { pinScene } from '../../../app/rehearsal/pin-scene.ts';
import { HOME, misplugOf, type Position, reachOf } from '../../../app/rehearsal/position.ts';
import {
  freeContactsWords,
  groupWords,
  openPinsWords,
  verdictWords,
} from '../../../app/rehearsal/verdict-words.ts';
import { example, kind, onBoard, onModule, powerHeader, ribbon } from '../../../src/checks/example.ts';
import type { Rehearsal } from '../../../src/checks/rehearsal.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
import type { Header, Layout } from '../../../src/layout/layout.ts';
import { deriveTake } from '../../../src/wiring/derive.ts';
import { joinLines, linksOf } from '../../../src/wiring/joined-lines.ts';
import { mishapOf } from '../../../src/wiring/mishap.ts';
import { pinMap } from '../../../src/wiring/pin-map.ts';
import { seatAt } from '../../../src/wiring/rehearse.ts';

const isVoltage = (line: string): boolean => /^[+-]/.test(line);

/** Power headers: common practice, no source. */
const TEN = ['-12', '-12', 'GND', 'GND', 'GND', 'GND', 'GND', 'GND', '+12', '+12'];
const SIXTEEN = [...TEN, '+5', '+5', 'CV', 'CV', 'gate', 'gate'];

const PIN1_DOWN: Facing = { pin1Up: false, oddLeft: false, from: '' };
const PIN1_UP: Facing = { pin1Up: true, oddLeft: true, from: '' };

function rehearse(contacts: string[], pins: string[], position: Position): Rehearsal {
  const misplug = misplugOf(position);
  const map = pinMap(contacts.length, pins.length, misplug);
  const mishap = mishapOf(contacts, pins, misplug, isVoltage);
  const [links, joined] = [linksOf(contacts, pins, map), joinLines(contacts, pins, map)];
  return { contacts, pins, map, links, joined, mishap, told: '' };
}

const TURNED: Position = { ...HOME, turned: true };
const off = (rows: number, pairs: number): Position => ({ turned: false, rows, pairs });

describe('what is joined that belongs apart', () => {
  const groups = (contacts: string[], pins: string[], position: Position, isFed = false) =>
    groupsOf(rehearse(contacts, pins, position), isVoltage, isFed).map((group) => [
      group.letter,
      group.sort,
      group.ribbon.join(' '),
      group.module.join(' '),
    ]);

  // The truth table of reversal: common practice, no source, calculated by hand.
  test('a 16-way power lead turned: the short first', () => {
    expect(groups(SIXTEEN, SIXTEEN, TURNED)).toEqual([
      ['A', 'short', '+12 +5 CV', 'GND'],
      ['B', 'voltage', '-12', 'gate'],
      ['C', 'voltage', 'GND', '+12 +5 CV'],
      ['D', 'voltage', 'gate', '-12'],
    ]);
  });

  test('on a board, which has its voltages from elsewhere, these are shorted too', () => {
    expect(groups(SIXTEEN, SIXTEEN, TURNED, true).filter(([, sort]) => sort === 'short')).toEqual([
      ['A', 'short', 'GND', '+12 +5 CV'],
      ['B', 'short', '+12 +5 CV', 'GND'],
    ]);
    const rehearsal = rehearse(SIXTEEN, SIXTEEN, TURNED);
    expect(verdictWords(rehearsal, groupsOf(rehearsal, isVoltage, true)).text).toBe(
      'Shorted together: +12 V, +5 V, CV and GND',
    );
  });

  test('a 10-way power lead turned: the voltages change places, GND agrees', () => {
    expect(groups(TEN, TEN, TURNED)).toEqual([
      ['A', 'voltage', '-12', '+12'],
      ['B', 'voltage', '+12', '-12'],
    ]);
  });

  test('signals alone do no damage', () => {
    const [group] = groupsOf(rehearse(['a', 'b'], ['b', 'c'], HOME), isVoltage, true);
    expect(group && levelOf(group)).toBe('fault');
  });

  test.each([
    ['as it belongs', TEN, TEN, HOME],
    ['narrow on wide', TEN, SIXTEEN, HOME],
    ['one row off, where both pins of a pair carry the same', TEN, TEN, off(1, 0)],
    ['open pins join nothing', ['+12', ''], ['', 'x'], HOME],
  ])('none: %s', (_, contacts, pins, position) => {
    expect(groups(contacts, pins, position)).toEqual([]);
  });

  test('for any pinouts: shorts of the ribbon are the shorts of the mishap, and what touches is in one group at most', () => {
    const line = fc.constantFrom('+12', '-12', 'GND', '', 'mix', 'strike');
    const pinout = fc
      .array(line, { minLength: 2, maxLength: 20 })
      .map((lines) => lines.slice(lines.length % 2));
    const position = fc.record({
      turned: fc.boolean(),
      rows: fc.integer({ min: -1, max: 1 }),
      pairs: fc.integer({ min: -3, max: 3 }),
    });
    fc.assert(
      fc.property(pinout, pinout, position, (contacts, pins, at) => {
        const rehearsal = rehearse(contacts, pins, at);
        const found = groupsOf(rehearsal, isVoltage, false);
        const shorts = found.filter(({ sort }) => sort === 'short').map(({ ribbon: lines }) => lines);
        expect(shorts).toEqual(rehearsal.mishap.shorts);
        for (const side of ['ribbon', 'module'] as const) {
          const lines = found.flatMap((group) => group[side]);
          expect(new Set(lines).size).toBe(lines.length);
        }
        for (const { ribbon: a, module: b, links } of found) {
          expect(new Set(links.map((link) => link.ribbon))).toEqual(new Set(a));
          expect(new Set(links.map((link) => link.module))).toEqual(new Set(b));
        }
        const wrong = rehearsal.mishap.meets.filter((m) => m.ribbon !== '' && m.module !== '');
        const linked = found.flatMap(({ links }) => links).filter((link) => link.ribbon !== link.module);
        expect(linked.length).toBe(wrong.length);
      }),
    );
  });

  test('in words', () => {
    const words = (position: Position) => {
      const rehearsal = rehearse(SIXTEEN, SIXTEEN, position);
      const found = groupsOf(rehearsal, isVoltage, false);
      return {
        verdict: verdictWords(rehearsal, found),
        said: found.map((g) => groupWords(g, "the module's")),
      };
    };
    expect(words(HOME)).toEqual({ verdict: { text: 'All lines agree' }, said: [] });
    expect(words(TURNED)).toEqual({
      verdict: { level: 'damage', text: 'Shorted together: +12 V, +5 V and CV' },
      said: [
        "+12 V, +5 V and CV become one line, through the module's GND.",
        "−12 V on the module's gate.",
        "The module's +12 V, +5 V and CV become one line, through the ribbon's GND.",
        "gate on the module's −12 V.",
      ],
    });
    expect(words(off(0, 1)).said[0]).toBe(
      "−12 V and GND become one line, through the module's GND, and the module's +12 V with them.",
    );
    expect(words(off(1, 0)).verdict).toEqual({
      level: 'fault',
      text: 'No line meets another, but 8 contacts hang free',
    });
    const narrow = rehearse(TEN, SIXTEEN, HOME);
    expect(openPinsWords(narrow)).toBe('6 pins have no contact: +5 V, CV and gate.');
    expect(freeContactsWords(narrow)).toBeUndefined();
    expect(freeContactsWords(rehearse(TEN, TEN, off(0, 1)))).toBe('2 contacts hang free: +12 V.');
  });

  test('a tie goes through the lines that touch several', () => {
    const [short] = groupsOf(rehearse(SIXTEEN, SIXTEEN, TURNED), isVoltage, false);
    expect(short && tiedThrough(short, 'module')).toEqual(['GND']);
    expect(short && tiedThrough(short, 'ribbon')).toEqual([]);
  });
});

test('what meets what, each pair once, by number from 1', () => {
  expect(meetsOf(rehearse(TEN, TEN, TURNED))).toEqual([
    { ribbon: '-12', module: '+12', contacts: [1, 2], pins: [10, 9] },
    { ribbon: '+12', module: '-12', contacts: [9, 10], pins: [2, 1] },
    { ribbon: 'GND', module: 'GND', contacts: [3, 4, 5, 6, 7, 8], pins: [8, 7, 6, 5, 4, 3] },
  ]);
  expect(ranges([10, 3, 5, 4, 8])).toBe('3–5, 8, 10');
});

describe('where everything is drawn', () => {
  const scene = (contacts: string[], pins: string[], position: Position, facing = PIN1_DOWN) => {
    const rehearsal = rehearse(contacts, pins, position);
    const groups = groupsOf(rehearsal, isVoltage, false);
    const reach = reachOf(contacts.length, pins.length, HOME);
    return pinScene(rehearsal, groups, misplugOf(position), facing, reach);
  };

  /*
   * A header looked at from where the plug comes, pin 1 above: odd pins left, even pins right; turned by 180° with
   * pin 1 below (common practice, no source).
   */
  test('pin 1 below: it stands right, and the last pin left above; pin 1 above: the other way', () => {
    const at = (facing: Facing, pin: number) => {
      const { pins, header } = scene(TEN, TEN, HOME, facing);
      const found = pins[pin - 1];
      return [found?.column, (found?.row ?? 0) - header.row];
    };
    expect([1, 2, 9, 10].map((pin) => at(PIN1_DOWN, pin))).toEqual([
      [1, 4],
      [0, 4],
      [1, 0],
      [0, 0],
    ]);
    expect([1, 2, 9, 10].map((pin) => at(PIN1_UP, pin))).toEqual([
      [0, 0],
      [1, 0],
      [0, 4],
      [1, 4],
    ]);
  });

  test('a contact is drawn on the pin that it touches, and within the drawing wherever it goes', () => {
    const pinout = fc
      .integer({ min: 1, max: 25 })
      .map((n) => Array.from({ length: 2 * n }, (_, i) => `${i}`));
    fc.assert(
      fc.property(
        pinout,
        pinout,
        fc.boolean(),
        fc.integer({ min: -1, max: 1 }),
        fc.integer({ min: -3, max: 3 }),
        fc.constantFrom(PIN1_DOWN, PIN1_UP),
        (contacts, pins, turned, rows, pairs, facing) => {
          const reach = reachOf(contacts.length, pins.length, HOME);
          const most = Math.min(Math.abs(pairs), reach.pairs) * Math.sign(pairs);
          const position = { turned, rows, pairs: most };
          const drawn = scene(contacts, pins, position, facing);
          const { map } = rehearse(contacts, pins, position);
          drawn.contacts.forEach(({ column, row }, contact) => {
            expect(row).toBeGreaterThanOrEqual(0);
            expect(row).toBeLessThan(drawn.rows);
            expect(column).toBeGreaterThanOrEqual(-1);
            expect(column).toBeLessThanOrEqual(2);
            const under = drawn.pins.findIndex((pin) => pin.column === column && pin.row === row);
            expect(under).toBe(map[contact] ?? -1);
          });
        },
      ),
    );
  });

  test('pins of one group are strung together on each side; strings that cross lie apart', () => {
    const { chains } = scene(SIXTEEN, SIXTEEN, TURNED);
    expect(chains.map(({ group, column, lane, rows }) => [group.letter, column, lane, rows.length])).toEqual([
      ...['A', 'B', 'C', 'D'].map((letter) => [letter, 0, 0, 'AC'.includes(letter) ? 3 : 1]),
      ...['A', 'B', 'C', 'D'].map((letter) => [letter, 1, 0, 'AC'.includes(letter) ? 3 : 1]),
    ]);
    const mixed = scene(
      ['a', 'a', 'b', 'b', 'a', 'a', 'b', 'b'],
      ['c', 'c', 'd', 'd', 'c', 'c', 'd', 'd'],
      HOME,
    );
    expect(mixed.chains.map(({ group, column, lane }) => `${group.letter}${column}${lane}`)).toEqual([
      'A00',
      'B01',
      'A10',
      'B11',
    ]);
  });
});

describe('how the pins lie before the one who plugs', () => {
  const seat = (layout: Layout, id: string, connector: number) => {
    const [take] = layout.takes;
    const joint = take && seatAt(deriveTake(layout.kit, take), id, connector);
    if (!joint) throw new Error('no seat');
    return facingOf(joint.on);
  };
  const onHeader = (more: Partial<Header>) =>
    seat(
      example({
        kinds: [kind('own', { headers: [powerHeader(more)] })],
        modules: [['a', 'own', 40]],
        ribbons: [ribbon('r', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
      }),
      'r',
      1,
    );

  test('a module’s header is seen from the rear, with pin 1 where it is', () => {
    expect(onHeader({ pin1: 'down' })).toEqual({ pin1Up: false, oddLeft: false, from: 'Seen from the rear' });
    expect(onHeader({ pin1: 'up' })).toEqual({ pin1Up: true, oddLeft: true, from: 'Seen from the rear' });
  });

  test('a lying one is drawn upright, and told where its pin 1 is: left of the front is right of the rear', () => {
    expect(onHeader({ axis: 'horizontal', pin1: 'left' }).besides).toContain('pin 1 on the right');
    expect(onHeader({ axis: 'horizontal', pin1: 'right' }).besides).toContain('pin 1 on the left');
  });

  test('the holes of a socket mirror the pins of a header', () => {
    const facing = seat(demoLayout(), 't3', 0);
    expect(facing).toEqual({
      pin1Up: false,
      oddLeft: true,
      from: 'Seen from the side where it is plugged in',
    });
  });
});
