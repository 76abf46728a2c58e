import { describe, expect, test } from 'vitest';
import { viewportNow } from '../../../app/store/view.ts';
import { Driver } from '../driver.ts';

const wheel = { x: 400, y: 300, dx: 0, dy: 0, shift: false, mod: false };

describe('moving the sheet', () => {
  test('with the middle button, and with the space bar held', () => {
    const driver = new Driver();
    const before = viewportNow(driver.editor);
    driver.with({ button: 1 }).down({ x: 400, y: 300 }).move(30, 10).up();
    expect(viewportNow(driver.editor)).toEqual({ ...before, x: before.x + 30, y: before.y + 10 });
    driver.toolbox.holdSheet(true);
    driver.with({ button: 0 }).down(driver.on('gull-1')).move(10, 0).up();
    expect(viewportNow(driver.editor).x).toBeCloseTo(before.x + 40);
    driver.toolbox.holdSheet(false);
    expect(driver.steps).toBe(0);
  });

  test('called off, the sheet is where it was, fitted if it was fitted', () => {
    const driver = new Driver();
    driver.with({ button: 1 }).down({ x: 400, y: 300 }).move(30, 10).cancel();
    expect(driver.editor.session.getState().viewport).toBeNull();
  });

  test('never out of sight', () => {
    const driver = new Driver();
    driver.with({ button: 1 }).down({ x: 400, y: 300 }).move(90_000, -90_000).up();
    const { x, y } = viewportNow(driver.editor);
    expect(x).toBeLessThan(1440);
    expect(y).toBeGreaterThan(-700);
  });
});

describe('the wheel', () => {
  test('moves the sheet, across with Shift', () => {
    const driver = new Driver();
    const { x, y } = viewportNow(driver.editor);
    driver.toolbox.wheel({ ...wheel, dx: 5, dy: 20 });
    expect(viewportNow(driver.editor)).toMatchObject({ x: x - 5, y: y - 20 });
    driver.toolbox.wheel({ ...wheel, dy: 20, shift: true });
    expect(viewportNow(driver.editor)).toMatchObject({ x: x - 25, y: y - 20 });
  });

  test('zooms with Ctrl, about the pointer', () => {
    const driver = new Driver();
    const before = viewportNow(driver.editor);
    driver.toolbox.wheel({ ...wheel, dy: -150, mod: true });
    const after = viewportNow(driver.editor);
    expect(after.scale).toBeCloseTo(before.scale * Math.SQRT2);
    const mmUnder = ({ scale, x }: typeof before): number => (wheel.x - x) / scale;
    expect(mmUnder(after)).toBeCloseTo(mmUnder(before));
  });
});
