import { describe, expect, it } from 'vitest';
import { firstLaid, isKeptPhotograph, photographId } from '../../../app/kinds/photograph.ts';
import { mapped, panelSizeMm } from '../../../src/index.ts';

const picture = { image: new Blob(['picture']), widthPx: 600, heightPx: 1000 };
const size = panelSizeMm(15, 3);

describe('a photograph under the drawing', () => {
  it('lies over the middle of the panel at first, as high as it', () => {
    const { laid, opacity } = firstLaid(picture, size);
    expect(mapped(laid, { x: 300, y: 500 }).x).toBeCloseTo(size.widthMm / 2, 9);
    expect(mapped(laid, { x: 300, y: 500 }).y).toBeCloseTo(size.heightMm / 2, 9);
    expect(mapped(laid, { x: 0, y: 1000 }).y).toBeLessThan(size.heightMm);
    expect(opacity).toBeGreaterThan(0);
  });

  it('is told by its layout and its kind', () => {
    expect(photographId({ id: 'a' }, 'kelp')).not.toBe(photographId({ id: 'b' }, 'kelp'));
    expect(photographId({ id: 'a' }, 'kelp')).not.toBe(photographId({ id: 'a' }, 'gull'));
  });

  it('is looked at closely when it comes off the shelf', () => {
    const kept = { ...firstLaid(picture, size), id: 'a kelp' };
    expect(isKeptPhotograph(kept)).toBe(true);
    for (const bad of [
      null,
      'kelp',
      { ...kept, image: 'data:' },
      { ...kept, widthPx: 0 },
      { ...kept, opacity: 'half' },
      { ...kept, laid: { ...kept.laid, a: 0, b: 0 } },
      { ...kept, laid: { ...kept.laid, dx: Number.NaN } },
      { ...kept, laid: undefined },
    ]) {
      expect(isKeptPhotograph(bad)).toBe(false);
    }
  });
});
