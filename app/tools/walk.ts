import type { PlacedModule } from '../../src/index.ts';
import { type Box, moduleBox, type Sheet } from '../../src/index.ts';
import type { Arrow } from '../store/arrows.ts';

const middleOf = ({ left, right }: Box): number => (left + right) / 2;

interface Stop {
  readonly id: string;
  readonly row: number;
  readonly x: number;
}

/** Goes to the next module on that side of the screen, or to the nearest one of the next row that has any. */
export function walk(
  sheet: Sheet,
  modules: readonly PlacedModule[],
  from: string | null,
  arrow: Arrow,
): string | null {
  const stops = modules.map((module): Stop => {
    return { id: module.id, row: module.row.index, x: middleOf(moduleBox(sheet, module)) };
  });
  const here = stops.find(({ id }) => id === from);
  if (!here) return stops.toSorted((a, b) => a.row - b.row || a.x - b.x)[0]?.id ?? null;
  const forward = arrow === 'right' || arrow === 'down' ? 1 : -1;
  const across = arrow === 'left' || arrow === 'right';
  const ahead = stops.filter(({ row, x, id }) =>
    across ? row === here.row && id !== from && (x - here.x) * forward >= 0 : (row - here.row) * forward > 0,
  );
  const distance = ({ row, x }: Stop): number =>
    across ? Math.abs(x - here.x) : Math.abs(row - here.row) * sheet.width + Math.abs(x - here.x);
  return ahead.toSorted((a, b) => distance(a) - distance(b))[0]?.id ?? here.id;
}
