import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Facing } from '../../../app/rehearsal/facing.ts';
import { plugDrag } from '../../../app/rehearsal/plug-drag.ts';
import { afterKey } from '../../../app/rehearsal/plug-keys.ts';
import {
  HOME,
  isSamePosition,
  misplugOf,
  movedBy,
  type Position,
  positionOf,
  reachOf,
  turnedOver,
} from '../../../app/rehearsal/position.ts';
import { readySteps } from '../../../app/rehearsal/ready-steps.ts';
import type { Pointer } from '../../../app/tools/pointer.ts';
import { pinMap } from '../../../src/wiring/pin-map.ts';

/** A module's header with pin 1 below, as most have it: even pins left, pairs count upward. */
const PIN1_DOWN: Facing = { pin1Up: false, oddLeft: false, from: 'Seen from the rear' };
const PIN1_UP: Facing = { pin1Up: true, oddLeft: true, from: 'Seen from the rear' };
const PITCH = { x: 70, y: 30 };

const pointer = (x: number, y: number): Pointer => ({
  x,
  y,
  id: 1,
  kind: 'touch',
  button: 0,
  shift: false,
  alt: false,
  mod: false,
});

function hold(facing: Facing, from: Position = HOME) {
  let shown = from;
  const reach = reachOf(10, 10, HOME);
  const tool = plugDrag({ from, reach, facing, pitch: PITCH, show: (position) => (shown = position) });
  return { tool, shown: () => shown };
}

describe('a connector in the hand', () => {
  test('snaps to the pin nearest to it, and stays where it is let go', () => {
    const { tool, shown } = hold(PIN1_DOWN);
    tool.down(pointer(100, 100));
    tool.move(pointer(100 + 34, 100 - 14));
    expect(shown()).toEqual(HOME);
    tool.move(pointer(100 - 36, 100 - 16));
    expect(shown()).toEqual({ turned: false, rows: 1, pairs: 1 });
    tool.up(pointer(64, 84));
    tool.move(pointer(100, 100));
    expect(shown()).toEqual({ turned: false, rows: 1, pairs: 1 });
  });

  test('goes the other way on pins where pin 1 is above, as the hand goes', () => {
    const { tool, shown } = hold(PIN1_UP);
    tool.down(pointer(0, 0));
    tool.move(pointer(70, 60));
    expect(shown()).toEqual({ turned: false, rows: 1, pairs: 2 });
  });

  test('springs back when it is called off, and is dead then', () => {
    const from = { turned: true, rows: 0, pairs: -1 };
    const { tool, shown } = hold(PIN1_DOWN, from);
    tool.down(pointer(0, 0));
    tool.move(pointer(70, 90));
    expect(shown()).not.toEqual(from);
    tool.cancel();
    expect(shown()).toEqual(from);
    tool.move(pointer(70, 90));
    expect(shown()).toEqual(from);
  });
});

describe('keys', () => {
  const reach = reachOf(10, 10, HOME);
  const press = (facing: Facing, ...keys: string[]): Position =>
    keys.reduce((at, key) => afterKey(key, at, facing, reach) ?? at, HOME);

  test.each([
    [PIN1_DOWN, 'ArrowLeft', { rows: 1, pairs: 0 }],
    [PIN1_DOWN, 'ArrowUp', { rows: 0, pairs: 1 }],
    [PIN1_UP, 'ArrowLeft', { rows: -1, pairs: 0 }],
    [PIN1_UP, 'ArrowUp', { rows: 0, pairs: -1 }],
  ])('%o: %s', (facing, key, to) => {
    expect(press(facing, key)).toEqual({ turned: false, ...to });
  });

  test('arrows stop where nothing would touch any more, or nobody would plug it', () => {
    expect(press(PIN1_DOWN, 'ArrowLeft', 'ArrowLeft', 'ArrowLeft').rows).toBe(1);
    expect(press(PIN1_DOWN, ...Array(9).fill('ArrowDown')).pairs).toBe(-3);
    expect(reachOf(4, 16, HOME).pairs).toBe(1);
    expect(reachOf(10, 10, { turned: false, rows: 0, pairs: 4 }).pairs).toBe(4);
  });

  test('R or space turns it where it is, Home takes it home, others mean nothing', () => {
    expect(press(PIN1_DOWN, 'ArrowUp', 'r')).toEqual({ turned: true, rows: 0, pairs: 1 });
    expect(press(PIN1_DOWN, 'R', ' ')).toEqual(HOME);
    expect(press(PIN1_DOWN, 'ArrowUp', 'r', 'Home')).toEqual(HOME);
    expect(afterKey('x', HOME, PIN1_DOWN, reach)).toBeUndefined();
  });
});

describe('positions', () => {
  const pairs = fc.integer({ min: 1, max: 25 });
  const step = fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -30, max: 30 }));

  test('wherever it can be moved, either way round, turning twice brings it back, and some contact touches', () => {
    fc.assert(
      fc.property(pairs, pairs, fc.boolean(), fc.array(step), (a, b, turned, steps) => {
        const [contacts, pins] = [2 * a, 2 * b];
        const reach = reachOf(contacts, pins, HOME);
        const at = steps.reduce<Position>((from, [r, p]) => movedBy(from, r, p, reach), { ...HOME, turned });
        expect(turnedOver(turnedOver(at))).toEqual(at);
        for (const each of [at, turnedOver(at)]) {
          expect(pinMap(contacts, pins, misplugOf(each)).some((pin) => pin !== undefined)).toBe(true);
          expect(positionOf(misplugOf(each))).toEqual(each);
        }
      }),
    );
  });
});

describe('ready steps', () => {
  const labels = (drawn: Position, facing = PIN1_DOWN, pins = 10) =>
    readySteps(drawn, facing, reachOf(pins, pins, drawn)).map(
      ({ label, isDrawn }) => `${label}${isDrawn ? ' (drawn)' : ''}`,
    );
  const USUAL = ['As it belongs', 'Turned', 'One row off', 'One pair up', 'One pair down'];

  test('the usual mistakes; those of two pins have no pair to go to', () => {
    expect(labels(HOME)).toEqual(USUAL);
    expect(labels(HOME, PIN1_DOWN, 2)).toEqual(USUAL.slice(0, 3));
  });

  test('one row off is the row that the drawing has it off; what is no usual mistake stands by itself', () => {
    const drawn = { turned: false, rows: -1, pairs: 0 };
    expect(labels(drawn)).toEqual(USUAL.with(2, 'One row off (drawn)'));
    expect(
      readySteps(drawn, PIN1_DOWN, reachOf(10, 10, drawn)).some(({ at }) => isSamePosition(at, drawn)),
    ).toBe(true);
    expect(labels({ turned: false, rows: 1, pairs: 2 })).toEqual([...USUAL, 'As drawn (drawn)']);
  });

  test.each([PIN1_DOWN, PIN1_UP])('up is up on the screen: %o', (facing) => {
    const up = readySteps(HOME, facing, reachOf(10, 10, HOME)).find(({ label }) => label === 'One pair up');
    expect(up?.at).toEqual(afterKey('ArrowUp', HOME, facing, reachOf(10, 10, HOME)));
  });
});
