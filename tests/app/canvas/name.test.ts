import { describe, expect, it } from 'vitest';
import { type Stretch, writeName } from '../../../app/canvas/draw/name.ts';
import { fakeContext, pxOf } from './fake-context.ts';

/** Letters are 0.6 of their size wide here: 7.2 px each at 12 px. */
const LETTERING = { px: 12, colour: '#000' };

function written(name: string, width: number, blocks: readonly Stretch[] = [], height = 200) {
  const { ctx, strokes } = fakeContext();
  writeName(ctx, name, { left: 0, right: width, top: 0, bottom: height }, blocks, LETTERING);
  return strokes.map(({ text }) => text);
}

describe('the name of a module', () => {
  it('stands in one line where there is room', () => {
    expect(written('Cobble 3', 70)).toEqual(['Cobble 3']);
  });

  it('stands in two lines on a narrow panel', () => {
    expect(written('Cobble 3', 50)).toEqual(['Cobble', '3']);
  });

  it('is written upward, whole, where no line fits across', () => {
    expect(written('Cobble 3', 18)).toEqual(['Cobble 3']);
  });

  it('is shortened, but keeps what tells it from its like', () => {
    const blocks = [{ top: 32, bottom: 200 }];
    expect(written('Cobble 3', 32, blocks)).toEqual(['Cob.', '3']);
    expect(written('Cobble 3', 16, [{ top: 48, bottom: 200 }])).toEqual(['Cob. 3']);
  });

  it('gives up its number before it says nothing', () => {
    expect(written('Cobble (c-12)', 30, [{ top: 33, bottom: 200 }])).toEqual(['Cob.']);
  });

  it('is left out where the panel is narrower than a line is high', () => {
    expect(written('Cobble 3', 9)).toEqual([]);
  });

  it('is never smaller than 11 px', () => {
    for (const width of [12, 20, 30, 45, 60]) {
      const { ctx, strokes } = fakeContext();
      writeName(ctx, 'Long name 12', { left: 0, right: width, top: 0, bottom: 80 }, [], LETTERING);
      for (const { font } of strokes) expect(pxOf(font)).toBeGreaterThanOrEqual(11);
    }
  });
});
