import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/edit/apply.ts';
import type { Edit } from '../../src/edit/edit.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout, Module, ModuleKind, Row, Take } from '../../src/layout/layout.ts';
import { factsOf } from '../../src/sheet/bench-sheet.ts';
import { changeSheet, type SeatsOf, stagesOf } from '../../src/sheet/change-sheet.ts';
import { changePage } from '../../src/sheet/pages/change-page.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { anyDraw, editFrom } from '../edit/any-edit.ts';
import { anyLayout } from '../support/little-layout.ts';
import { runs } from '../support/runs.ts';

const demo = demoLayout();
const [first, second] = demo.takes as [Take, Take];
const derived = (layout: Layout, take: Take = layout.takes[0] as Take) => deriveTake(layout.kit, take);

function edited(edit: Edit, layout = demo): Layout {
  const done = applyEdit(layout, edit);
  if (!done.ok) throw new Error(done.error.message);
  return done.value;
}

/** Every seat as text, sorted. */
const seatsIn = ({ ribbons }: Take): string[] =>
  ribbons.flatMap(({ id, seats }) => seats.map((seat) => JSON.stringify([id, seat]))).sort();
const listed = (all: readonly SeatsOf[]): string[] =>
  all.flatMap(({ ribbon, seats }) => seats.map((seat) => JSON.stringify([ribbon, seat])));

describe('a change sheet', () => {
  it('has nothing to do from a take to itself', () => {
    const sheet = changeSheet(derived(demo), derived(demo));
    expect(sheet.steps).toEqual([]);
  });

  it('has nothing to do where only names differ', () => {
    const renamed = edited({ type: 'rename-module', take: first.id, module: 'cobble-1', label: 'Left' });
    expect(changeSheet(derived(demo), derived(renamed)).steps).toEqual([]);
  });

  it('goes from off to tests, in this order', () => {
    const sheet = changeSheet(derived(demo, first), derived(demo, second));
    const stages = stagesOf(sheet).map(({ stage }) => stage);
    expect(stages.filter((stage) => stage !== 'have')[0]).toBe('off');
    expect(stages.indexOf('off')).toBeLessThan(stages.indexOf('unplug'));
    expect(stages.indexOf('unplug')).toBeLessThan(stages.indexOf('seat'));
    expect(stages.indexOf('seat')).toBeLessThan(stages.indexOf('test'));
    expect(stages.at(-1)).toBe('on');
    expect(new Set(sheet.steps.map(({ key }) => key)).size).toBe(sheet.steps.length);
  });

  it('names what a moved module takes along, and nothing else', () => {
    const module = first.modules.find(({ kind }) => kind === 'harbour') as Module;
    const moved = edited({
      type: 'move-modules',
      take: first.id,
      moves: [{ module: module.id, row: module.row, atHp: module.atHp + 0.5 }],
    });
    const sheet = changeSheet(derived(demo), derived(moved));
    const touching = first.ribbons
      .filter(({ seats }) => seats.some(({ on }) => 'module' in on && on.module === module.id))
      .map(({ id }) => id);
    expect(sheet.unplug.map(({ ribbon }) => ribbon)).toEqual(touching);
    expect(sheet.seat.map(({ ribbon }) => ribbon)).toEqual(touching);
    expect(sheet.steps.filter(({ stage }) => stage === 'move')).toHaveLength(1);
    expect(sheet.steps.some(({ stage }) => stage === 'make' || stage === 'have' || stage === 'out')).toBe(
      false,
    );
  });

  it('tells what to have beyond what is owned and in the case', () => {
    const kind = { ...(demo.kit.modules.find(({ id }) => id === 'gull') as ModuleKind), owned: 0 };
    const layout = {
      ...demo,
      kit: { ...demo.kit, modules: demo.kit.modules.map((one) => (one.id === kind.id ? kind : one)) },
    };
    const to = {
      ...first,
      modules: [...first.modules, { id: 'new', kind: kind.id, row: (first.rows[0] as Row).id, atHp: 96 }],
    };
    const { steps } = changeSheet(derived(layout), derived(layout, to));
    expect(steps[0]?.words).toBe(`1 × ${kind.name} to buy or make.`);
    expect(steps.some(({ key }) => key === 'move/module/new')).toBe(true);
  });

  it('leads from the seats of any take to those of any other', () => {
    fc.assert(
      fc.property(anyLayout, anyDraw, (layout, numbers) => {
        const done = applyEdit(layout, editFrom(layout, numbers));
        const after = done.ok ? done.value : layout;
        const [from, to] = [derived(layout), derived(after)];
        const { unplug, seat } = changeSheet(from, to);
        const off = listed(unplug);
        const left = seatsIn(from.take).filter((text) => {
          const at = off.indexOf(text);
          if (at >= 0) off.splice(at, 1);
          return at < 0;
        });
        expect(off).toEqual([]);
        expect([...left, ...listed(seat)].sort()).toEqual(seatsIn(to.take));
      }),
      runs(100),
    );
  });

  it('is a page of the sheet where another take is in the case, with what people typed escaped', () => {
    const renamed = edited({ type: 'rename-take', take: first.id, name: '<b>&' });
    const marked = edited({ type: 'mark-in-case', inCase: first.id }, renamed);
    const pages = (take: Take) =>
      changePage(factsOf(marked, take.id, { paper: 'a4' })).map(({ body }) => body.text);
    expect(pages(second).join()).toContain('From &lt;b&gt;&amp;, which is in the case');
    expect(pages(second).join()).toContain('Unplug');
    expect(pages(first)).toEqual([]);
    expect(changePage(factsOf(demo, second.id, { paper: 'a4' }))).toEqual([]);
  });
});
