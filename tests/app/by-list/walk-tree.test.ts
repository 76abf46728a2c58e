import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Branch, type Tree, treeOf } from '../../../app/by-list/tree.ts';
import {
  type Standing,
  shownIn,
  standOn,
  stepBy,
  survivorOf,
  trailOf,
  typeTo,
} from '../../../app/by-list/walk-tree.ts';
import { applyEdit, checkTake, deriveTake, type Layout, type Take } from '../../../src/index.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
import { arbitraryLayout } from '../../support/arbitrary-layout.ts';
import { runs } from '../../support/runs.ts';

const treeIn = ({ kit, takes }: Layout): Tree => {
  const derived = deriveTake(kit, takes[0] as Take);
  return treeOf(derived, checkTake(derived));
};

const tree = treeIn(demoLayout());

/** Presses keys from an item, all shut but what it lies in. */
function press(from: string, ...keys: string[]): Standing {
  let now: Standing = standOn({ at: '', open: new Set() }, tree.byId.get(from) as Branch);
  for (const key of keys) now = stepBy(tree, shownIn(tree, now.open), now, key) ?? now;
  return now;
}

// Source of the keys: WAI-ARIA Authoring Practices, Tree View pattern, keyboard interaction.
describe('keys in the list', () => {
  test('right opens, then goes in; left goes out, then shuts', () => {
    expect(press('row:upper').open.size).toBe(0);
    expect(press('row:upper', 'ArrowRight')).toEqual({ at: 'row:upper', open: new Set(['row:upper']) });
    expect(press('row:upper', 'ArrowRight', 'ArrowRight').at).toBe('module:harbour');
    expect(press('module:jetty-a', 'ArrowLeft').at).toBe('row:upper');
    expect(press('module:jetty-a', 'ArrowLeft', 'ArrowLeft')).toEqual({ at: 'row:upper', open: new Set() });
    expect(press('header:["module","cobble-1","shore"]', 'ArrowRight').at).toBe(
      'header:["module","cobble-1","shore"]',
    );
  });

  test('up and down go through what shows; Home and End to its ends; a star opens all beside', () => {
    expect(press('row:upper', 'ArrowDown').at).toBe('row:lower');
    expect(press('row:upper', 'ArrowUp').at).toBe('row:upper');
    expect(press('row:upper', 'ArrowRight', 'End').at).toBe('supply:supply');
    expect(press('supply:supply', 'ArrowDown').at).toBe('supply:supply');
    expect(press('module:kelp', 'Home').at).toBe('row:upper');
    expect([...press('row:upper', '*').open].sort()).toEqual([
      'ribbons',
      'row:lower',
      'row:upper',
      'supply:supply',
    ]);
    expect(stepBy(tree, tree.roots, press('row:upper'), 'q')).toBeNull();
  });

  test('typing finds what begins so; one letter again and again goes round', () => {
    const shown = shownIn(tree, new Set(['row:upper', 'row:lower']));
    const nameOf = ({ item }: Branch): string => (item.type === 'module' ? item.module.name : item.type);
    const type = (at: string, text: string): string | undefined => typeTo(shown, at, text, nameOf)?.id;
    expect(type('row:upper', 'cobble 3')).toBe('module:cobble-3');
    expect(type('module:cobble-1', 'c')).toBe('module:cobble-2');
    expect(type('module:cobble-1', 'CC')).toBe('module:cobble-2');
    expect(type('module:cobble-6', 'c')).toBe('module:cobble-1');
    expect(type('module:cobble-3', 'cob')).toBe('module:cobble-3');
    expect(type('row:upper', 'zz')).toBeUndefined();
  });

  test('whatever is pressed, the keys stand on something that shows', () => {
    const keys = fc.constantFrom('ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'Home', 'End', '*');
    fc.assert(
      fc.property(fc.array(keys, { maxLength: 60 }), (pressed) => {
        const { at, open } = press('module:kelp', ...pressed);
        expect(shownIn(tree, open).map(({ id }) => id)).toContain(at);
      }),
      runs(100),
    );
  });
});

describe('when an item is gone', () => {
  const without = (...modules: string[]): Tree => {
    const layout = demoLayout();
    const take = layout.takes[0]?.id ?? '';
    const done = applyEdit(layout, { type: 'remove-modules', take, modules });
    if (!done.ok) throw new Error(done.error.message);
    return treeIn(done.value);
  };

  test('the next one has the keys, at the end the one before, else what it lay in; they come back with it', () => {
    const trail = trailOf(tree, 'module:cobble-1');
    expect(survivorOf(without('cobble-1'), trail)?.id).toBe('module:cobble-2');
    expect(survivorOf(without('cobble-1', 'cobble-2'), trail)?.id).toBe('module:boulder-1');
    expect(survivorOf(tree, trail)?.id).toBe('module:cobble-1');
    expect(survivorOf(without('foghorn'), trailOf(tree, 'module:foghorn'))?.id).toBe('module:gull-1');
    const header = trailOf(tree, 'header:["module","foghorn","power"]');
    expect(survivorOf(without('foghorn'), header)?.id).toBe('module:gull-1');
  });

  test('there is always something left, from any item of one take in any other', () => {
    fc.assert(
      fc.property(arbitraryLayout, arbitraryLayout, fc.nat(), (one, other, at) => {
        const from = treeIn(one);
        const ids = [...from.byId.keys()];
        const to = treeIn(other);
        const survivor = survivorOf(to, trailOf(from, ids[at % ids.length] as string));
        expect(survivor && to.byId.get(survivor.id)).toBe(survivor);
        expect(survivor === undefined).toBe(to.byId.size === 0);
      }),
      runs(60),
    );
  });
});
