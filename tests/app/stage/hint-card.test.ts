import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cardPlace } from '../../../app/stage/hint-card.ts';
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
