import { describe, expect, test } from 'vitest';
import { shownAnalysis } from '../../../app/editor.ts';
import { sheetNow, viewportNow } from '../../../app/store/view.ts';
import type { Point } from '../../../app/tools/pointer.ts';
import { boardBox } from '../../../src/drawing/sheet.ts';
import { Driver } from '../driver.ts';

const board = (driver: Driver, id: string) => {
  const found = driver.take.supplies.flatMap(({ boards }) => boards).find((one) => one.id === id);
  if (!found) throw new Error(`no board ${id}`);
  return found;
};

const rowOf = (driver: Driver, id: string) => {
  const row = sheetNow(driver.editor).rowById.get(id);
  if (!row) throw new Error(`no row ${id}`);
  return row;
};

const onStage = (driver: Driver, { x, y }: Point): Point => {
  const viewport = viewportNow(driver.editor);
  return { x: viewport.x + x, y: viewport.y + y };
};

/** The outer edge of the demo's second board, over which nothing stands. */
const onBoard = (driver: Driver): Point => {
  const placed = shownAnalysis(driver.editor).derived.places.boardById.get('board-2');
  if (!placed) throw new Error('no board');
  const { left, top } = boardBox(sheetNow(driver.editor), placed);
  return onStage(driver, { x: left + 5, y: top + 4 });
};

/** Just beyond the front's right end of a row. */
const onEnd = (driver: Driver, id: string): Point => {
  const { stepX, left, right, top } = rowOf(driver, id);
  return onStage(driver, { x: stepX > 0 ? right + 3 : left - 3, y: top + 60 });
};

const onTitle = (driver: Driver, id: string): Point => {
  const { left, titleY } = rowOf(driver, id);
  return onStage(driver, { x: left + 20, y: titleY });
};

const mm = (driver: Driver, count: number): number => count * viewportNow(driver.editor).scale;

describe('parts of the case', () => {
  test('a tap on a board or on a row’s title selects it', () => {
    const driver = new Driver();
    expect(driver.click(onBoard(driver)).selection).toEqual(['board:board-2']);
    expect(driver.click(onTitle(driver, 'lower')).selection).toEqual(['row:lower']);
    expect(driver.steps).toBe(0);
  });

  test('a board is dragged by whole mm, and by tenths with Alt; left and right are the screen’s', () => {
    const driver = new Driver();
    const { xMm } = board(driver, 'board-2');
    driver.down(onBoard(driver)).move(mm(driver, 20.4));
    expect(driver.isMoving).toBe(true);
    expect(board(driver, 'board-2').xMm, 'while it is dragged').toBe(xMm);
    driver.up();
    expect(driver.selection).toEqual(['board:board-2']);
    expect(board(driver, 'board-2').xMm).toBe(xMm - 20);
    driver.with({ alt: true }).down(onBoard(driver)).move(mm(driver, -4.32)).up();
    expect(board(driver, 'board-2').xMm).toBeCloseTo(xMm - 20 + 4.3, 9);
    expect(driver.steps).toBe(2);
  });

  test('a board goes to another row, and stays within the case', () => {
    const driver = new Driver();
    const up = rowOf(driver, 'upper').top - rowOf(driver, 'lower').top;
    driver.down(onBoard(driver)).move(mm(driver, 9000), up).up();
    expect(board(driver, 'board-2')).toMatchObject({ row: 'upper', xMm: 0 });
    driver.editor.layouts.undo();
    expect(board(driver, 'board-2').row).toBe('lower');
  });

  test('Escape and a lost pointer put it back, and leave no step', () => {
    const driver = new Driver();
    const before = driver.take;
    driver.down(onBoard(driver)).move(90).cancel();
    driver.down(onEnd(driver, 'lower')).move(-90).cancel();
    expect(driver.take).toBe(before);
    expect(driver.steps).toBe(0);
    expect(driver.isMoving).toBe(false);
  });

  test.each(['rear', 'front'] as const)('a row is drawn out by its end, by whole HP, at the %s', (side) => {
    const driver = new Driver();
    driver.editor.session.setState({ side });
    const out = side === 'front' ? 1 : -1;
    driver
      .down(onEnd(driver, 'upper'))
      .move(out * driver.hp(6.3))
      .up();
    expect(driver.take.rows.map(({ widthHp }) => widthHp)).toEqual([110, 104]);
    expect(driver.selection).toEqual(['row:upper']);
    driver
      .down(onEnd(driver, 'upper'))
      .move(out * driver.hp(-300))
      .up();
    expect(driver.take.rows[0]?.widthHp).toBe(2);
    expect(driver.steps).toBe(2);
  });

  test('what is shown while a row grows is checked as it would be', () => {
    const driver = new Driver();
    driver.down(onEnd(driver, 'upper')).move(driver.hp(40));
    const notes = driver.editor.gestures.get()?.notes ?? [];
    expect(notes.some(({ check }) => check === 'off-row')).toBe(true);
  });

  test('a view that was zoomed stays where it is when a row has grown at the rear', () => {
    const driver = new Driver();
    driver.editor.session.setState({ viewport: { scale: 1.2, x: 20, y: 10 } });
    const corner = () => onStage(driver, { x: rowOf(driver, 'upper').originX, y: 0 }).x;
    const before = corner();
    driver.down(onEnd(driver, 'upper')).move(driver.hp(-10)).up();
    expect(driver.take.rows[0]?.widthHp).toBe(114);
    expect(corner()).toBeCloseTo(before, 6);
  });

  test('the pointer shows where a press would take hold', () => {
    const driver = new Driver();
    const cursorAt = (at: Point): string =>
      driver.toolbox.cursorAt({
        ...at,
        id: 1,
        kind: 'mouse',
        button: 0,
        shift: false,
        alt: false,
        mod: false,
      });
    expect(cursorAt(onEnd(driver, 'lower'))).toBe('ew-resize');
    expect(cursorAt(onBoard(driver))).toBe('');
    driver.click(onBoard(driver));
    expect(cursorAt(onBoard(driver))).toBe('move');
    driver.editor.session.setState({ inHand: 'module:gull' });
    expect(cursorAt(onEnd(driver, 'lower'))).toBe('');
  });

  test('a finger moves only what it selected before', () => {
    const driver = new Driver().with({ kind: 'touch' });
    const before = driver.take;
    driver.down(onBoard(driver)).move(60).up();
    driver.editor.session.setState({ viewport: null });
    expect(driver.take).toBe(before);
    driver.click(onBoard(driver)).down(onBoard(driver)).move(60).up();
    expect(board(driver, 'board-2').xMm).not.toBe(391);
  });

  test('a module over a board is what is dragged, unless the board is selected', () => {
    const driver = new Driver();
    const placed = shownAnalysis(driver.editor).derived.places.boardById.get('board-1');
    const { left, top } = boardBox(sheetNow(driver.editor), placed as NonNullable<typeof placed>);
    const spot = onStage(driver, { x: left + 8, y: top + 4 });
    driver.down(spot).move(driver.hp(2)).up();
    expect(driver.place('foghorn')).toEqual(['upper', 80]);
    driver.editor.layouts.undo();
    driver.editor.session.setState({ selection: new Set(['board:board-1']) });
    driver.down(spot).move(mm(driver, 10)).up();
    expect(driver.place('foghorn')).toEqual(['upper', 82]);
    expect(board(driver, 'board-1').xMm).toBe(360);
  });
});
