import { describe, expect, test } from 'vitest';
import { shownAnalysis } from '../../../app/editor.ts';
import { sheetNow, viewportNow } from '../../../app/store/view.ts';
import { headerPoint } from '../../../src/drawing/sheet.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
import type { Layout } from '../../../src/layout/layout.ts';
import { Driver } from '../driver.ts';

/** The demo's first take without its ribbons. */
function unwired(): Layout {
  const demo = demoLayout();
  const [take] = demo.takes;
  if (!take) throw new Error('no take');
  return { ...demo, takes: [{ ...take, ribbons: [] }] };
}

function holding(kind: string): {
  driver: Driver;
  on: (module: string, header: string) => { x: number; y: number };
} {
  const driver = new Driver(unwired());
  driver.editor.session.setState({ inHand: `ribbon:${kind}` });
  return {
    driver,
    on(module, header) {
      const placed = shownAnalysis(driver.editor).derived.places.moduleById.get(module);
      const found = placed?.headers.find(({ id }) => id === header);
      if (!found) throw new Error('no header');
      const { x, y } = headerPoint(sheetNow(driver.editor), found);
      const viewport = viewportNow(driver.editor);
      return { x: viewport.x + x, y: viewport.y + y };
    },
  };
}

describe('a ribbon in hand', () => {
  test('shows how it would lie over the headers, and is laid with one step', () => {
    const { driver, on } = holding('shore-5');
    driver.hover(on('cobble-1', 'shore'));
    const shown = driver.editor.gestures.get()?.derived.take.ribbons ?? [];
    expect(shown.map(({ seats }) => seats.length)).toEqual([4]);
    expect(driver.take.ribbons).toEqual([]);
    driver.click(on('cobble-1', 'shore'));
    expect(driver.take.ribbons).toMatchObject([{ kind: 'shore-5', label: 'S1', stripe: 'down' }]);
    expect(driver.steps).toBe(1);
    expect(driver.selection).toEqual(['ribbon:shore-5-1']);
    driver.editor.layouts.undo();
    expect(driver.take.ribbons).toEqual([]);
  });

  test('a lead goes from a module to a board', () => {
    const { driver, on } = holding('lead-16-150');
    driver.click(on('foghorn', 'power'));
    expect(driver.take.ribbons).toMatchObject([
      { label: 'L1', seats: [{ on: { board: 'board-1' } }, { on: { module: 'foghorn' } }] },
    ]);
  });

  test('lies nowhere away from headers, and on none that it does not fit', () => {
    const { driver, on } = holding('shore-5');
    driver.hover(on('foghorn', 'power'));
    expect(driver.isMoving).toBe(false);
    driver.click(on('foghorn', 'power'));
    expect(driver.take.ribbons).toEqual([]);
    expect(driver.steps).toBe(0);
  });

  test('Escape puts it back', () => {
    const { driver, on } = holding('shore-5');
    driver.hover(on('jetty-a', 'shore')).cancel();
    expect(driver.isMoving).toBe(false);
    expect(driver.editor.session.getState().inHand).toBeNull();
    expect(driver.take.ribbons).toEqual([]);
  });
});
