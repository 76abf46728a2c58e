import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cardPlace } from '../../../app/stage/hint-card.ts';
import { loupePlace } from '../../../app/stage/loupe-place.ts';
import { runs } from '../../support/runs.ts';

test('the card is never off the stage, and never under the hand where there is room for both', () => {
  const px = (least: number, most: number) => fc.integer({ min: least, max: most });
  fc.assert(
    fc.property(
      px(390, 1600),
      px(560, 1000),
      px(60, 330),
      px(40, 190),
      fc.constantFrom('mouse' as const, 'touch' as const, 'pen' as const),
      fc.constantFrom(1 as const, -1 as const),
      px(0, 1000),
      px(0, 1000),
      (width, height, cardWidth, cardHeight, kind, lean, xShare, yShare) => {
        const at = { x: (xShare / 1000) * width, y: (yShare / 1000) * height, kind };
        const { left, top } = cardPlace(
          { at, lean },
          { width: cardWidth, height: cardHeight },
          { width, height },
        );
        expect(left).toBeGreaterThanOrEqual(0);
        expect(top).toBeGreaterThanOrEqual(0);
        expect(left + cardWidth).toBeLessThanOrEqual(width);
        expect(top + cardHeight).toBeLessThanOrEqual(height);
        const covers = at.x > left && at.x < left + cardWidth && at.y > top && at.y < top + cardHeight;
        expect(covers).toBe(false);
      },
    ),
    runs(500),
  );
});

test('the loupe is never off the stage, and never under the finger', () => {
  const size = fc.integer({ min: 320, max: 1600 });
  const share = fc.integer({ min: 0, max: 1000 });
  fc.assert(
    fc.property(size, size, share, share, (width, height, xShare, yShare) => {
      const at = { x: (xShare / 1000) * width, y: (yShare / 1000) * height };
      const { left, right, top, bottom } = loupePlace(at, { width, height });
      expect(Math.min(left, top, width - right, height - bottom)).toBeGreaterThanOrEqual(0);
      expect(at.x > left && at.x < right && at.y > top && at.y < bottom).toBe(false);
    }),
    runs(500),
  );
});
