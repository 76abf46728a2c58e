import type { Point } from './sheet.ts';

/** A line beside another, at a distance to its left. */
export function beside(line: readonly Point[], distance: number): Point[] {
  return line.map(({ x, y }, i) => {
    const before = line[i - 1] ?? (line[i] as Point);
    const after = line[i + 1] ?? (line[i] as Point);
    const length = Math.hypot(after.x - before.x, after.y - before.y) || 1;
    return {
      x: x + ((after.y - before.y) / length) * distance,
      y: y - ((after.x - before.x) / length) * distance,
    };
  });
}
