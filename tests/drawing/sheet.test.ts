import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boardBox,
  heightMmOf,
  layOutSheet,
  mmOf,
  moduleBox,
  rowAt,
  type Sheet,
  type SheetRow,
  xOf,
  yOf,
  zOf,
} from '../../src/drawing/sheet.ts';
import { deriveRack, mixedTake } from '../app/canvas/rack.ts';

const take = deriveRack(mixedTake());

const sheets = (scale: number): [front: Sheet, rear: Sheet] => [
  layOutSheet(take, 'front', scale),
  layOutSheet(take, 'rear', scale),
];

const scales = fc.double({ min: 0.2, max: 16, noNaN: true });
const places = fc.double({ min: -50, max: 600, noNaN: true });

const rowsOf = (scale: number): [front: SheetRow, rear: SheetRow][] => {
  const [front, rear] = sheets(scale);
  return front.rows.map((row, i) => [row, rear.rows[i] as SheetRow]);
};

describe('the sheet', () => {
  it('mirrors the rear: a place on both sides adds up to the width of the sheet', () => {
    fc.assert(
      fc.property(scales, places, (scale, mm) => {
        const { width } = layOutSheet(take, 'front', scale);
        for (const [front, rear] of rowsOf(scale))
          expect(xOf(front, mm) + xOf(rear, mm)).toBeCloseTo(width, 6);
      }),
    );
  });

  it('is itself again when it is mirrored twice', () => {
    fc.assert(
      fc.property(scales, places, (scale, mm) => {
        const { width } = layOutSheet(take, 'front', scale);
        for (const [front, rear] of rowsOf(scale)) {
          const mirrored = width - xOf(rear, mmOf(front, width - xOf(rear, mm)));
          expect(mirrored).toBeCloseTo(xOf(front, mm), 6);
        }
      }),
    );
  });

  it('leads back from px to mm on both sides', () => {
    fc.assert(
      fc.property(scales, places, (scale, mm) => {
        for (const row of rowsOf(scale).flat()) {
          expect(mmOf(row, xOf(row, mm))).toBeCloseTo(mm, 6);
          expect(heightMmOf(row, yOf(row, mm))).toBeCloseTo(mm, 6);
        }
      }),
    );
  });

  it('is similar to itself at every scale', () => {
    fc.assert(
      fc.property(scales, (scale) => {
        const [front] = sheets(scale);
        const [unit] = sheets(1);
        expect(front.width).toBeCloseTo(unit.width * scale, 6);
        expect(front.height).toBeCloseTo(unit.height * scale, 6);
        for (const [i, row] of front.rows.entries()) {
          expect(row.top).toBeCloseTo((unit.rows[i]?.top ?? 0) * scale, 6);
        }
      }),
    );
  });

  it('aligns rows of unequal width at the front left', () => {
    const [front, rear] = sheets(2);
    expect(front.rows[0]?.left).toBe(front.rows[1]?.left);
    expect(rear.rows[0]?.right).toBe(rear.rows[1]?.right);
    expect(rear.rows[0]?.left).toBeLessThan(rear.rows[1]?.left ?? 0);
  });

  it('stacks rows without overlap, each with its section below', () => {
    const [, rear] = sheets(1.7);
    const [upper, lower] = rear.rows as [SheetRow, SheetRow];
    expect(upper.top).toBeLessThan(upper.bottom);
    expect(upper.bottom).toBeLessThan(upper.sectionTop);
    expect(upper.sectionBottom).toBeLessThan(lower.titleY);
    expect(lower.sectionBottom).toBeLessThan(rear.height);
  });

  it('puts the side that is looked at below in the section', () => {
    const [[front, rear]] = rowsOf(1) as [[SheetRow, SheetRow]];
    expect(zOf(rear, 0)).toBe(rear.sectionTop);
    expect(zOf(rear, 56)).toBeCloseTo(rear.sectionBottom, 9);
    expect(zOf(front, 0)).toBe(front.sectionBottom);
    expect(zOf(front, 56)).toBeCloseTo(front.sectionTop, 9);
  });

  it('finds the row of every height, the outermost ones beyond its ends', () => {
    const [, rear] = sheets(1);
    const [upper, lower] = rear.rows as [SheetRow, SheetRow];
    for (const y of [-100, upper.top, upper.sectionBottom]) expect(rowAt(rear, y)).toBe(upper);
    for (const y of [lower.titleY, lower.bottom, 9999]) expect(rowAt(rear, y)).toBe(lower);
  });

  it('draws panels at their true size, narrower than their place by 0.30 mm (printed panel table, as quoted)', () => {
    const module = take.places.modules[0];
    if (!module) throw new Error('no module');
    const { left, right, top, bottom } = moduleBox(layOutSheet(take, 'rear', 10), module);
    expect(right - left).toBeCloseTo(251, 6);
    expect(bottom - top).toBeCloseTo(1284, 6);
  });

  it('draws a board around all its headers and over its whole width', () => {
    const board = take.places.boards[0];
    if (!board) throw new Error('no board');
    const sheet = layOutSheet(take, 'front', 1);
    const row = sheet.rows[1] as SheetRow;
    const { left, right } = boardBox(sheet, board);
    expect(left).toBeCloseTo(xOf(row, 300), 6);
    expect(right).toBeCloseTo(xOf(row, 360), 6);
  });
});
