import { describe, expect, test } from 'vitest';
import { showTake } from '../../../app/actions/show-take.ts';
import { viewportNow } from '../../../app/store/view.ts';
import type { Pointer } from '../../../app/tools/pointer.ts';
import { createTrayDrag } from '../../../app/tools/tray-drag.ts';
import { emptyLayout } from '../../../src/layout/starter.ts';
import { Driver } from '../driver.ts';
import { withRibbon } from './ribbon-rack.ts';

/** Middle of the upper half of the empty case's only row, so many HP from its left end seen from the front. */
const rail = (driver: Driver, atHp: number) => {
  const { x, y, scale } = viewportNow(driver.editor);
  return { x: x + (8 + 84 * 5.08) * scale - driver.hp(atHp), y: y + 60 * scale };
};

const emptyCase = () => {
  const driver = new Driver(emptyLayout());
  const tray = createTrayDrag<Pointer>(
    driver.editor,
    driver.toolbox,
    (pointer) => pointer,
    ({ y }) => y < 700,
    () => {},
  );
  const at = (x: number, y: number): Pointer => ({
    x,
    y,
    id: 1,
    kind: 'mouse',
    button: 0,
    shift: false,
    alt: false,
    mod: false,
  });
  return { driver, tray, at };
};

const placed = ({ take }: Driver) => take.modules.map(({ kind, row, atHp }) => [kind, row, atHp]);
const inHand = ({ editor }: Driver) => editor.session.getState().inHand;

describe('tap here and tap there', () => {
  test('the module follows the pointer and is put down with one step, under its middle', () => {
    const { driver, tray } = emptyCase();
    tray.tap('module:cobble');
    driver.hover(rail(driver, 20)).hover(rail(driver, 30.5));
    expect(driver.isMoving).toBe(true);
    expect(placed(driver)).toEqual([]);
    driver.click(rail(driver, 30.5));
    expect(placed(driver)).toEqual([['cobble', 'row-1', 28]]);
    expect(driver.steps).toBe(1);
    expect(driver.selection).toEqual(['module:cobble-1']);
    expect(inHand(driver)).toBeNull();
  });

  test('a finger needs no hovering', () => {
    const { driver, tray } = emptyCase();
    tray.tap('module:gull');
    driver.with({ kind: 'touch' }).click(rail(driver, 14));
    expect(placed(driver)).toEqual([['gull', 'row-1', 10]]);
  });

  test('with Ctrl it stays in hand for the next one', () => {
    const { driver, tray } = emptyCase();
    tray.tap('module:cobble');
    driver.with({ mod: true }).click(rail(driver, 2.5)).click(rail(driver, 7.5));
    expect(placed(driver)).toEqual([
      ['cobble', 'row-1', 0],
      ['cobble', 'row-1', 5],
    ]);
    expect(inHand(driver)).toBe('module:cobble');
  });

  test('another tap on it, Escape and leaving the stage put nothing down', () => {
    const { driver, tray } = emptyCase();
    tray.tap('module:cobble');
    tray.tap('module:cobble');
    expect(inHand(driver)).toBeNull();
    tray.tap('module:cobble');
    driver.hover(rail(driver, 20));
    driver.toolbox.leave();
    expect(driver.isMoving).toBe(false);
    expect(inHand(driver)).toBe('module:cobble');
    driver.hover(rail(driver, 20)).cancel();
    expect(driver.isMoving).toBe(false);
    expect(inHand(driver)).toBeNull();
    expect(driver.steps).toBe(0);
  });

  test('it is kept on the rails, to half an HP with Alt', () => {
    const { driver, tray } = emptyCase();
    tray.tap('module:boulder');
    driver.click(rail(driver, 83));
    tray.tap('module:cobble');
    driver.with({ alt: true }).click(rail(driver, 23.1));
    expect(placed(driver)).toEqual([
      ['boulder', 'row-1', 69],
      ['cobble', 'row-1', 20.5],
    ]);
  });
});

describe('dragged from the tray', () => {
  test('onto the rails in one go', () => {
    const { driver, tray, at } = emptyCase();
    const { x, y } = rail(driver, 12.5);
    tray.down('module:cobble', at(300, 760));
    tray.move(at(301, 759));
    expect(inHand(driver)).toBeNull();
    tray.move(at(320, 720));
    tray.move(at(x, y));
    expect(driver.isMoving).toBe(true);
    tray.up(at(x, y));
    tray.tap('module:cobble');
    expect(placed(driver)).toEqual([['cobble', 'row-1', 10]]);
    expect(inHand(driver)).toBeNull();
    expect(driver.steps).toBe(1);
  });

  test('put back with Escape on the way, letting go places and selects nothing', () => {
    const { driver, tray, at } = emptyCase();
    const { x, y } = rail(driver, 12.5);
    tray.down('module:cobble', at(300, 760));
    tray.move(at(x, y));
    driver.cancel();
    tray.move(at(x + 9, y));
    expect(driver.isMoving).toBe(false);
    tray.up(at(x, y));
    expect(placed(driver)).toEqual([]);
    expect(driver.selection).toEqual([]);
    expect(driver.steps).toBe(0);
  });

  test('let go over the tray, or taken away by the system, it goes back', () => {
    const { driver, tray, at } = emptyCase();
    const { x, y } = rail(driver, 12.5);
    for (const end of [() => tray.up(at(300, 760)), () => tray.cancel()]) {
      tray.down('module:cobble', at(300, 760));
      tray.move(at(x, y));
      tray.move(at(300, 760));
      expect(driver.isMoving).toBe(false);
      end();
      expect(inHand(driver)).toBeNull();
      expect(placed(driver)).toEqual([]);
    }
  });
});

describe('two hands', () => {
  const finger = (id: number) => ({ id, kind: 'touch' as const });

  test('pinching to look closer keeps the kind in hand, and puts nothing down', () => {
    for (const kind of ['module:cobble', 'ribbon:shore-3'] as const) {
      const { driver, tray } = emptyCase();
      const { x, y } = rail(driver, 12.5);
      tray.tap(kind);
      driver.with(finger(1)).down({ x, y });
      driver
        .with(finger(2))
        .down({ x: x - 100, y })
        .move(-100);
      expect(driver.isMoving).toBe(false);
      driver.up().with(finger(1)).up();
      expect(inHand(driver)).toBe(kind);
      expect(driver.steps).toBe(0);
    }
  });

  test('what is held goes down where it is shown, whatever another hand does meanwhile', () => {
    const { driver, tray } = emptyCase();
    const { x, y } = rail(driver, 12.5);
    tray.tap('module:cobble');
    driver.hover({ x, y });
    driver.editor.layouts.run({ type: 'rename-layout', title: 'Ours' });
    driver.down({ x, y }).up();
    expect(placed(driver)).toEqual([['cobble', 'row-1', 10]]);
    expect(driver.steps).toBe(2);
  });

  test('what is pressed is put back where another hand takes away what it stands on', () => {
    const { driver, editor, connector } = withRibbon('s1');
    driver.down(connector(1)).move(90, 30);
    expect(driver.isMoving).toBe(true);
    editor.layouts.run({ type: 'remove-row', take: 'three-jetties', row: 'upper' });
    expect(driver.isMoving).toBe(false);
    driver.move(30, 30).up();
    expect(driver.steps).toBe(1);
  });

  test('the take stays while something of it is held', () => {
    const driver = new Driver();
    driver.down(driver.on('gull-1')).move(driver.hp(3));
    showTake(driver.editor, 'one-long-jetty');
    driver.up();
    expect(driver.take.id).toBe('three-jetties');
    expect(driver.place('gull-1')).toEqual(['upper', 69]);
    showTake(driver.editor, 'one-long-jetty');
    expect(driver.take.id).toBe('one-long-jetty');
  });
});
