import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/edit/apply.ts';
import type { Edit } from '../../src/edit/edit.ts';
import { lossOf, lossWords } from '../../src/edit/loss.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { anyLayout, takeOf } from '../support/little-layout.ts';
import { runs } from '../support/runs.ts';
import { anyDraw, editFrom } from './any-edit.ts';

const demo = demoLayout();
const take = 'three-jetties';
const loss = (edit: Edit) => lossOf(demo, take, edit);

describe('what an edit would lose', () => {
  it('of a board: the leads on it, and the modules that it fed', () => {
    const words = lossWords(loss({ type: 'remove-board', take, board: 'board-2' }));
    expect(words).toHaveLength(2);
    expect(words[0]).toBe('3 ribbons and leads lose an end: L6, L7, L8');
    expect(words[1]).toMatch(/^\d+ modules would be left without power: .*Kelp/);
  });

  it('of a row: modules and boards go, others lose their feed', () => {
    const { modules, boards, unseated } = loss({ type: 'remove-row', take, row: 'lower' });
    const gone = takeOf(demo).modules.filter(({ row }) => row === 'lower');
    expect(modules).toHaveLength(gone.length);
    expect(boards).toEqual(['Board 2']);
    expect(unseated.length).toBeGreaterThan(0);
  });

  it('of a supply: all its boards, and everything is dark', () => {
    const { boards, unfed } = loss({ type: 'remove-supply', take, supply: 'supply' });
    expect(boards).toEqual(['Board 1', 'Board 2']);
    const derived = deriveTake(demo.kit, takeOf(demo));
    const drawing = derived.places.modules.filter(({ facts }) => facts.draws.length > 0);
    expect(unfed).toHaveLength(drawing.length);
  });

  it('is nothing where nothing hangs on it, or where the edit is refused', () => {
    expect(lossWords(loss({ type: 'add-row', take }))).toEqual([]);
    expect(lossWords(loss({ type: 'remove-row', take, row: 'nobody' }))).toEqual([]);
    expect(lossWords(lossOf(demo, 'nobody', { type: 'remove-row', take, row: 'lower' }))).toEqual([]);
    const bare = applyEdit(demo, { type: 'add-row', take });
    if (!bare.ok) throw new Error(bare.error.message);
    expect(lossWords(lossOf(bare.value, take, { type: 'remove-row', take, row: 'row-1' }))).toEqual([]);
  });

  it('counts each thing that is gone, and names no more than it must', () => {
    const property = fc.property(anyLayout, anyDraw, (any, numbers) => {
      const edit = editFrom(any, numbers, 'remove-row');
      const done = applyEdit(any, edit);
      if (edit.type !== 'remove-row' || !done.ok) return;
      const [before, after] = [any, done.value].map(({ takes }) => takes.find(({ id }) => id === edit.take));
      const told = lossOf(any, edit.take, edit);
      expect(told.modules.length).toBe((before?.modules.length ?? 0) - (after?.modules.length ?? 0));
      expect(told.pulledOut.length).toBe((before?.ribbons.length ?? 0) - (after?.ribbons.length ?? 0));
      expect(lossWords(told).every((line) => !/undefined|NaN/.test(line))).toBe(true);
    });
    fc.assert(property, runs(100));
  });

  it('says the rest as a number where there are many', () => {
    const many = Array.from({ length: 9 }, (_, i) => `Cobble ${i + 1}`);
    expect(lossWords({ modules: many, boards: ['B'], pulledOut: [], unseated: [], unfed: [] })).toEqual([
      '9 modules go with it: Cobble 1, Cobble 2, Cobble 3, Cobble 4, Cobble 5, Cobble 6 and 3 more',
      '1 board goes with it: B',
    ]);
  });
});
