import { expect, test } from 'vitest';
import type { Context } from '../../../app/canvas/draw/paper.ts';
import { widthOf } from '../../../app/canvas/draw/text-width.ts';

/** A context whose signs are as wide as their codes say, and that tells what was measured. */
function measuring(): { readonly ctx: Context; readonly asked: string[] } {
  const asked: string[] = [];
  const measureText = (text: string) => {
    asked.push(text);
    return { width: [...text].reduce((sum, sign) => sum + (sign.codePointAt(0) ?? 0) / 10, 0) };
  };
  return { ctx: { font: '', measureText } as unknown as Context, asked };
}

test('a text in ASCII is as wide as its signs, each of which is measured once', () => {
  const { ctx, asked } = measuring();
  expect(widthOf(ctx, 'ABBA', 11)).toBeCloseTo((65 + 66 + 66 + 65) / 10);
  expect(widthOf(ctx, 'BAB', 11)).toBeCloseTo((66 + 65 + 66) / 10);
  expect(asked).toEqual(['A', 'B']);
});

test('signs are measured anew in another size, another weight and another context', () => {
  const { ctx, asked } = measuring();
  for (const [px, weight] of [
    [11, 400],
    [12, 400],
    [11, 600],
  ] as const)
    widthOf(ctx, 'A', px, weight);
  expect(asked).toEqual(['A', 'A', 'A']);
  const other = measuring();
  widthOf(other.ctx, 'A', 11);
  expect(other.asked).toEqual(['A']);
});

test('a text with other signs is measured whole, since they may join or stand on one another', () => {
  const { ctx, asked } = measuring();
  const [arabic, accent] = ['\u0633\u0644\u0627\u0645', 'e\u0301'];
  for (const text of [arabic, accent, arabic]) widthOf(ctx, text, 11);
  expect(asked).toEqual([arabic, 'e', accent]);
});
