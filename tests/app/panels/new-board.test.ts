import { describe, expect, test } from 'vitest';
import { newBoard } from '../../../app/panels/case/new-board.ts';
import { applyEdit, demoLayout, emptyLayout, type Layout } from '../../../src/index.ts';

function withBoard(layout: Layout) {
  const [take] = layout.takes;
  const edit = take && newBoard(layout.kit, take, 'supply');
  const done = edit && applyEdit(layout, edit);
  if (!done?.ok) throw new Error(done?.error.message ?? 'no board');
  return done.value.takes[0]?.supplies[0]?.boards ?? [];
}

describe('a new board', () => {
  test('has a line of power headers like those that there are', () => {
    const boards = withBoard(demoLayout());
    expect(boards).toHaveLength(3);
    expect(boards[2]).toMatchObject({ name: 'Board 3', row: 'upper', xMm: 0 });
    expect(boards[2]?.headers.map(({ bus }) => bus)).toEqual(Array(8).fill('power-16'));
  });

  test('stands beside the one before where there is room, or in the middle of a row without one', () => {
    const empty = emptyLayout();
    expect(withBoard(empty)[1]?.xMm).toBe(0);
    const wide = applyEdit(empty, {
      type: 'change-row',
      take: 'first',
      row: 'row-1',
      fields: { widthHp: 104 },
    });
    if (!wide.ok) throw new Error(wide.error.message);
    expect(withBoard(wide.value)[1]?.xMm).toBe(290 + 114 + 6);
    const two = applyEdit(empty, { type: 'add-row', take: 'first' });
    if (!two.ok) throw new Error(two.error.message);
    // The middle of 84 HP, 426.72 mm, less half a board.
    expect(withBoard(two.value)[1]).toMatchObject({ row: 'row-2', xMm: 156 });
  });

  test('is refused a place where there is no row', () => {
    const [take] = demoLayout().takes;
    expect(take && newBoard(demoLayout().kit, { ...take, rows: [] }, 'supply')).toBeUndefined();
  });
});
