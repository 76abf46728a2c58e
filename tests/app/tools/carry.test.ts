import { describe, expect, test } from 'vitest';
import { shownAnalysis } from '../../../app/editor.ts';
import { startAnnouncer } from '../../../app/store/announcer.ts';
import { selectionOf } from '../../../app/store/selection.ts';
import { createCarry } from '../../../app/tools/carry.ts';
import { listKeysOf } from '../../../app/tools/list-keys.ts';
import { walk } from '../../../app/tools/walk.ts';
import { layOutSheet } from '../../../src/drawing/sheet.ts';
import { Driver } from '../driver.ts';

function carrying(id: string) {
  const driver = new Driver();
  driver.editor.session.setState({ selection: selectionOf('module', [id]) });
  const carry = createCarry(driver.editor);
  startAnnouncer(driver.editor);
  carry.pick(id);
  return { driver, carry, spoken: () => driver.editor.session.getState().spoken };
}

describe('carrying by keys', () => {
  test('steps add up and are one step to undo', () => {
    const { driver, carry, spoken } = carrying('gull-1');
    expect(spoken()).toMatch(/^Gull 1 picked up/);
    carry.step(0, 1, false);
    carry.step(0, 0.5, false);
    expect(spoken()).toBe('73.5 HP, Upper row.');
    expect(driver.place('gull-1')).toEqual(['upper', 72]);
    carry.drop();
    expect(driver.place('gull-1')).toEqual(['upper', 73.5]);
    expect(driver.steps).toBe(1);
  });

  test('across rows, and not beyond the ends', () => {
    const { carry, spoken } = carrying('gull-1');
    carry.step(1, 0, false);
    expect(spoken()).toBe('72 HP, Lower row.');
    carry.step(1, 900, false);
    expect(spoken()).toBe('96 HP, Lower row.');
    carry.step(0, -1, false);
    expect(spoken()).toBe('95 HP, Lower row.');
  });

  test('put back, it never moved', () => {
    const { driver, carry, spoken } = carrying('gull-1');
    carry.step(0, 3, false);
    carry.cancel();
    expect(spoken()).toBe('Put back.');
    expect(driver.place('gull-1')).toEqual(['upper', 72]);
    expect(driver.steps).toBe(0);
    expect(carry.isCarrying()).toBe(false);
  });

  test('once put down it says which notes came and went', () => {
    const { carry, spoken } = carrying('gull-1');
    carry.step(0, 3, false);
    carry.drop();
    expect(spoken()).toMatch(/^New note: Gull 1 and Foghorn share 1 HP\. .*will not fit or work\.$/);
  });

  test('a pinned module stays', () => {
    const driver = new Driver();
    driver.editor.layouts.run({ type: 'pin-modules', take: driver.take.id, modules: ['kelp'], pinned: true });
    driver.editor.session.setState({ selection: selectionOf('module', ['kelp']) });
    const carry = createCarry(driver.editor);
    carry.pick('kelp');
    expect(carry.isCarrying()).toBe(false);
    expect(driver.editor.session.getState().spoken).toBe('Kelp is pinned.');
  });
});

describe('walking from module to module', () => {
  const { derived } = shownAnalysis(new Driver().editor);
  const { modules } = derived.places;
  const rear = layOutSheet(derived, 'rear', 1);
  const front = layOutSheet(derived, 'front', 1);

  test('starts at the top left of the screen', () => {
    expect(walk(rear, modules, null, 'right')).toBe('foghorn');
    expect(walk(front, modules, null, 'down')).toBe('harbour');
  });

  test('left and right are the screen’s', () => {
    expect(walk(rear, modules, 'jetty-a', 'right')).toBe('harbour');
    expect(walk(front, modules, 'jetty-a', 'right')).toBe('cobble-1');
    expect(walk(rear, modules, 'harbour', 'right')).toBe('harbour');
  });

  test('up and down go to the nearest of the next row', () => {
    expect(walk(rear, modules, 'gull-1', 'down')).toBe('gull-2');
    expect(walk(rear, modules, 'kelp', 'up')).toBe('boulder-2');
    expect(walk(rear, modules, 'kelp', 'down')).toBe('kelp');
  });
});

describe('keys that the drawing and By list share', () => {
  test('what one picks up the other puts down; a pointer puts it back, so that no gesture is left over', () => {
    const { editor } = new Driver();
    const keys = listKeysOf(editor);
    expect(listKeysOf(editor)).toBe(keys);
    keys.pickUp({ module: 'gull-1' });
    expect(keys.isCarrying()).toBe(true);
    keys.pointed();
    expect(keys.isCarrying()).toBe(false);
    expect(editor.gestures.store.getState().running).toBe(false);
    keys.pickUp({ ribbon: 's1', connector: 1 });
    expect(editor.session.getState().connector).toEqual({ ribbon: 's1', connector: 1 });
    expect(keys.press({ key: 'Escape', shiftKey: false, altKey: false })).toBe(true);
    expect(keys.isCarrying()).toBe(false);
    keys.pickUp({ ribbon: 's1' });
    expect(editor.session.getState().spoken).toMatch(/^S1 picked up\. Left and right slide it/);
    keys.leave();
    expect(editor.gestures.store.getState().running).toBe(false);
  });
});
