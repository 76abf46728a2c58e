import { describe, expect, it } from 'vitest';
import { freeStretches } from '../../../app/canvas/draw/name.ts';
import { freeSpans, hpText } from '../../../src/drawing/free-spans.ts';
import { deriveRack, mixedTake } from './rack.ts';

const { modules } = deriveRack(mixedTake()).places;

describe('free stretches of a row', () => {
  it('lie before, between and after the modules', () => {
    const upper = modules.filter(({ row }) => row.index === 0);
    expect(freeSpans(104, upper)).toEqual([
      { fromHp: 5, toHp: 5.5 },
      { fromHp: 15, toHp: 104 },
    ]);
  });

  it('end with the row, and are the whole of an empty one', () => {
    expect(freeSpans(84, [])).toEqual([{ fromHp: 0, toHp: 84 }]);
    expect(
      freeSpans(
        18,
        modules.filter(({ row }) => row.index === 1),
      ),
    ).toEqual([{ fromHp: 0, toHp: 3 }]);
  });

  it('are told in HP', () => {
    expect(hpText(38.5)).toBe('38.5 HP');
    expect(hpText(12)).toBe('12 HP');
  });
});

describe('free stretches of a panel', () => {
  const box = { left: 0, right: 10, top: 0, bottom: 100 };

  it('are what headers leave', () => {
    expect(
      freeStretches(box, [
        { top: 60, bottom: 80 },
        { top: 10, bottom: 30 },
      ]),
    ).toEqual([
      { top: 0, bottom: 10 },
      { top: 30, bottom: 60 },
      { top: 80, bottom: 100 },
    ]);
  });

  it('are all of it where all is covered, since a name must stand somewhere', () => {
    expect(freeStretches(box, [{ top: -5, bottom: 120 }])).toEqual([{ top: 0, bottom: 100 }]);
  });
});
