import { describe, expect, test } from 'vitest';
import { type Slide, type Slider, slideTo } from '../../../app/tools/slide.ts';

const row = (id: string, widthHp: number) => ({ id, widthHp, heightU: 3, depthMm: 60 });
const slider = (id: string, rowIndex: number, atHp: number, widthHp = 5): Slider => ({
  id,
  widthHp,
  from: { row: rowIndex, atHp },
});

const a = slider('a', 0, 10);
const b = slider('b', 1, 20.5, 8);
const slide: Slide = { rows: [row('upper', 84), row('lower', 42), row('third', 84)], inHand: a, all: [a, b] };

describe('slideTo', () => {
  test('keeps distances along and across', () => {
    expect(slideTo(slide, { row: 1, atHp: 12 })).toEqual([
      { module: 'a', row: 'lower', atHp: 12 },
      { module: 'b', row: 'third', atHp: 22.5 },
    ]);
  });

  test('stops where the first of them meets an end of its row', () => {
    expect(slideTo(slide, { row: 0, atHp: -50 }).map(({ atHp }) => atHp)).toEqual([0, 10.5]);
    expect(slideTo(slide, { row: 0, atHp: 50 }).map(({ atHp }) => atHp)).toEqual([23.5, 34]);
  });

  test('stops at the outer rows', () => {
    expect(slideTo(slide, { row: 2, atHp: 10 }).map((move) => move.row)).toEqual(['lower', 'third']);
    expect(slideTo(slide, { row: -4, atHp: 10 }).map((move) => move.row)).toEqual(['upper', 'lower']);
  });

  test('leaves no crumbs of float arithmetic', () => {
    const third = slider('a', 0, 0.1);
    expect(slideTo({ ...slide, inHand: third, all: [third] }, { row: 0, atHp: 0.3 })[0]?.atHp).toBe(0.3);
  });

  test('what is wider than the row stands at its left end', () => {
    const wide = slider('wide', 0, 0, 60);
    expect(slideTo({ ...slide, inHand: wide, all: [wide] }, { row: 1, atHp: 7 })[0]).toEqual({
      module: 'wide',
      row: 'lower',
      atHp: 0,
    });
  });
});
