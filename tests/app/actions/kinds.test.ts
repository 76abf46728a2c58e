import { describe, expect, test } from 'vitest';
import { perform, start } from '../../../app/actions/action.ts';
import { changeKind, duplicateKind, removalOf } from '../../../app/actions/kinds.ts';
import { newLeadKind } from '../../../app/actions/new-kind.ts';
import { newEmptyStock } from '../../../app/actions/new-layout.ts';
import { undo } from '../../../app/actions/undo.ts';
import { Driver } from '../driver.ts';

const cobble = { sort: 'module', kind: 'cobble' } as const;
const shore = { sort: 'ribbon', kind: 'shore-2' } as const;

describe('kinds in stock', () => {
  test('the form opens for a new one, or for one that there is', () => {
    const { editor } = new Driver();
    start(editor, newLeadKind);
    expect(editor.session.getState().kindDesk).toEqual({ sort: 'lead', kind: null });
    changeKind(editor, cobble);
    expect(editor.session.getState().kindDesk).toEqual(cobble);
  });

  test('a copy stands behind the kind that it is of, one undo away', () => {
    const driver = new Driver();
    const { layouts } = driver.editor;
    expect(duplicateKind(driver.editor, cobble)).toBe('Cobble, copy');
    expect(
      layouts
        .layout()
        .kit.modules.map(({ name }) => name)
        .slice(2, 4),
    ).toEqual(['Cobble', 'Cobble, copy']);
    expect(undo.label(driver.editor)).toBe('Undo make Cobble, copy');
    expect(duplicateKind(driver.editor, shore)).toBe('Shore, 2 at 5 HP, copy');
    expect(driver.steps).toBe(2);
  });

  test('one in use is not removed, and the banner says where it is used', () => {
    const driver = new Driver();
    perform(driver.editor, removalOf(cobble));
    expect(driver.editor.session.getState().banner).toBe(
      'Cobble is in use: 6 modules in Three jetties and 6 modules in One long jetty.',
    );
    expect(driver.steps).toBe(0);
  });

  test('a case may start with nothing in stock; the one before is an undo away', () => {
    const { editor } = new Driver();
    changeKind(editor, cobble);
    start(editor, newEmptyStock);
    const { kit } = editor.layouts.layout();
    expect([kit.modules, kit.ribbons]).toEqual([[], []]);
    expect(editor.session.getState().kindDesk).toBeNull();
    start(editor, undo);
    expect(editor.layouts.layout().title).toBe('Shoreline kit');
  });
});
