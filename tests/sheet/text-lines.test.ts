import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linesOf, textMm } from '../../src/sheet/text-lines.ts';
import { runs } from '../support/runs.ts';

const letters = { sizeMm: 3 };
const bare = (text: string): string => text.replace(/\s+/gu, '');

describe('lines', () => {
  it('break between words, and within a word only where it has no room of its own', () => {
    expect(linesOf('Boulder 1 and Jetty A', 22, letters)).toEqual(['Boulder 1', 'and Jetty A']);
    const cut = linesOf('Donaudampfschiff', 15, letters);
    expect(cut.length).toBeGreaterThan(1);
    expect(cut.join('')).toBe('Donaudampfschiff');
    expect(linesOf('→ Donaudampfschiff', 15, letters)[0]).toMatch(/^→ D/);
  });

  it('lose nothing, and have no line too wide but one sign that is', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 80 }),
        fc.integer({ min: 4, max: 80 }),
        (text, width) => {
          const lines = linesOf(text, width, letters);
          expect(bare(lines.join(''))).toBe(bare(text));
          for (const line of lines)
            if (Array.from(line).length > 1)
              expect(textMm(line, letters)).toBeLessThanOrEqual(Math.max(width, 37) + 1e-9);
        },
      ),
      runs(200),
    );
  });

  it('keep a letter and its marks together', () => {
    expect(linesOf('e\u0301'.repeat(12), 8, letters).every((line) => line.startsWith('e'))).toBe(true);
  });

  it('are one where there is nothing', () => {
    expect(linesOf('', 10, letters)).toEqual(['']);
  });
});
