import { describe, expect, test } from 'vitest';
import { togglePush } from '../../../app/actions/settings.ts';
import { marksOf } from '../../../app/canvas/draw/marks.ts';
import { shownAnalysis } from '../../../app/editor.ts';
import { sheetNow, viewportNow } from '../../../app/store/view.ts';
import { Driver } from '../driver.ts';

/** Free ground of the demo's upper row: HP 96 to 104 hold no module. */
const freeGround = (driver: Driver) => {
  const { x, y } = driver.on('foghorn');
  return { x: x - driver.hp(11), y: y + driver.hp(6) };
};

describe('selecting', () => {
  test('a click selects, another one selects instead, ground selects nothing', () => {
    const driver = new Driver().click(new Driver().on('gull-1'));
    expect(driver.selection).toEqual(['module:gull-1']);
    driver.click(driver.on('foghorn'));
    expect(driver.selection).toEqual(['module:foghorn']);
    driver.click(freeGround(driver));
    expect(driver.selection).toEqual([]);
  });

  test('Shift or Ctrl adds, and takes away what was selected', () => {
    const driver = new Driver();
    driver.click(driver.on('gull-1')).with({ shift: true }).click(driver.on('foghorn'));
    expect(driver.selection).toEqual(['module:gull-1', 'module:foghorn']);
    driver.with({ shift: false, mod: true }).click(driver.on('gull-1'));
    expect(driver.selection).toEqual(['module:foghorn']);
  });

  test('a marquee selects what it touches, with Shift besides; taken back it puts the selection back', () => {
    const driver = new Driver();
    driver.click(driver.on('kelp')).down(freeGround(driver)).move(driver.hp(26), 40);
    expect(driver.selection.sort()).toEqual(['module:foghorn', 'module:gull-1']);
    driver.cancel();
    expect(driver.selection).toEqual(['module:kelp']);
    driver.with({ shift: true }).down(freeGround(driver)).move(driver.hp(26), 40).up();
    expect(driver.selection.sort()).toEqual(['module:foghorn', 'module:gull-1', 'module:kelp']);
    expect(driver.editor.gestures.store.getState().marquee).toBeNull();
  });

  test('selecting makes no step and clears nothing to redo', () => {
    const driver = new Driver();
    driver.down(driver.on('gull-1')).move(driver.hp(1)).up();
    driver.editor.layouts.undo();
    driver.click(driver.on('kelp'));
    driver.editor.layouts.redo();
    expect(driver.place('gull-1')).toEqual(['upper', 71]);
  });
});

test('a tap on a mark brings its note forward, another tap the next one of the same mark', () => {
  const driver = new Driver();
  driver.editor.session.setState({ take: 'one-long-jetty' });
  const { x, y } = viewportNow(driver.editor);
  const focus = () => driver.editor.session.getState().focus;
  const { derived, notes } = shownAnalysis(driver.editor);
  const [mark] = marksOf(sheetNow(driver.editor), derived, notes, null);
  if (!mark) throw new Error('no mark');
  driver.click({ x: x + mark.x, y: y + mark.y });
  expect(focus()).toBe(notes[0]?.key);
  expect(driver.selection).toEqual([]);
  driver.click(freeGround(driver));
  expect(focus()).toBeNull();
});

describe('dragging', () => {
  test('in the rear view right on the screen is left on the rails, whole HP by whole HP', () => {
    const driver = new Driver();
    driver.down(driver.on('gull-1')).move(driver.hp(1.4));
    expect(driver.placeShown('gull-1')).toEqual(['upper', 71]);
    expect(driver.place('gull-1')).toEqual(['upper', 72]);
    driver.up();
    expect(driver.place('gull-1')).toEqual(['upper', 71]);
    expect(driver.isMoving).toBe(false);
  });

  test('in the front view right is right', () => {
    const driver = new Driver();
    driver.editor.session.setState({ side: 'front' });
    driver.down(driver.on('gull-1')).move(driver.hp(1.4)).up();
    expect(driver.place('gull-1')).toEqual(['upper', 73]);
  });

  test('one gesture is one step, however far it wandered; undo takes all of it back', () => {
    const driver = new Driver();
    driver.down(driver.on('gull-1')).move(driver.hp(2)).move(-driver.hp(5)).move(driver.hp(1)).up();
    expect(driver.place('gull-1')).toEqual(['upper', 74]);
    expect(driver.steps).toBe(1);
    driver.editor.layouts.undo();
    expect(driver.place('gull-1')).toEqual(['upper', 72]);
  });

  test('back where it began is no step', () => {
    const driver = new Driver();
    driver.down(driver.on('gull-1')).move(driver.hp(4)).move(-driver.hp(4)).up();
    expect(driver.steps).toBe(0);
  });

  test('half an HP with Alt', () => {
    const driver = new Driver();
    driver.with({ alt: true }).down(driver.on('gull-1')).move(-driver.hp(0.6)).up();
    expect(driver.place('gull-1')).toEqual(['upper', 72.5]);
  });

  test('into the row under the pointer', () => {
    const driver = new Driver();
    const { y } = driver.on('gull-1');
    driver
      .down(driver.on('gull-1'))
      .move(-driver.hp(8), driver.on('kelp').y - y)
      .up();
    expect(driver.place('gull-1')).toEqual(['lower', 80]);
  });

  test('all that is selected moves and keeps its distances; what is pinned stays', () => {
    const driver = new Driver();
    driver.editor.layouts.run({ type: 'pin-modules', take: driver.take.id, modules: ['kelp'], pinned: true });
    driver
      .click(driver.on('gull-2'))
      .with({ shift: true })
      .click(driver.on('kelp'))
      .click(driver.on('cobble-6'));
    driver.with({ shift: false }).down(driver.on('gull-2')).move(-driver.hp(20)).up();
    expect(driver.place('gull-2')).toEqual(['lower', 80]);
    expect(driver.place('cobble-6')).toEqual(['lower', 60]);
    expect(driver.place('kelp')).toEqual(['lower', 48]);
  });

  test('a pinned module cannot be dragged', () => {
    const driver = new Driver();
    driver.editor.layouts.run({ type: 'pin-modules', take: driver.take.id, modules: ['kelp'], pinned: true });
    driver.down(driver.on('kelp')).move(driver.hp(5)).up();
    expect(driver.place('kelp')).toEqual(['lower', 48]);
    expect(driver.steps).toBe(1);
  });

  test('nothing leaves the rails', () => {
    const driver = new Driver();
    driver.down(driver.on('foghorn')).move(-driver.hp(60)).up();
    expect(driver.place('foghorn')).toEqual(['upper', 90]);
  });

  test('without pushing it overlaps, with Shift neighbours give way, and the setting turns it round', () => {
    const drag = (driver: Driver) => driver.down(driver.on('gull-1')).move(-driver.hp(5)).up();
    const plain = drag(new Driver());
    expect(plain.place('foghorn')).toEqual(['upper', 82]);
    expect(plain.place('gull-1')).toEqual(['upper', 77]);
    const pushing = drag(new Driver().with({ shift: true }));
    expect(pushing.place('foghorn')).toEqual(['upper', 85]);
    expect(pushing.steps).toBe(1);
    const bySetting = new Driver();
    togglePush.run(bySetting.editor);
    expect(drag(bySetting).place('foghorn')).toEqual(['upper', 85]);
    bySetting.editor.layouts.undo();
    expect(drag(bySetting.with({ shift: true })).place('foghorn')).toEqual(['upper', 82]);
  });

  test('a press on a ribbon that is not selected moves the module beneath', () => {
    const driver = new Driver();
    const { x, y } = driver.on('boulder-2');
    const band = { x: x + 20, y: y + 90 * viewportNow(driver.editor).scale };
    driver.click(band);
    expect(driver.selection[0]).toMatch(/^ribbon:/);
    driver.click(driver.on('gull-1')).down(band).move(driver.hp(1)).up();
    expect(driver.place('boulder-2')).toEqual(['upper', 44]);
  });

  test('findings follow while it moves', () => {
    const driver = new Driver();
    driver.down(driver.on('gull-1')).move(-driver.hp(5));
    expect(driver.editor.gestures.get()?.notes.map(({ check }) => check)).toContain('overlap');
    expect([...(driver.editor.gestures.get()?.modules ?? [])]).toEqual(['gull-1']);
  });
});

describe('called off', () => {
  const states: [string, (driver: Driver) => Driver][] = [
    ['at rest', (driver) => driver],
    ['pressed', (driver) => driver.down(driver.on('gull-1'))],
    ['dragging', (driver) => driver.down(driver.on('gull-1')).move(driver.hp(9), 30)],
    [
      'dragging and pushing',
      (driver) => driver.with({ shift: true }).down(driver.on('gull-1')).move(-driver.hp(6)),
    ],
    ['drawing a marquee', (driver) => driver.down(freeGround(driver)).move(driver.hp(20), 50)],
  ];

  test.each(states)('%s: everything is as before, and the next gesture starts anew', (_, reach) => {
    const driver = reach(new Driver());
    driver.cancel();
    expect(driver.take).toEqual(new Driver().take);
    expect(driver.steps).toBe(0);
    expect(driver.editor.gestures.store.getState()).toEqual({ running: false, moving: null, marquee: null });
    driver.move(40).up();
    expect(driver.steps).toBe(0);
    driver.with({ shift: false }).down(driver.on('gull-1')).move(driver.hp(1)).up();
    expect(driver.place('gull-1')).toEqual(['upper', 71]);
  });
});

describe('by finger', () => {
  test('a tap selects, a drag on what is not selected moves the sheet, on what is selected moves it', () => {
    const driver = new Driver().with({ kind: 'touch' });
    driver.editor.session.setState({ viewport: { scale: 2, x: -200, y: -50 } });
    driver.down(driver.on('gull-1')).move(60, 20).up();
    expect(viewportNow(driver.editor)).toEqual({ scale: 2, x: -140, y: -30 });
    driver.click(driver.on('gull-1'));
    expect(driver.selection).toEqual(['module:gull-1']);
    driver.down(driver.on('gull-1')).move(driver.hp(2)).up();
    expect(driver.place('gull-1')).toEqual(['upper', 70]);
  });

  const rest = (driver: Driver, id: string): void => {
    driver.down(driver.on(id));
    driver.clock.pass(500);
  };

  test('a long press asks what can be done; what was selected before can be taken to it', () => {
    const driver = new Driver().with({ kind: 'touch' });
    driver.click(driver.on('gull-1'));
    rest(driver, 'foghorn');
    expect(driver.editor.session.getState().choosing).toBeNull();
    driver.up();
    const { choosing } = driver.editor.session.getState();
    expect(choosing).toMatchObject({ item: 'module:foghorn', onStage: true });
    expect([...(choosing?.others ?? [])]).toEqual(['module:gull-1']);
    expect(driver.selection).toEqual(['module:foghorn']);
    expect(driver.steps).toBe(0);
  });

  test('a long press that moves on moves what it rests on, selected or not, and asks nothing', () => {
    const driver = new Driver().with({ kind: 'touch' });
    rest(driver, 'gull-1');
    driver.move(driver.hp(2)).up();
    expect(driver.place('gull-1')).toEqual(['upper', 70]);
    expect(driver.editor.session.getState().choosing).toBeNull();
    expect(driver.steps).toBe(1);
  });

  test('a long press called off, by Escape or a second finger, asks nothing', () => {
    const driver = new Driver().with({ kind: 'touch' });
    rest(driver, 'gull-1');
    driver.cancel().up();
    expect(driver.editor.session.getState().choosing).toBeNull();
    rest(driver, 'gull-1');
    driver.with({ id: 2 }).down({ x: 600, y: 300 }).up();
    expect(driver.editor.session.getState().choosing).toBeNull();
    expect(driver.selection).toEqual([]);
  });

  test('a second finger calls off the drag and pinches: what lies between the fingers stays there', () => {
    const driver = new Driver().with({ kind: 'touch' });
    driver.click(driver.on('gull-1'));
    const before = viewportNow(driver.editor);
    const first = driver.on('gull-1');
    driver.down(first).move(driver.hp(3));
    driver.with({ id: 2 }).down({ x: first.x + driver.hp(3) + 100, y: first.y });
    expect(driver.isMoving).toBe(false);
    driver.move(100).up();
    expect(driver.place('gull-1')).toEqual(['upper', 72]);
    expect(viewportNow(driver.editor).scale).toBeCloseTo(before.scale * 2);
  });
});
