import { describe, expect, it } from 'vitest';
import { hitTest, SLOP } from '../../../app/canvas/hit-test.ts';
import type { Side } from '../../../app/canvas/model.ts';
import { runOf } from '../../../src/drawing/runs.ts';
import { boardBox, headerPoint, layOutSheet, moduleBox, type Sheet } from '../../../src/drawing/sheet.ts';
import type { PlacedHeader } from '../../../src/index.ts';
import { deriveRack, mixedTake, rackTake } from './rack.ts';

const take = deriveRack(mixedTake());

const sheetOf = (side: Side, scale = 2): Sheet => layOutSheet(take, side, scale);

const moduleNamed = (id: string) => {
  const module = take.places.moduleById.get(id);
  if (!module) throw new Error(`no module ${id}`);
  return module;
};

const at = (side: Side, point: { x: number; y: number }, slop?: number) =>
  hitTest(sheetOf(side), take, point.x, point.y, slop);

const topOf = (side: Side, id: string) => {
  const { left, right, top } = moduleBox(sheetOf(side), moduleNamed(id));
  return { x: (left + right) / 2, y: top + 5 };
};

describe('what lies under a point', () => {
  it.each(['front', 'rear'] as const)('finds each module where it is drawn, on the %s', (side) => {
    for (const { id } of take.places.modules)
      expect(at(side, topOf(side, id))).toEqual({ type: 'module', id });
  });

  it('finds free headers on the rear only', () => {
    const header = moduleNamed('a').headers[2] as PlacedHeader;
    expect(at('rear', headerPoint(sheetOf('rear'), header))).toEqual({
      type: 'header',
      module: 'a',
      header: 'h2',
    });
    expect(at('front', headerPoint(sheetOf('front'), header))).toEqual({ type: 'module', id: 'a' });
  });

  it('finds ribbons over modules, and the connector under the point', () => {
    const sheet = sheetOf('rear');
    for (const ribbon of take.wiring.ribbons) {
      const run = runOf(sheet, take, ribbon);
      for (const knot of run?.knots ?? []) {
        expect(at('rear', knot)).toEqual({ type: 'ribbon', id: ribbon.id, connector: knot.connector });
      }
    }
  });

  it('finds a lead along its way', () => {
    const lead = take.wiring.ribbonById.get('l1');
    const line = (lead && runOf(sheetOf('rear'), take, lead)?.line) ?? [];
    const middle = line[Math.floor(line.length / 2)];
    expect(middle && at('rear', middle)).toEqual({ type: 'ribbon', id: 'l1' });
  });

  it('widens small things for fingers', () => {
    const header = moduleNamed('a').headers[2] as PlacedHeader;
    const { x, y } = headerPoint(sheetOf('rear'), header);
    expect(at('rear', { x: x + 14, y }, SLOP.mouse)).toEqual({ type: 'module', id: 'a' });
    expect(at('rear', { x: x + 14, y }, SLOP.touch)).toEqual({ type: 'header', module: 'a', header: 'h2' });
  });

  it('finds boards and their free headers on the rear, the row behind them on the front', () => {
    const board = take.places.boards[0];
    if (!board) throw new Error('no board');
    const rear = sheetOf('rear');
    expect(at('rear', headerPoint(rear, board.headers[1] as PlacedHeader))).toEqual({
      type: 'board',
      id: 'board',
      header: '2',
    });
    const { left, top } = boardBox(rear, board);
    expect(at('rear', { x: left + 4, y: top + 4 })).toEqual({ type: 'board', id: 'board' });
    const front = boardBox(sheetOf('front'), board);
    expect(at('front', { x: front.left + 4, y: front.top + 4 })?.type).toBe('row');
  });

  it.each(['front', 'rear'] as const)(
    'tells the place on the rails in HP from the front left, on the %s',
    (side) => {
      const sheet = sheetOf(side);
      const row = sheet.rows[0];
      if (!row) throw new Error('no row');
      const x = row.originX + row.stepX * 50 * 5.08;
      const hit = hitTest(sheet, take, x, (row.top + row.bottom) / 2);
      expect(hit).toMatchObject({ type: 'row', id: 'upper' });
      expect(hit?.type === 'row' && hit.atHp).toBeCloseTo(50, 9);
    },
  );

  it('finds nothing beside the rows', () => {
    expect(hitTest(sheetOf('rear'), take, 0, 200)).toBeNull();
  });

  it('finds the one among a thousand', () => {
    const many = deriveRack(rackTake(1000));
    const sheet = layOutSheet(many, 'rear', 1.7);
    const module = many.places.moduleById.get('m777');
    if (!module) throw new Error('no module');
    const { left, right, top } = moduleBox(sheet, module);
    expect(hitTest(sheet, many, (left + right) / 2, top + 4)).toEqual({ type: 'module', id: 'm777' });
  });
});

describe('a row', () => {
  it.each(['front', 'rear'] as const)(
    'is found by title and rails, and by its far end, on the %s',
    (side) => {
      const sheet = sheetOf(side);
      const row = sheet.rows[0];
      if (!row) throw new Error('no row');
      const free = row.originX + row.stepX * (row.placed.widthMm - 4);
      const far = row.originX + row.stepX * row.placed.widthMm;
      const on = (x: number, y: number) => {
        const hit = at(side, { x, y });
        return hit?.type === 'row' ? (hit.on ?? 'ground') : null;
      };
      expect(on((row.left + row.right) / 2, row.titleY)).toBe('rail');
      expect(on(free, row.top + 3)).toBe('rail');
      expect(on(free, row.bottom - 3)).toBe('rail');
      expect(on(free, (row.top + row.bottom) / 2)).toBe('ground');
      expect(on(far + Math.sign(row.stepX) * 5, (row.top + row.bottom) / 2)).toBe('end');
      expect(on(row.originX - Math.sign(row.stepX) * 5, (row.top + row.bottom) / 2)).toBeNull();
    },
  );
});
