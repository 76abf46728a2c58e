import { describe, expect, test } from 'vitest';
import { shownAnalysis } from '../../../app/editor.ts';
import { sheetNow, viewportNow } from '../../../app/store/view.ts';
import type { Point } from '../../../app/tools/pointer.ts';
import { headerPoint } from '../../../src/drawing/sheet.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
import type { Layout, Module, Ribbon, RibbonKind, Take } from '../../../src/layout/layout.ts';
import { Driver } from '../driver.ts';

interface Changes {
  readonly keep?: readonly string[];
  readonly places?: Readonly<Record<string, number>>;
  readonly kinds?: readonly RibbonKind[];
}

/** The demo's first take with some of its ribbons only. */
function demo({ keep = [], places = {}, kinds = [] }: Changes = {}): Layout {
  const layout = demoLayout();
  const take = layout.takes[0] as Take;
  return {
    ...layout,
    kit: { ...layout.kit, ribbons: [...layout.kit.ribbons, ...kinds] },
    takes: [
      {
        ...take,
        modules: take.modules.map(
          (module): Module => ({ ...module, atHp: places[module.id] ?? module.atHp }),
        ),
        ribbons: take.ribbons.filter(({ id }) => keep.includes(id)),
      },
    ],
  };
}

/** A hand over the demo, with a kind from the stock in it or none. */
function hand(kind: string | null, changes?: Changes) {
  const driver = new Driver(demo(changes));
  if (kind) driver.editor.session.setState({ inHand: `ribbon:${kind}` });
  const on = (owner: string, header: string): Point => {
    const { places } = shownAnalysis(driver.editor).derived;
    const thing = places.moduleById.get(owner) ?? places.boardById.get(owner);
    const found = thing?.headers.find(({ id }) => id === header);
    if (!found) throw new Error(`no header ${header} on ${owner}`);
    const { x, y } = headerPoint(sheetNow(driver.editor), found);
    const viewport = viewportNow(driver.editor);
    return { x: viewport.x + x, y: viewport.y + y };
  };
  const to = ({ x, y }: Point, from: Point): Driver => driver.move(x - from.x, y - from.y);
  const draw = (a: Point, b: Point): Driver => {
    driver.down(a);
    return to(b, a);
  };
  return { driver, on, draw, to };
}

const seatsOf = ({ seats }: Pick<Ribbon, 'seats'>): string[] =>
  seats.map(
    ({ connector, on }) =>
      `${connector} ${'module' in on ? on.module : 'board' in on ? on.board : on.ribbon}`,
  );

const laid = ({ take }: Driver): string[][] => take.ribbons.map(seatsOf);
const shown = ({ editor }: Driver): string[][] =>
  (editor.gestures.get()?.derived.take.ribbons ?? []).map(seatsOf);
const hint = ({ editor }: Driver) => editor.hints.getState().hint;
const said = (driver: Driver): string =>
  (hint(driver)?.words().lines ?? []).map(({ text }) => text).join(' | ');

const off = (point: Point, dx: number, dy: number): Point => ({ x: point.x + dx, y: point.y + dy });

const UNLAID: readonly string[][] = [];

describe('a flat ribbon from the stock', () => {
  test('lies over the headers that the hand passes, and is laid as shown, with one step', () => {
    const { driver, on, draw } = hand('shore-5');
    draw(on('jetty-a', 'shore'), off(on('cobble-2', 'shore'), 0, 20));
    expect(shown(driver)).toEqual([['2 cobble-2', '3 cobble-1', '4 jetty-a']]);
    expect(said(driver)).toContain('3 of 5 land');
    expect(driver.take.ribbons).toEqual([]);
    driver.up();
    expect(laid(driver)).toEqual([['2 cobble-2', '3 cobble-1', '4 jetty-a']]);
    expect(driver.steps).toBe(1);
    expect(driver.selection).toEqual(['ribbon:shore-5-1']);
    expect(hint(driver)).toBeNull();
    expect(driver.editor.session.getState().spoken).toMatch(/^S1 laid: 3 of 5 connectors land\./);
    driver.editor.layouts.undo();
    expect(driver.take.ribbons).toEqual([]);
  });

  test('coming back takes connectors off again', () => {
    const { driver, on, draw, to } = hand('shore-5');
    const start = on('boulder-1', 'shore');
    draw(start, on('jetty-a', 'shore'));
    expect(shown(driver)[0]).toHaveLength(4);
    to(off(on('cobble-2', 'shore'), 0, 3), on('jetty-a', 'shore'));
    expect(shown(driver)[0]).toEqual(['0 boulder-1', '2 cobble-2']);
  });

  test('the hint says that a connector is a row off; it stays free when let go', () => {
    const { driver, on, draw } = hand('shore-5', { places: { 'cobble-1': 15.5 } });
    draw(on('jetty-a', 'shore'), off(on('boulder-1', 'shore'), 0, 40));
    expect(said(driver)).toContain('connector 4 is 2.54 mm (1 row) off Cobble 1');
    expect(
      hint(driver)
        ?.words()
        .connectors.map((each) => each.shown),
    ).toEqual(['lands', 'free', 'lands', 'misses', 'lands']);
    driver.up();
    expect(laid(driver)).toEqual([['0 boulder-1', '2 cobble-2', '4 jetty-a']]);
  });

  test('let go exactly on the header that it misses, it is put there', () => {
    const { driver, on, draw } = hand('shore-5', { places: { 'cobble-1': 15.5 } });
    draw(on('jetty-a', 'shore'), on('cobble-1', 'shore'));
    driver.up();
    expect(laid(driver)).toEqual([['3 cobble-1', '4 jetty-a']]);
  });

  test('keys turn the stripe and begin with the next connector', () => {
    const { driver, on, draw } = hand('shore-7');
    draw(on('boulder-1', 'shore'), off(on('jetty-a', 'shore'), 0, 3));
    expect(shown(driver)).toEqual([['0 boulder-1', '2 cobble-2', '3 cobble-1', '4 jetty-a']]);
    expect(driver.toolbox.press('held-next-connector')).toBe(true);
    expect(shown(driver)).toEqual([['1 boulder-1', '3 cobble-2', '4 cobble-1', '5 jetty-a']]);
    expect(driver.toolbox.press('held-turn-stripe')).toBe(true);
    expect(hint(driver)?.words().title).toContain('stripe up');
    expect(said(driver)).toContain('stripe against pin 1 on 4 connectors');
    expect(driver.toolbox.press('q')).toBe(false);
    driver.up();
    expect(driver.take.ribbons[0]?.stripe).toBe('up');
  });

  test('says why it cannot start, and what would fit', () => {
    const { driver, on } = hand('shore-5', { keep: ['s3'] });
    driver.hover(on('jetty-a', 'tide'));
    expect(said(driver)).toMatch(/no Shore header \| Tide, .* would fit/);
    driver.hover(on('jetty-c', 'shore'));
    expect(said(driver)).toContain('something sits there already');
  });

  test('says when another kind would reach', () => {
    const { driver, on, draw } = hand('shore-3', { places: { 'cobble-1': 15.5 } });
    draw(on('jetty-a', 'shore'), off(on('cobble-2', 'shore'), 0, 40));
    expect(said(driver)).toMatch(/Shore, 3 bending would land 3/);
  });

  test('says when a host would have more members than it takes', () => {
    const kinds: RibbonKind[] = [
      {
        id: 'long',
        name: 'Long',
        bus: 'shore',
        lay: 'flat',
        bends: true,
        connectors: Array.from({ length: 9 }, (_, i) => ({ atMm: i * 27 })),
      },
    ];
    const places = {
      'cobble-1': 15,
      'cobble-2': 20,
      'cobble-3': 25,
      'cobble-4': 30,
      'boulder-1': 60,
      'jetty-b': 80,
    };
    const layout = { kinds, places: { ...places, 'boulder-2': 35 } };
    const { driver, on, draw } = hand('long', layout);
    const limited = driver.editor.layouts.layout();
    const buses = limited.kit.buses.map((bus) => (bus.id === 'shore' ? { ...bus, membersPerHost: 3 } : bus));
    driver.editor.layouts.replace({ ...limited, kit: { ...limited.kit, buses } }, 'limit');
    driver.editor.session.setState({ inHand: 'ribbon:long' });
    draw(on('jetty-a', 'shore'), off(on('cobble-4', 'shore'), 0, 20));
    expect(said(driver)).toContain('4th member of 3: more than the host takes');
    driver.up();
    expect(driver.take.ribbons[0]?.seats).toHaveLength(5);
  });

  test('an extension is plugged into a free socket and drawn on', () => {
    const { driver, on, draw } = hand('tide-more', { keep: ['t1'] });
    const jetty = on('jetty-a', 'tide');
    // T1 hangs 58 mm past Jetty A, to the left seen from the rear.
    const socket = off(jetty, -58 * viewportNow(driver.editor).scale, 0);
    draw(socket, on('jetty-b', 'tide'));
    driver.up();
    expect(laid(driver)).toEqual([
      ['1 jetty-a', '2 harbour'],
      ['0 jetty-b', '2 t1'],
    ]);
  });
});

describe('with nothing from the stock in hand', () => {
  test.each([
    ['from a module to a board', 'foghorn', 'power', 'board-1', '6'],
    ['from a board to a module', 'board-1', '6', 'foghorn', 'power'],
  ])('one drag lays the shortest lead that is owned: %s', (_, from, header, toOwner, toHeader) => {
    const { driver, on, draw } = hand(null);
    draw(on(from, header), on(toOwner, toHeader));
    expect(said(driver)).toMatch(/\d+ mm needed, 150 mm there/);
    driver.up();
    expect(driver.take.ribbons).toMatchObject([{ kind: 'lead-16-150', label: 'L1' }]);
    expect(laid(driver)).toEqual([['0 board-1', '1 foghorn']]);
    expect(driver.steps).toBe(1);
  });

  test('a lead needs a free header at its other end; says how much length it takes', () => {
    const { driver, on, draw } = hand(null);
    const start = on('foghorn', 'power');
    draw(start, off(start, 40, 190));
    expect(said(driver)).toMatch(/\d+ mm needed to here/);
    driver.up();
    expect(driver.take.ribbons).toEqual([]);
    expect(driver.steps).toBe(0);
    expect(driver.editor.session.getState().spoken).toContain('Nothing is laid');
  });

  test('says when none in the stock reaches', () => {
    const { driver, on, draw } = hand(null);
    draw(on('harbour', 'power'), on('board-2', '8'));
    expect(said(driver)).toMatch(/none in the stock reaches: \d+ mm needed, the longest is 600 mm/);
    driver.up();
    expect(driver.take.ribbons).toEqual([]);
  });

  test('a link header pulls a fitting flat ribbon, one that is owned', () => {
    const { driver, on, draw } = hand(null);
    draw(on('jetty-a', 'shore'), off(on('cobble-2', 'shore'), 0, 4));
    driver.up();
    expect(driver.take.ribbons).toMatchObject([{ kind: 'shore-3' }]);
    expect(laid(driver)[0]).toHaveLength(3);
  });

  test('a link header of another row is reached by a loose link', () => {
    const loose: RibbonKind = {
      id: 'loose',
      name: 'Tide, loose',
      bus: 'tide',
      lay: 'loose',
      connectors: [{ atMm: 0 }, { atMm: 500 }],
    };
    const { driver, on, draw } = hand(null, { kinds: [loose] });
    draw(on('jetty-b', 'tide'), on('jetty-c', 'tide'));
    driver.up();
    expect(driver.take.ribbons).toMatchObject([{ kind: 'loose' }]);
  });

  test('a press on a header in use still moves the module', () => {
    const { driver, on } = hand(null, { keep: ['s1'] });
    driver.down(on('jetty-a', 'shore')).move(driver.hp(-3)).up();
    expect(driver.take.ribbons).toHaveLength(1);
    expect(driver.place('jetty-a')[1]).not.toBe(10);
  });

  test('from the front modules are moved, whatever lies behind', () => {
    const { driver, on } = hand(null);
    driver.editor.session.setState({ side: 'front' });
    driver.down(on('foghorn', 'power')).move(driver.hp(4)).up();
    expect(driver.take.ribbons).toEqual([]);
    expect(driver.place('foghorn')[1]).toBe(86);
  });

  test('a finger moves the sheet, and rests on a header to draw', () => {
    const { driver, on, to } = hand(null);
    driver.with({ kind: 'touch' });
    const start = on('jetty-a', 'shore');
    driver.down(start).move(-80).up();
    expect(driver.take.ribbons).toEqual([]);
    driver.editor.session.setState({ viewport: null });
    driver.down(start);
    driver.clock.pass(500);
    to(off(on('cobble-1', 'shore'), 0, 5), start).up();
    expect(laid(driver)).toHaveLength(1);
  });
});

describe('a lead with several connectors', () => {
  const flying: RibbonKind = {
    id: 'flying',
    name: 'Flying',
    bus: 'power-16',
    lay: 'loose',
    connectors: [{ atMm: 0 }, { atMm: 300 }, { atMm: 500, ways: 16 }, { atMm: 700 }],
  };

  test('goes from the board over the headers that the hand passes', () => {
    const { driver, on, draw, to } = hand('flying', { kinds: [flying] });
    draw(on('board-1', '1'), on('gull-1', 'power'));
    to(on('foghorn', 'power'), on('gull-1', 'power'));
    driver.up();
    expect(laid(driver)).toEqual([['0 board-1', '1 gull-1', '2 foghorn']]);
  });
});

describe('called off', () => {
  const ways = {
    hovering: ({ driver, on }: ReturnType<typeof hand>) => driver.hover(on('jetty-a', 'shore')),
    pressed: ({ driver, on }: ReturnType<typeof hand>) => driver.down(on('jetty-a', 'shore')),
    drawn: ({ on, draw }: ReturnType<typeof hand>) => draw(on('jetty-a', 'shore'), on('boulder-1', 'shore')),
  };

  test.each(Object.entries(ways))('while %s: nothing is left of it', (_, begin) => {
    for (const kind of ['shore-5', null]) {
      const held = hand(kind);
      const { driver } = held;
      begin(held);
      driver.cancel();
      expect(driver.isMoving).toBe(false);
      expect(hint(driver)).toBeNull();
      expect(driver.editor.gestures.store.getState().running).toBe(false);
      driver.up();
      expect(laid(driver)).toEqual(UNLAID);
      expect(driver.steps).toBe(0);
      expect(driver.editor.session.getState().inHand).toBeNull();
    }
  });

  test('a second finger takes the sheet', () => {
    const { driver, on, draw } = hand('shore-5');
    driver.with({ kind: 'touch', id: 1 });
    draw(on('jetty-a', 'shore'), on('cobble-2', 'shore'));
    driver.with({ id: 2 }).down({ x: 500, y: 300 });
    expect(driver.isMoving).toBe(false);
    expect(hint(driver)).toBeNull();
    expect(laid(driver)).toEqual(UNLAID);
  });
});
