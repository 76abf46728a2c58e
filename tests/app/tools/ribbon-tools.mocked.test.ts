import { describe, expect, test, vi } from 'vitest';
import { aimDrawn } from './aim-drawn.ts';
import { demoWithout, on, withRibbon } from './ribbon-rack.ts';

vi.mock(import('../../../app/canvas/draw/aim.ts'), async (original) => ({
  ...(await original()),
  drawAim: vi.fn(),
}));

const between = (a: { x: number; y: number }, b: { x: number; y: number }): [number, number] => [
  b.x - a.x,
  b.y - a.y,
];

describe('a connector of a selected ribbon', () => {
  test('is pulled off, shows where it could go, and is lifted when it is let go over nothing', () => {
    const s1 = withRibbon('s1');
    s1.driver.down(s1.connector(3)).move(30, 90);
    const moving = s1.editor.gestures.get();
    expect(s1.seats(true)[3]).toBeUndefined();
    expect(aimDrawn(s1.editor)).toMatchObject({ ribbon: 's1', connector: 3 });
    expect(aimDrawn(s1.editor)?.heldAt).toBeDefined();
    expect(aimDrawn(s1.editor)?.places).toHaveLength(1);
    expect(moving?.notes.map(({ check }) => check)).toContain('unpowered');
    expect(s1.seats()[3]).toEqual(on('cobble-1'));
    s1.driver.up();
    expect(s1.seats()[3]).toBeUndefined();
    expect(s1.driver.steps).toBe(1);
    s1.editor.layouts.undo();
    expect(s1.seats()[3]).toEqual(on('cobble-1'));
  });

  test('snaps to the nearest header within reach, and follows with its findings', () => {
    const s1 = withRibbon('s1', demoWithout('s2'));
    const from = s1.connector(0);
    s1.driver.down(from).move(...between(from, s1.header('jetty-b', 'shore')));
    expect(s1.seats(true)[0]).toEqual(on('jetty-b'));
    expect(aimDrawn(s1.editor)?.places).toBeDefined();
    expect(aimDrawn(s1.editor)?.heldAt).toBeUndefined();
    expect(s1.editor.gestures.get()?.notes.map(({ check }) => check)).toContain('off-pitch');
    s1.driver.up();
    expect(s1.seats()[0]).toEqual(on('jetty-b'));
  });

  test('brought back to where it sat, nothing has happened', () => {
    const s1 = withRibbon('s1');
    s1.driver.down(s1.connector(3)).move(60, 60).move(-60, -60).up();
    expect(s1.seats()[3]).toEqual(on('cobble-1'));
    expect(s1.driver.steps).toBe(0);
  });

  test('pulled where a plug of another ribbon sits, it is the plug that comes out', () => {
    const t1 = withRibbon('t1');
    t1.driver.down(t1.connector(0)).move(20, 80).up();
    expect(
      t1.driver.take.ribbons.find(({ id }) => id === 't2')?.seats.map(({ connector }) => connector),
    ).toEqual([0]);
    const t2 = withRibbon('t2', t1.editor.layouts.layout());
    const from = t2.connector(2);
    t2.driver
      .down(from)
      .move(9, 40)
      .move(...between({ x: from.x + 9, y: from.y + 40 }, t1.connector(0)));
    expect(t2.seats(true)[2]).toEqual({ ribbon: 't1', connector: 0 });
  });

  test('of a lead goes to another header of the board', () => {
    const l4 = withRibbon('l4');
    const headersApart = l4.driver.hp(13.6 / 5.08);
    l4.driver.down(l4.connector(0)).move(-headersApart).up();
    expect(l4.seats()).toEqual({ 0: { board: 'board-1', header: '5' }, 1: on('gull-1', 'power') });
  });

  test('of a ribbon that is not selected, or locked, is left alone: the module moves', () => {
    const s1 = withRibbon('s1');
    const at = s1.connector(3);
    s1.editor.session.setState({ selection: new Set() });
    s1.driver.down(at).move(-s1.driver.hp(60), 0).up();
    expect(s1.seats()[3]).toEqual(on('cobble-1'));
    expect(s1.driver.place('cobble-1')[1]).not.toBe(15);

    const fast = withRibbon('s1');
    fast.editor.layouts.run({
      type: 'lock-ribbon',
      take: fast.driver.take.id,
      ribbons: ['s1'],
      locked: true,
    });
    fast.driver.down(fast.connector(3)).move(-fast.driver.hp(60), 0).up();
    expect(fast.seats()[3]).toEqual(on('cobble-1'));
    expect(fast.driver.place('cobble-1')[1]).not.toBe(15);
  });
});

describe('the band of a selected ribbon', () => {
  test('slides the whole ribbon along, by the seat nearest to the hand', () => {
    const s1 = withRibbon('s1');
    s1.driver.down(s1.band(3, 4)).move(-s1.driver.hp(5), 0);
    expect(s1.seats(true)).toEqual({ 3: on('cobble-2'), 4: on('cobble-1') });
    s1.driver.cancel();

    const free = withRibbon('s3', demoWithout('s1'));
    const by = between(free.header('cobble-5', 'shore'), free.header('cobble-1', 'shore'));
    free.driver.down(free.band(0, 1)).move(...by);
    expect(free.seats(true)).toEqual({ 0: on('cobble-2'), 1: on('cobble-1'), 2: on('jetty-a') });
    expect(free.editor.gestures.get()?.notes.filter(({ level }) => level === 'damage')).toEqual([]);
    free.driver.up();
    expect(free.driver.steps).toBe(1);
  });

  test('stays as it was near where it lay', () => {
    const s1 = withRibbon('s1');
    s1.driver.down(s1.band(2, 3)).move(8, 3).up();
    expect(s1.driver.steps).toBe(0);
  });

  test('of a lead does not slide: the module beneath moves', () => {
    const l4 = withRibbon('l4');
    const { driver } = l4;
    const run = l4.connector(1);
    driver
      .down({ x: run.x, y: run.y + 22 * (driver.hp(1) / 5.08) })
      .move(driver.hp(1))
      .up();
    expect(l4.seats()[1]).toEqual(on('gull-1', 'power'));
  });
});

describe('tap and tap', () => {
  test.each(['touch', 'mouse'] as const)('a connector, then a header: seated there, by %s', (kind) => {
    const s1 = withRibbon('s1', demoWithout('s2'));
    s1.driver.with({ kind }).click(s1.connector(0));
    expect(s1.chosen()).toEqual({ ribbon: 's1', connector: 0 });
    s1.driver.click(s1.header('boulder-2', 'shore'));
    expect(s1.seats()[0]).toEqual(on('boulder-2'));
    expect(s1.driver.steps).toBe(1);
    expect(s1.driver.selection).toEqual(['ribbon:s1']);
  });

  test('the connector again lets it go, another one is chosen instead, elsewhere selects as ever', () => {
    const s1 = withRibbon('s1');
    s1.driver.click(s1.connector(2)).click(s1.connector(3));
    expect(s1.chosen()?.connector).toBe(3);
    s1.driver.click(s1.connector(3));
    expect(s1.chosen()).toBeNull();
    s1.driver.click(s1.connector(3)).click(s1.driver.on('gull-1'));
    expect(s1.driver.selection).toEqual(['module:gull-1']);
    expect(s1.chosen()).toBeNull();
  });

  test('a header that does not fit is no place for it', () => {
    const s1 = withRibbon('s1');
    s1.driver.click(s1.connector(3)).click(s1.header('cobble-4', 'power'));
    expect(s1.seats()[3]).toEqual(on('cobble-1'));
    expect(s1.driver.selection).toEqual(['module:cobble-4']);
  });

  test('under a finger the nearest of several connectors counts', () => {
    const s1 = withRibbon('s1');
    const at = s1.connector(3);
    s1.driver.with({ kind: 'touch' }).click({ x: at.x + 3, y: at.y });
    expect(s1.chosen()?.connector).toBe(3);
  });
});

describe('called off', () => {
  const states: [string, (rack: ReturnType<typeof withRibbon>) => unknown][] = [
    ['pressed', (rack) => rack.driver.down(rack.connector(3))],
    ['pulled off', (rack) => rack.driver.down(rack.connector(3)).move(50, 90)],
    ['snapped', (rack) => rack.driver.down(rack.connector(3)).move(50, 90).move(-50, -90)],
    ['slid', (rack) => rack.driver.down(rack.band(3, 4)).move(-rack.driver.hp(5))],
  ];

  test.each(states)('while %s, all is as it was', (_, reach) => {
    const rack = withRibbon('s1');
    const before = rack.editor.layouts.layout();
    reach(rack);
    rack.driver.cancel();
    expect(rack.driver.isMoving).toBe(false);
    expect(rack.editor.layouts.layout()).toBe(before);
    rack.driver.move(20, 20).up();
    expect(rack.editor.layouts.layout()).toBe(before);
    expect(rack.driver.steps).toBe(0);
  });
});
