import { describe, expect, test } from 'vitest';
import { labelOf } from '../../../app/store/edit-label.ts';
import { createLayoutStore, type LayoutStore } from '../../../app/store/layout-store.ts';
import { applyEdit } from '../../../src/edit/apply.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
import { emptyLayout } from '../../../src/layout/starter.ts';

const TAKE = 'three-jetties';
const move = (atHp: number) => ({
  type: 'move-modules' as const,
  take: TAKE,
  moves: [{ module: 'gull-1', row: 'upper', atHp }],
});

function equipped(): LayoutStore {
  const store = createLayoutStore(demoLayout());
  store.equip(applyEdit, labelOf);
  return store;
}

const lastLabel = (store: LayoutStore) => store.store.getState().history.past.at(-1)?.label;

describe('the layout store', () => {
  test('refuses edits until the commands are there', () => {
    const store = createLayoutStore(demoLayout());
    const before = store.layout();
    expect(store.run(move(80))).toEqual({ ok: false, error: 'The program is still loading' });
    expect(store.layout()).toBe(before);
  });

  test('an edit is one step with a name', () => {
    const store = equipped();
    expect(store.run(move(80)).ok).toBe(true);
    expect(lastLabel(store)).toBe('move Gull 1');
    store.undo();
    expect(store.layout().takes[0]?.modules.find(({ id }) => id === 'gull-1')?.atHp).toBe(72);
  });

  test('an edit that is refused says why and changes nothing', () => {
    const store = equipped();
    const before = store.store.getState();
    const done = store.run({ type: 'remove-modules', take: TAKE, modules: ['nobody'] });
    expect(done).toEqual({ ok: false, error: 'There is no module "nobody"' });
    expect(store.store.getState()).toBe(before);
  });

  test('an edit that changes nothing makes no step and tells nobody', () => {
    const store = equipped();
    let told = 0;
    store.store.subscribe(() => told++);
    store.run(move(72));
    expect(told).toBe(0);
  });

  test('what another hand does during a gesture is a step of its own, and the gesture goes on from there', () => {
    const store = equipped();
    const before = store.layout();
    store.begin('move Gull 1');
    store.preview(move(80));
    store.run({ type: 'rename-take', take: TAKE, name: 'Three' });
    store.preview(move(80));
    store.commit();
    expect(store.layout().takes[0]).toMatchObject({ name: 'Three' });
    expect(store.layout().takes[0]?.modules.find(({ id }) => id === 'gull-1')?.atHp).toBe(80);
    store.undo();
    expect(store.layout().takes[0]?.modules.find(({ id }) => id === 'gull-1')?.atHp).toBe(72);
    store.undo();
    expect(store.layout()).toBe(before);
  });

  test('previews count from where the gesture began and leave the layout alone', () => {
    const store = equipped();
    const before = store.layout();
    store.begin('move Gull 1');
    store.preview(move(80));
    store.preview(move(90));
    expect(store.layout()).toBe(before);
    store.preview(null);
    store.commit();
    expect(store.layout()).toBe(before);
    expect(store.store.getState().history.past).toEqual([]);
  });

  test('another layout takes its place, and comes back with undo', () => {
    const store = equipped();
    store.run(move(80));
    const mine = store.layout();
    store.replace(emptyLayout(), 'start an empty case');
    expect(store.layout().title).toBe('My case');
    store.undo();
    expect(store.layout()).toBe(mine);
  });
});

describe('names of steps', () => {
  const layout = demoLayout();
  test.each([
    [{ type: 'remove-modules', take: TAKE, modules: ['gull-1', 'kelp'] }, 'remove 2 modules'],
    [{ type: 'pin-modules', take: TAKE, modules: ['kelp'], pinned: false }, 'unpin Kelp'],
    [{ type: 'place-module', take: TAKE, kind: 'gull', row: 'upper', atHp: 1 }, 'place Gull'],
    [{ type: 'turn-ribbon', take: TAKE, ribbon: 's1', seats: 'keep' }, 'turn S1'],
    [{ type: 'change-row', take: TAKE, row: 'lower', fields: {} }, 'change Lower row'],
    [{ type: 'move-row', take: TAKE, row: 'gone', to: 0 }, 'move a row'],
    [{ type: 'change-supply', take: TAKE, supply: 'supply' }, 'change Supply'],
    [{ type: 'remove-board', take: TAKE, board: 'board-2' }, 'remove Board 2'],
    [{ type: 'remove-take', take: 'one-long-jetty' }, 'remove the take One long jetty'],
  ] as const)('%o', (edit, label) => {
    expect(labelOf(layout, edit)).toBe(label);
  });

  test('held, it refuses edits, undo and redo, and says why; another layout may take its place', () => {
    const store = equipped();
    store.run(move(80));
    const before = store.layout();
    store.hold('Held');
    expect(store.run(move(82))).toEqual({ ok: false, error: 'Held' });
    store.undo();
    store.redo();
    expect(store.layout()).toBe(before);
    store.hold(null);
    store.undo();
    expect(store.layout()).not.toBe(before);
    store.hold('Held');
    const other = emptyLayout();
    store.replace(other, 'open another');
    expect(store.layout()).toBe(other);
  });

  test('following another tab leaves nothing to undo', () => {
    const store = equipped();
    store.run(move(80));
    const other = emptyLayout();
    store.follow(other);
    store.undo();
    expect(store.layout()).toBe(other);
  });
});
