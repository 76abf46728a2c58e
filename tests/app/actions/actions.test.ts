import { describe, expect, test } from 'vitest';
import { start } from '../../../app/actions/action.ts';
import { feedAllThatNeed } from '../../../app/actions/feed-all.ts';
import { actions } from '../../../app/actions/index.ts';
import { keysOf } from '../../../app/actions/keys-of.ts';
import { openText } from '../../../app/actions/open-text.ts';
import { actionFor } from '../../../app/actions/shortcuts.ts';
import { showTake } from '../../../app/actions/show-take.ts';
import { insetsOf, viewportNow } from '../../../app/store/view.ts';
import { fail } from '../../../src/layout/result.ts';
import { Driver } from '../driver.ts';

function press(driver: Driver, key: string, ...modifiers: ('ctrl' | 'shift' | 'alt')[]): void {
  const has = (name: 'ctrl' | 'shift' | 'alt') => modifiers.includes(name);
  const action = actionFor(actions, {
    key,
    ctrlKey: has('ctrl'),
    metaKey: false,
    shiftKey: has('shift'),
    altKey: has('alt'),
  });
  if (!action) throw new Error(`no action for ${key}`);
  start(driver.editor, action);
}

const withSelected = (...ids: string[]) => {
  const driver = new Driver();
  for (const id of ids) driver.with({ mod: true }).click(driver.on(id));
  return driver;
};

describe('the list of actions', () => {
  test('no two have the same id or the same keys', () => {
    const ids = actions.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const keys = actions
      .flatMap(({ shortcuts }) => shortcuts ?? [])
      .map((shortcut) => keysOf(shortcut, false));
    expect(keys.filter((one, i) => keys.indexOf(one) !== i)).toEqual([]);
  });

  test('nothing but looking is done while something is dragged', () => {
    const driver = withSelected('gull-1');
    driver.down(driver.on('gull-1')).move(driver.hp(3));
    for (const key of ['Delete', 'p', 't']) press(driver, key);
    press(driver, 'z', 'ctrl');
    expect(driver.isMoving).toBe(true);
    driver.up();
    expect(driver.place('gull-1')).toEqual(['upper', 69]);
  });
});

describe('feeding all that need it', () => {
  test('lays the leads in one step, and says what it chose; nothing more to do after that', async () => {
    const driver = new Driver();
    const { editor } = driver;
    expect(feedAllThatNeed.enabled(editor)).toBe(false);
    showTake(editor, 'one-long-jetty');
    expect(feedAllThatNeed.enabled(editor)).toBe(true);
    const before = driver.take.ribbons.length;
    await feedAllThatNeed.run(editor);
    expect(driver.take.ribbons.length).toBe(before + 1);
    expect(driver.steps).toBe(1);
    expect(editor.session.getState().banner).toBe(
      '1 lead laid. Lead 16 to 10, 250 mm, from Boulder 1 to header 3 of Board 1. Boulder 1 takes it for all 5: the shortest lead among them; 239.4 mm are needed.',
    );
    expect(feedAllThatNeed.enabled(editor)).toBe(false);
    editor.layouts.undo();
    expect(driver.take.ribbons.length).toBe(before);
  });
});

describe('shortcuts', () => {
  const idFor = (key: string, shiftKey = false, altKey = false, ctrlKey = false) =>
    actionFor(actions, { key, shiftKey, altKey, ctrlKey, metaKey: false })?.id;

  test('letters count whatever Shift makes of them, signs however they are typed', () => {
    expect(idFor('t')).toBe('turn');
    expect(idFor('T', true)).toBeUndefined();
    expect(idFor('N', true)).toBe('previous-note');
    expect(idFor('+', true)).toBe('zoom-in');
    expect(idFor('t', false, false, true)).toBeUndefined();
  });

  test('are written as on the keys of the machine', () => {
    expect(keysOf({ key: 'z', mod: true, shift: true }, false)).toBe('Ctrl+Shift+Z');
    expect(keysOf({ key: 'z', mod: true, shift: true }, true)).toBe('⇧⌘Z');
    expect(keysOf({ key: 'ArrowLeft', alt: true }, false)).toBe('Alt+←');
  });
});

describe('keys', () => {
  test('arrows move by 1 HP as the screen shows it, with Alt by half, with Shift pushing', () => {
    const driver = withSelected('gull-1');
    press(driver, 'ArrowLeft');
    expect(driver.place('gull-1')).toEqual(['upper', 73]);
    press(driver, 'ArrowRight', 'alt');
    expect(driver.place('gull-1')).toEqual(['upper', 72.5]);
    for (let i = 0; i < 3; i++) press(driver, 'ArrowLeft', 'shift');
    expect(driver.place('foghorn')).toEqual(['upper', 84]);
    driver.editor.session.setState({ side: 'front' });
    press(driver, 'ArrowLeft');
    expect(driver.place('gull-1')).toEqual(['upper', 74.5]);
    press(driver, 'ArrowDown');
    expect(driver.place('gull-1')).toEqual(['lower', 74.5]);
  });

  test('a key held down is one step, a key pressed again another', () => {
    const driver = withSelected('gull-1');
    const action = actions.find(({ id }) => id === 'nudge-left');
    for (const held of [false, true, true, false, true]) if (action) start(driver.editor, action, held);
    expect(driver.place('gull-1')).toEqual(['upper', 77]);
    expect(driver.steps).toBe(2);
    driver.editor.layouts.undo();
    expect(driver.place('gull-1')).toEqual(['upper', 75]);
    driver.editor.layouts.undo();
    expect(driver.place('gull-1')).toEqual(['upper', 72]);
  });

  test('a key held down against the end of the row takes nothing else back', () => {
    const driver = withSelected('gull-1');
    driver.editor.layouts.run({
      type: 'move-modules',
      take: driver.take.id,
      moves: [{ module: 'gull-1', row: 'upper', atHp: 96 }],
    });
    const action = actions.find(({ id }) => id === 'nudge-left');
    for (const held of [false, true, true]) if (action) start(driver.editor, action, held);
    expect(driver.place('gull-1')).toEqual(['upper', 96]);
    expect(driver.steps).toBe(1);
  });

  test('Delete removes what is selected, one undo brings all back', () => {
    const driver = withSelected('gull-1', 'foghorn');
    const before = driver.take;
    press(driver, 'Delete');
    expect(driver.take.modules).toHaveLength(before.modules.length - 2);
    press(driver, 'z', 'ctrl');
    expect(driver.take).toEqual(before);
    press(driver, 'z', 'ctrl', 'shift');
    expect(driver.take.modules).toHaveLength(before.modules.length - 2);
  });

  test('duplicate selects the copies', () => {
    const driver = withSelected('gull-1');
    press(driver, 'd', 'ctrl');
    expect(driver.selection).toEqual(['module:gull-3']);
  });

  test('swap wants two, pin goes back and forth', () => {
    const driver = withSelected('gull-1', 'gull-2');
    press(driver, 'x');
    expect([driver.place('gull-1'), driver.place('gull-2')]).toEqual([
      ['lower', 60],
      ['upper', 72],
    ]);
    press(driver, 'p');
    expect(driver.module('gull-1').pinned).toBe(true);
    press(driver, 'p');
    expect(driver.module('gull-1').pinned).toBeUndefined();
  });

  test('what is refused is told', () => {
    const driver = withSelected('gull-1', 'gull-2');
    press(driver, 'p');
    press(driver, 'x');
    expect(driver.editor.session.getState().banner).toBe('Gull 1 is pinned.');
  });

  test('Escape lets go of what is in hand, then of the note, then of the selection', () => {
    const driver = withSelected('gull-1');
    driver.editor.session.setState({ inHand: 'module:cobble', focus: 'some-note' });
    press(driver, 'Escape');
    expect(driver.editor.session.getState()).toMatchObject({ inHand: null, focus: 'some-note' });
    press(driver, 'Escape');
    expect(driver.editor.session.getState().focus).toBeNull();
    expect(driver.selection).toHaveLength(1);
    press(driver, 'Escape');
    expect(driver.selection).toEqual([]);
  });

  test('turning keeps in the middle what is in the middle', () => {
    const driver = new Driver();
    driver.editor.session.setState({ viewport: { scale: 4, x: -300, y: -100 } });
    const before = driver.on('boulder-1');
    press(driver, 't');
    const { left, right } = insetsOf({ width: 1440, height: 700, text: 1 });
    const middle = (left + 1440 - right) / 2;
    expect(driver.on('boulder-1').x - middle).toBeCloseTo(middle - before.x);
    press(driver, 't');
    expect(viewportNow(driver.editor)).toEqual({ scale: 4, x: -300, y: -100 });
  });

  test('brackets go round the takes, a new take is a copy of the one shown, and can be removed', () => {
    const driver = new Driver();
    press(driver, ']');
    expect(driver.take.id).toBe('one-long-jetty');
    press(driver, ']');
    expect(driver.take.id).toBe('three-jetties');
    const run = (id: string) => {
      const action = actions.find((candidate) => candidate.id === id);
      if (action) start(driver.editor, action);
    };
    run('add-take');
    expect(driver.take.name).toBe('Three jetties 2');
    run('remove-take');
    expect(driver.take.id).toBe('one-long-jetty');
  });

  test('N goes through the notes, worst first, and round', () => {
    const driver = new Driver();
    press(driver, ']');
    const focus = () => driver.editor.session.getState().focus;
    press(driver, 'n');
    expect(focus()).toMatch(/^displaced\//);
    press(driver, 'n', 'shift');
    expect(focus()).not.toMatch(/^displaced\//);
    press(driver, 'n');
    expect(focus()).toMatch(/^displaced\//);
  });
});

describe('opening', () => {
  test('what cannot be read leaves everything as it was and says one line', async () => {
    const driver = withSelected('gull-1');
    const before = driver.editor.layouts.layout();
    await openText(driver.editor, fail('The file could not be read.'));
    expect(driver.editor.session.getState().banner).toBe('The file could not be read.');
    await openText(driver.editor, { ok: true, value: '{"format":"something"}' });
    expect(driver.editor.session.getState().banner).toMatch(/^Not opened: /);
    expect(driver.editor.layouts.layout()).toBe(before);
    expect(driver.selection).toEqual(['module:gull-1']);
  });

  test('a saved file opens again, and mine is an undo away', async () => {
    const driver = withSelected('gull-1');
    press(driver, 'Delete');
    const mine = driver.editor.layouts.layout();
    press(driver, 's', 'ctrl');
    await expect.poll(() => driver.files.saved.size).toBe(1);
    const [name, text] = [...driver.files.saved][0] ?? [];
    expect(name).toBe('Shoreline kit');
    const other = new Driver();
    await openText(other.editor, { ok: true, value: text ?? '' });
    expect(other.editor.layouts.layout()).toEqual({ ...mine, id: 'fresh-1' });
    press(other, 'z', 'ctrl');
    expect(other.take.modules.some(({ id }) => id === 'gull-1')).toBe(true);
  });
});
