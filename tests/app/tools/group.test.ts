import { describe, expect, test } from 'vitest';
import { selectJoined } from '../../../app/actions/select-joined.ts';
import type { Hit } from '../../../app/canvas/model.ts';
import { shownAnalysis } from '../../../app/editor.ts';
import { pileAt } from '../../../app/store/under-pointer.ts';
import { sheetNow, viewportNow } from '../../../app/store/view.ts';
import type { Point } from '../../../app/tools/pointer.ts';
import { runOf } from '../../../src/drawing/runs.ts';
import { Driver } from '../driver.ts';

/** Longer than a double tap takes. */
const A_WHILE = 500;

const GROUP = ['boulder-1', 'cobble-1', 'cobble-2', 'jetty-a'];

/** Places on the stage along the middle line of a ribbon. */
function alongOf(driver: Driver, id: string): Point[] {
  const { derived } = shownAnalysis(driver.editor);
  const ribbon = derived.wiring.ribbonById.get(id);
  const run = ribbon && runOf(sheetNow(driver.editor), derived, ribbon);
  const { x, y } = viewportNow(driver.editor);
  return (run?.line ?? []).map((point) => ({ x: x + point.x, y: y + point.y }));
}

const modulesOf = (driver: Driver): string[] =>
  driver.selection.flatMap((key) => (key.startsWith('module:') ? key.slice(7) : [])).sort();

describe('a double tap', () => {
  test.each(['mouse', 'touch', 'pen'] as const)('by %s selects all that is joined', (kind) => {
    const driver = new Driver().with({ kind });
    driver.click(driver.on('cobble-1')).click(driver.on('cobble-1'));
    expect(modulesOf(driver)).toEqual(GROUP);
    expect(driver.selection).toContain('ribbon:s1');
    expect(driver.editor.session.getState().spoken).toBe('4 modules and 1 ribbon selected.');
    expect(driver.steps).toBe(0);
  });

  test('is none after a while, at another place, with Shift or after a drag', () => {
    const slow = new Driver();
    slow.click(slow.on('cobble-1'));
    slow.clock.pass(A_WHILE);
    slow.click(slow.on('cobble-1'));
    expect(modulesOf(slow)).toEqual(['cobble-1']);
    const elsewhere = new Driver();
    elsewhere.click(elsewhere.on('cobble-1')).click(elsewhere.on('cobble-2'));
    expect(modulesOf(elsewhere)).toEqual(['cobble-2']);
    const adding = new Driver().with({ shift: true });
    adding.click(adding.on('cobble-1')).click(adding.on('cobble-1'));
    expect(modulesOf(adding)).toEqual([]);
    const dragged = new Driver();
    dragged.click(dragged.on('gull-1')).down(dragged.on('gull-1')).move(20).move(-20).up();
    dragged.click(dragged.on('gull-1'));
    expect(modulesOf(dragged)).toEqual(['gull-1']);
  });

  test('on free ground selects nothing', () => {
    const driver = new Driver();
    const { x, y } = driver.on('foghorn');
    const ground = { x: x - driver.hp(11), y };
    driver.click(ground).click(ground);
    expect(driver.selection).toEqual([]);
  });
});

describe('a whole group', () => {
  test('moves as one with its ribbon, into another row too, and complains of what holds it back', () => {
    const driver = new Driver();
    driver.click(driver.on('cobble-1'));
    selectJoined.run(driver.editor);
    const from = driver.on('cobble-1');
    driver.down(from).move(driver.hp(5), driver.on('kelp').y - from.y);
    const shown = driver.editor.gestures.get();
    expect([...(shown?.modules ?? [])].sort()).toEqual(GROUP);
    const checks = new Set(shown?.notes.map(({ check }) => check));
    expect(checks).toContain('out-of-line');
    expect([...checks].some((check) => ['off-pitch', 'displaced', 'loose-end'].includes(check))).toBe(false);
    driver.up();
    expect(driver.place('jetty-a')).toEqual(['lower', 5]);
    expect(driver.place('boulder-1')).toEqual(['lower', 20]);
    expect(driver.steps).toBe(1);
    expect(driver.take.ribbons).toBe(new Driver(driver.editor.layouts.layout()).take.ribbons);
  });

  const outOf: [string, 'front' | 'rear', string, number, boolean, string][] = [
    ['flat', 'rear', 'cobble-2', 3, false, 'off-pitch'],
    ['flat', 'front', 'cobble-2', 3, false, 'off-pitch'],
    ['flat, to another row', 'rear', 'cobble-2', 3, true, 'out-of-line'],
    ['bending', 'rear', 'jetty-b', 9, false, 'short-ribbon'],
    ['bending', 'front', 'cobble-4', 9, false, 'short-ribbon'],
    ['bending, to another row', 'front', 'cobble-4', 9, true, 'out-of-line'],
    ['loose', 'rear', 'jetty-c', 65, false, 'lead-short'],
  ];

  test.each(outOf)('torn: %s ribbon, seen from the %s', (_, side, id, hp, otherRow, check) => {
    const driver = new Driver();
    driver.editor.session.setState({ side });
    const seats = driver.take.ribbons;
    const from = driver.on(id);
    const along = driver.hp(side === 'rear' ? -hp : hp);
    driver.down(from).move(along, otherRow ? driver.on('kelp').y - from.y : 0);
    expect(driver.editor.gestures.get()?.notes.map((note) => note.check)).toContain(check);
    expect(driver.editor.gestures.get()?.derived.take.ribbons).toBe(seats);
    driver.cancel();
    expect(driver.take).toBe(new Driver(driver.editor.layouts.layout()).take);
  });
});

const ribbonsIn = (pile: readonly Hit[]) => pile.filter(({ type }) => type === 'ribbon');

describe('a tap again at the same place', () => {
  /** A place on the way of a lead where another ribbon lies as well. */
  const crossing = (driver: Driver): Point => {
    const pointer = { id: 1, kind: 'mouse', button: 0, shift: false, alt: false, mod: false } as const;
    const found = ['l1', 'l2', 'l3']
      .flatMap((id) => alongOf(driver, id))
      .find((point) => ribbonsIn(pileAt(driver.editor, { ...pointer, ...point })).length > 1);
    if (!found) throw new Error('no ribbons cross');
    return found;
  };

  test('selects what lies below, and round again', () => {
    const driver = new Driver();
    const point = crossing(driver);
    const taps = Array.from({ length: 8 }, () => {
      driver.click(point);
      driver.clock.pass(A_WHILE);
      return { key: driver.selection.join(), pile: driver.editor.session.getState().pile };
    });
    const of = taps[0]?.pile?.of ?? 0;
    expect(of).toBeGreaterThan(2);
    expect(taps.map(({ pile }) => pile?.at)).toEqual(taps.map((_, i) => (i % of) + 1));
    expect(new Set(taps.map(({ key }) => key)).size).toBe(of);
    expect(taps[of]?.key).toBe(taps[0]?.key);
    expect(taps[of - 1]?.key).toMatch(/^module:/);
    expect(driver.editor.session.getState().spoken).toMatch(/^\d of \d here\.$/);
  });

  test('goes back to the uppermost where something else was selected in between', () => {
    const driver = new Driver();
    const point = crossing(driver);
    driver.click(point);
    const [first] = driver.selection;
    driver.clock.pass(A_WHILE);
    driver.click(driver.on('foghorn'));
    driver.clock.pass(A_WHILE);
    driver.click(point);
    expect(driver.selection).toEqual([first]);
  });

  test('passes over what is hidden', () => {
    const driver = new Driver();
    const point = crossing(driver);
    driver.editor.session.setState({ hidden: new Set(['leads']) });
    driver.click(point);
    driver.clock.pass(A_WHILE);
    driver.click(point);
    expect(driver.selection[0]).not.toMatch(/:l\d/);
  });
});

describe('a mouse that rests on a ribbon', () => {
  test('lifts it, and lets it down as it leaves, is pressed or leaves the stage', () => {
    const driver = new Driver();
    const lifted = () => driver.editor.session.getState().lifted;
    const line = alongOf(driver, 'l1');
    const point = line[line.length >> 1];
    if (!point) throw new Error('no lead');
    driver.hover(point);
    expect(lifted()).toBeNull();
    driver.clock.pass(A_WHILE);
    expect(lifted()).toBe('l1');
    driver.hover(driver.on('foghorn'));
    expect(lifted()).toBeNull();
    for (const leave of [() => driver.click(driver.on('kelp')), () => driver.toolbox.leave()]) {
      driver.hover(point);
      driver.clock.pass(A_WHILE);
      expect(lifted()).toBe('l1');
      leave();
      expect(lifted()).toBeNull();
    }
    driver.hover(point).hover(driver.on('foghorn'));
    driver.clock.pass(A_WHILE);
    expect(lifted()).toBeNull();
  });
});
