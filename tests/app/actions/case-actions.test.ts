import { describe, expect, test } from 'vitest';
import { start } from '../../../app/actions/action.ts';
import { actions } from '../../../app/actions/index.ts';
import { selectionKey } from '../../../app/canvas/model.ts';
import { inHandOf } from '../../../app/tools/in-hand.ts';
import { Driver } from '../driver.ts';

function run(driver: Driver, id: string, held = false): void {
  const action = actions.find((one) => one.id === id);
  if (!action) throw new Error(`no action ${id}`);
  start(driver.editor, action, held);
}

const select = (driver: Driver, ...keys: Parameters<typeof selectionKey>[]): void =>
  driver.editor.session.setState({ selection: new Set(keys.map((key) => selectionKey(...key))) });

const boards = (driver: Driver) => driver.take.supplies.flatMap((supply) => supply.boards);
const asked = (driver: Driver) => driver.editor.session.getState().asked;

describe('a selected board', () => {
  test('is nudged by 1 mm, with Alt by a tenth, with Shift by ten; as the screen shows it', () => {
    const driver = new Driver();
    select(driver, ['board', 'board-2']);
    const x = () => boards(driver)[1]?.xMm;
    run(driver, 'nudge-left');
    expect(x()).toBe(392);
    run(driver, 'nudge-right-half');
    expect(x()).toBeCloseTo(391.9, 9);
    run(driver, 'nudge-right-push');
    expect(x()).toBeCloseTo(381.9, 9);
    driver.editor.session.setState({ side: 'front' });
    run(driver, 'nudge-left');
    expect(x()).toBeCloseTo(380.9, 9);
    run(driver, 'nudge-up');
    expect(boards(driver)[1]?.row).toBe('upper');
  });

  test('goes on in one step while the key is held', () => {
    const driver = new Driver();
    select(driver, ['board', 'board-2']);
    for (const held of [false, true, true]) run(driver, 'nudge-left', held);
    expect(boards(driver)[1]?.xMm).toBe(394);
    expect(driver.steps).toBe(1);
  });
});

describe('removing a part of the case', () => {
  test('asks where something would be lost, and tells what', () => {
    const driver = new Driver();
    select(driver, ['row', 'lower']);
    run(driver, 'remove');
    expect(driver.steps).toBe(0);
    expect(asked(driver)?.question).toBe('Remove Lower row?');
    expect(asked(driver)?.lines.join()).toContain('1 board goes with it: Board 2');
  });

  test('does not ask where nothing is', () => {
    const driver = new Driver();
    driver.editor.layouts.run({ type: 'add-row', take: driver.take.id });
    select(driver, ['row', 'row-1']);
    run(driver, 'remove');
    expect(asked(driver)).toBeNull();
    expect(driver.take.rows.map(({ id }) => id)).toEqual(['upper', 'lower']);
  });

  test('takes several as one step', () => {
    const driver = new Driver();
    select(driver, ['board', 'board-1'], ['board', 'board-2']);
    run(driver, 'remove');
    const { edit, question, lines } = asked(driver) ?? {};
    expect(question).toBe('Remove Board 1, Board 2?');
    expect(lines?.some((line) => line.includes('go with it'))).toBe(false);
    if (edit) driver.editor.layouts.run(edit);
    expect(boards(driver)).toEqual([]);
    driver.editor.layouts.undo();
    expect(boards(driver)).toHaveLength(2);
  });

  test('tells in the banner why the only row stays', () => {
    const driver = new Driver();
    run(driver, 'new-layout');
    select(driver, ['row', 'row-1']);
    run(driver, 'remove');
    expect(driver.editor.session.getState().banner).toBe('Row 1 is the only row.');
  });
});

describe('the panel of the case', () => {
  const fold = (driver: Driver) => driver.editor.session.getState().fold;

  test('opens with an empty case and by its key, and shuts with Escape before the selection goes', () => {
    const driver = new Driver();
    run(driver, 'show-case');
    select(driver, ['row', 'lower']);
    expect(fold(driver)).toBe('case');
    run(driver, 'let-go');
    expect([fold(driver), driver.selection]).toEqual([null, ['row:lower']]);
    run(driver, 'let-go');
    expect(driver.selection).toEqual([]);
    run(driver, 'new-layout');
    expect(fold(driver)).toBe('case');
    expect(inHandOf(driver.editor.session.getState().inHand, driver.editor.layouts.layout().kit)).toBeNull();
  });
});
