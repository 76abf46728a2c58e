import { describe, expect, test, vi } from 'vitest';
import { start } from '../../../app/actions/action.ts';
import { actions } from '../../../app/actions/index.ts';
import { actionFor } from '../../../app/actions/shortcuts.ts';
import { startAiming } from '../../../app/store/aim.ts';
import { createListKeys } from '../../../app/tools/list-keys.ts';
import { aimDrawn } from './aim-drawn.ts';
import { demoWithout, on, withRibbon } from './ribbon-rack.ts';

vi.mock(import('../../../app/canvas/draw/aim.ts'), async (original) => ({
  ...(await original()),
  drawAim: vi.fn(),
}));

/** The keys as the page leads them: the list's own first, then the actions. */
function typing(...args: Parameters<typeof withRibbon>) {
  const rack = withRibbon(...args);
  const keys = createListKeys(rack.editor);
  startAiming(rack.editor);
  const press = (...names: string[]): void => {
    for (const key of names) {
      if (keys.press({ key, shiftKey: false, altKey: false })) continue;
      const action = actionFor(actions, {
        key,
        shiftKey: false,
        altKey: false,
        ctrlKey: false,
        metaKey: false,
      });
      if (action) start(rack.editor, action);
    }
  };
  return { ...rack, keys, press };
}

describe('keys on a selected ribbon', () => {
  test('arrows go from connector to connector as they lie on the screen', () => {
    const { press, chosen, spoken, editor } = typing('s1');
    press('ArrowRight');
    expect(chosen()?.connector).toBe(0);
    expect(spoken()).toBe('S1, connector 1, Boulder 1, shore, lands.');
    press('ArrowRight');
    expect(spoken()).toBe('S1, connector 2, free.');
    expect(editor.session.getState().aim).toMatchObject({ ribbon: 's1', connector: 1 });
    press('ArrowLeft', 'ArrowLeft', 'ArrowLeft');
    expect(chosen()?.connector).toBe(0);
    editor.session.setState({ connector: null });
    press('ArrowLeft');
    expect(chosen()?.connector).toBe(4);
  });

  test('Enter picks the connector up, arrows carry it to the next header, Enter puts it down', () => {
    const { press, seats, spoken, driver, editor } = typing('s1', demoWithout('s2'));
    press('ArrowRight', 'Enter');
    expect(spoken()).toMatch(/^Connector 1 of S1 picked up; 5 places fit\./);
    press('ArrowLeft');
    expect(seats(true)[0]).toEqual(on('jetty-b'));
    expect(spoken()).toMatch(/^connector 1, Jetty B, shore, [\d.]+ mm off\.$/);
    press('ArrowRight', 'ArrowLeft', 'ArrowLeft');
    expect(seats(true)[0]).toEqual(on('boulder-2'));
    expect(aimDrawn(editor)?.places).toHaveLength(5);
    press('Enter');
    expect(seats()[0]).toEqual(on('boulder-2'));
    expect(driver.steps).toBe(1);
  });

  test('Escape puts back what is carried, then lets the connector go, then the ribbon', () => {
    const { press, seats, chosen, driver, spoken } = typing('s1', demoWithout('s2'));
    press('ArrowRight', 'Enter', 'ArrowLeft', 'Escape');
    expect(spoken()).toBe('Put back.');
    expect(seats()[0]).toEqual(on('boulder-1'));
    expect(driver.steps).toBe(0);
    expect(chosen()).not.toBeNull();
    press('Escape');
    expect(chosen()).toBeNull();
    expect(driver.selection).toEqual(['ribbon:s1']);
    press('Escape');
    expect(driver.selection).toEqual([]);
  });

  test('the list losing the keys puts back too', () => {
    const { press, keys, driver } = typing('s1', demoWithout('s2'));
    press('ArrowRight', 'Enter', 'ArrowLeft');
    keys.leave();
    expect(driver.isMoving).toBe(false);
    expect(driver.steps).toBe(0);
  });

  test('with no connector chosen Enter picks up the ribbon, and left and right slide it', () => {
    const { press, seats, spoken, driver } = typing('s1', demoWithout('s2'));
    press('Enter');
    expect(spoken()).toMatch(/^S1 picked up\./);
    press('ArrowDown', 'ArrowRight');
    expect(seats(true)).toMatchObject({ 0: on('cobble-2') });
    expect(spoken()).toMatch(/^S1 on .*; 2 of 5 connectors seated\.$/);
    press('ArrowLeft', 'ArrowLeft', 'Enter');
    expect(seats()[0]).toEqual(on('jetty-b'));
    expect(driver.steps).toBe(1);
  });

  test('against the end it stays where it got to', () => {
    const { press, seats, spoken } = typing('s3');
    press('Enter', 'ArrowLeft');
    expect(spoken()).toBe('No header there.');
    expect(seats(true)).toEqual(seats());
    press('ArrowRight', 'ArrowRight', 'ArrowRight');
    expect(spoken()).toBe('No header there.');
    expect(seats(true)).toEqual({ 0: on('jetty-c') });
    press('Escape');
    expect(Object.keys(seats())).toHaveLength(3);
  });

  test('a locked ribbon and a lead say why they do not', () => {
    const fast = typing('s1');
    fast.press('l', 'Enter');
    expect(fast.spoken()).toBe('S1 is locked.');
    fast.press('ArrowRight', 'Enter');
    expect(fast.spoken()).toBe('S1 is locked.');
    const lead = typing('l1');
    lead.press('Enter');
    expect(lead.spoken()).toBe('L1 does not slide. Arrow keys choose a connector.');
  });

  test('Delete lifts the connector chosen, and else removes the ribbon', () => {
    const { press, seats, driver } = typing('s1');
    press('ArrowRight', 'Delete');
    expect(Object.keys(seats())).toEqual(['2', '3', '4']);
    press('Escape', 'Delete');
    expect(driver.take.ribbons.some(({ id }) => id === 's1')).toBe(false);
  });

  test('r turns it, w twists it after the connector chosen, l locks it, F2 asks for its label', () => {
    const { press, driver, editor } = typing('s1');
    const s1 = () => driver.take.ribbons.find(({ id }) => id === 's1');
    press('r');
    expect(s1()?.stripe).toBe('up');
    press('r', 'w');
    expect(s1()?.twists).toBeUndefined();
    press('ArrowRight', 'ArrowRight', 'w');
    expect(s1()?.twists).toEqual([0, 1]);
    press('w');
    expect(s1()?.twists).toBeUndefined();
    press('ArrowLeft', 'Escape', 'ArrowLeft', 'w');
    expect(s1()?.twists).toEqual([0, 0, 0, 1]);
    press('l');
    expect(s1()?.locked).toBe(true);
    press('w');
    expect(editor.session.getState().banner).toBe('S1 is locked.');
    press('l', 'F2');
    expect(s1()?.locked).toBeUndefined();
    expect(editor.session.getState()).toMatchObject({ labelling: true, fold: 'part' });
  });

  test('b goes from ribbon to ribbon, from a module to the first one on it, to those seated nowhere too', () => {
    const { press, driver, editor, spoken } = typing('s1');
    press('b');
    expect(driver.selection).toEqual(['ribbon:s2']);
    expect(spoken()).toBe('S2, Shore, 4 bending, 4 of 4 connectors seated.');
    editor.session.setState({ selection: new Set(['module:kelp']) });
    press('b');
    expect(driver.selection).toEqual(['ribbon:l7']);
    for (const connector of [0, 1])
      editor.layouts.run({ type: 'unseat', take: driver.take.id, ribbon: 'l7', connector });
    press('Escape', 'Escape');
    expect(driver.selection).toEqual([]);
    for (let i = 0; i < 13; i++) press('b');
    expect(driver.selection).toEqual(['ribbon:l7']);
    press('ArrowRight', 'Enter', 'ArrowLeft', 'Enter');
    expect(driver.take.ribbons.find(({ id }) => id === 'l7')?.seats).toHaveLength(1);
  });
});
