import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/edit/apply.ts';
import {
  begin,
  cancel,
  commit,
  type History,
  MOST_STEPS,
  preview,
  record,
  redo,
  redoLabel,
  shown,
  startHistory,
  undo,
  undoLabel,
} from '../../src/edit/history.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deepFreeze } from '../support/deep-freeze.ts';
import { anyLayout, flawsOf, littleLayout } from '../support/little-layout.ts';
import { runs } from '../support/runs.ts';
import { anyDraw, editFrom, KIT_EDITS } from './any-edit.ts';

const first = littleLayout();
const titled = (title: string): Layout => ({ ...first, title });
const second = titled('Second');
const third = titled('Third');

/** The layout after an edit; the very layout where it is refused, as the app leaves it. */
function edited(layout: Layout, numbers: readonly number[]): Layout {
  const applied = applyEdit(layout, editFrom(layout, numbers));
  return applied.ok ? applied.value : layout;
}

describe('a gesture', () => {
  it('makes one step of many previews', () => {
    let history = begin(startHistory(first), 'move Cobble 3');
    history = preview(history, second);
    expect(shown(history)).toBe(second);
    expect(history.present).toBe(first);
    history = commit(preview(history, third));
    expect(history).toEqual({
      past: [{ label: 'move Cobble 3', layout: first }],
      present: third,
      future: [],
    });
    expect(undoLabel(history)).toBe('move Cobble 3');
    expect(undo(history).present).toBe(first);
  });

  it('makes no step when it ends where it began, and keeps what can be redone', () => {
    const undone = undo(record(startHistory(first), 'rename', second));
    const history = commit(preview(preview(begin(undone, 'move'), third), first));
    expect(history).toEqual(undone);
    expect(redo(history).present).toBe(second);
  });

  it('leaves nothing when cancelled', () => {
    const before = record(startHistory(first), 'rename', second);
    const history = cancel(preview(begin(before, 'move'), third));
    expect(history).toEqual(before);
    expect(shown(history)).toBe(second);
    expect(history.past).toBe(before.past);
  });

  it('is taken back by undo before any step is', () => {
    const before = record(startHistory(first), 'rename', second);
    const dragging = preview(begin(before, 'move'), third);
    expect(undo(dragging)).toEqual(before);
    expect(redo(dragging)).toBe(dragging);
  });

  it('replaces one that was never ended', () => {
    const lost = preview(begin(startHistory(first), 'move'), second);
    expect(commit(begin(lost, 'swap'))).toEqual(startHistory(first));
  });

  it('is needed for a preview', () => {
    const history = startHistory(first);
    expect(preview(history, second)).toBe(history);
    expect(commit(history)).toBe(history);
    expect(cancel(history)).toBe(history);
  });

  it('shows the same value again without a new one', () => {
    const history = preview(begin(startHistory(first), 'move'), second);
    expect(preview(history, second)).toBe(history);
  });
});

describe('undo and redo', () => {
  it('go back and forth by the labels of the steps', () => {
    const both = record(record(startHistory(first), 'rename', second), 'move', third);
    const back = undo(undo(both));
    expect(back.present).toBe(first);
    expect(redoLabel(back)).toBe('rename');
    expect(redo(back).present).toBe(second);
    expect(redo(redo(back))).toEqual(both);
    expect(undoLabel(back)).toBeUndefined();
    expect(redoLabel(both)).toBeUndefined();
  });

  it('do nothing at either end', () => {
    const history = startHistory(first);
    expect(undo(history)).toBe(history);
    expect(redo(history)).toBe(history);
  });

  it('forget what could be redone when something new is done', () => {
    const history = record(undo(record(startHistory(first), 'rename', second)), 'move', third);
    expect(history.future).toEqual([]);
  });

  it('reach back so far and no further', () => {
    let history = startHistory(first);
    for (let i = 0; i < MOST_STEPS + 3; i++) history = record(history, `${i}`, titled(`${i}`));
    expect(history.past).toHaveLength(MOST_STEPS);
    for (let i = 0; i < MOST_STEPS; i++) history = undo(history);
    expect(history.present.title).toBe('2');
    expect(undo(history)).toBe(history);
    expect(history.future).toHaveLength(MOST_STEPS);
  });
});

describe('any history', () => {
  it('gives back the very layout when any edit is undone', () => {
    const property = fc.property(anyLayout, anyDraw, (layout, numbers) => {
      const after = edited(layout, numbers);
      const history = record(startHistory(layout), 'edit', after);
      expect(history.past).toHaveLength(after === layout ? 0 : 1);
      const undone = undo(history);
      expect(undone.present).toBe(layout);
      expect(redo(undone).present).toBe(after);
    });
    fc.assert(property, runs(300));
  });

  it('stays sound through whatever is done, and ends undone where it began', () => {
    const move = fc.oneof(
      fc.record({ does: fc.constant('edit' as const), numbers: anyDraw }),
      fc.record({ does: fc.constant('preview' as const), numbers: anyDraw }),
      fc.record({ does: fc.constantFrom('begin', 'commit', 'cancel', 'undo', 'redo') }),
    );
    const plain: Readonly<Record<string, (history: History) => History>> = {
      begin: (history) => begin(history, 'gesture'),
      commit,
      cancel,
      undo,
      redo,
    };
    const property = fc.property(anyLayout, fc.array(move, { maxLength: 25 }), (layout, moves) => {
      let history = startHistory(layout);
      for (const each of moves) {
        const before = deepFreeze(history);
        if (!('numbers' in each)) history = (plain[each.does] as (history: History) => History)(before);
        else if (each.does === 'edit') history = record(before, 'edit', edited(before.present, each.numbers));
        else history = preview(before, edited(before.present, each.numbers));

        expect(flawsOf(shown(history))).toEqual([]);
        if (!('numbers' in each) || !KIT_EDITS.has(editFrom(before.present, each.numbers).type)) {
          const kits = [before.present, shown(before), ...before.past.map((step) => step.layout)].map(
            ({ kit }) => kit,
          );
          const redone = before.future.map((step) => step.layout.kit);
          expect([...kits, ...redone]).toContain(shown(history).kit);
        }
        const layouts = [...history.past.map((step) => step.layout), history.present];
        expect(new Set(layouts).size).toBe(layouts.length);
        if (each.does === 'preview' || each.does === 'begin' || each.does === 'cancel') {
          expect([history.past, history.present, history.future]).toEqual([
            before.past,
            before.present,
            before.future,
          ]);
        }
      }
      history = cancel(history);
      while (history.past.length > 0) history = undo(history);
      expect(history.present).toBe(layout);
    });
    fc.assert(property, runs(200));
  });
});
