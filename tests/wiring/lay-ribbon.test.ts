import { describe, expect, it } from 'vitest';
import { checkTake } from '../../src/checks/run.ts';
import { openLayout, writeLayout } from '../../src/document.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { layRibbon } from '../../src/wiring/lay-ribbon.ts';

/** The demo's first take with its ribbons taken out, all but the named ones. */
function bare(...keep: string[]): Layout {
  const demo = demoLayout();
  const [take] = demo.takes;
  if (!take) throw new Error('no take');
  return { ...demo, takes: [{ ...take, ribbons: take.ribbons.filter(({ id }) => keep.includes(id)) }] };
}

function lay(layout: Layout, kind: string, owner: string, header: string) {
  const [take] = layout.takes;
  if (!take) throw new Error('no take');
  const derived = deriveTake(layout.kit, take);
  const thing = derived.places.moduleById.get(owner) ?? derived.places.boardById.get(owner);
  const start = thing?.headers.find(({ id }) => id === header);
  if (!start) throw new Error('no header');
  const laid = layRibbon(derived, kind, start);
  if (!laid) return { laid, severe: [] };
  const edited = applyEdit(layout, { type: 'add-ribbon', take: take.id, kind, prefix: 'S', ...laid });
  if (!edited.ok) throw new Error(edited.error.message);
  expect(openLayout(writeLayout(edited.value)).ok).toBe(true);
  const [next] = edited.value.takes;
  const notes = next ? checkTake(deriveTake(layout.kit, next)) : [];
  const own = notes.filter(
    ({ level, subjects }) => level !== 'reminder' && subjects.some(({ type }) => type === 'ribbon'),
  );
  return { laid, severe: own.map(({ check }) => check) };
}

const modules = ({ laid }: ReturnType<typeof lay>): string[] =>
  (laid?.seats ?? []).map(
    ({ connector, on }) => `${connector} ${'module' in on ? on.module : 'board' in on ? on.board : ''}`,
  );

describe('a ribbon put onto a header', () => {
  it('stiff: lies over every header on its pitch, wherever along it it was touched', () => {
    const expected = ['0 boulder-1', '2 cobble-2', '3 cobble-1', '4 jetty-a'];
    for (const owner of ['jetty-a', 'cobble-1', 'cobble-2', 'boulder-1']) {
      const laid = lay(bare(), 'shore-5', owner, 'shore');
      expect(modules(laid)).toEqual(expected);
      expect(laid.severe).toEqual([]);
    }
  });

  it('bending: goes from header to header as far as its ribbon reaches', () => {
    const laid = lay(bare(), 'shore-bend-4', 'cobble-4', 'shore');
    expect(modules(laid)).toEqual(['0 cobble-4', '1 cobble-3', '2 boulder-2', '3 jetty-b']);
    expect(laid.severe).toEqual([]);
  });

  it('never joins a second host', () => {
    const laid = lay(bare(), 'shore-bend-7', 'boulder-2', 'shore');
    expect(modules(laid).filter((seat) => seat.includes('jetty')).length).toBeLessThanOrEqual(1);
  });

  it('a lead: goes to the nearest free header of a board that its other end fits and reaches', () => {
    const laid = lay(bare(), 'lead-16-150', 'foghorn', 'power');
    expect(laid.laid?.seats).toEqual([
      { connector: 0, on: { board: 'board-1', header: '6' } },
      { connector: 1, on: { module: 'foghorn', header: 'power' } },
    ]);
    expect(laid.severe).toEqual([]);
    expect(modules(lay(bare(), 'lead-10-250', 'boulder-2', 'power'))).toEqual(['0 board-1', '1 boulder-2']);
  });

  it('keeps off what does not fit: another bus, a header in use, more ways than pins', () => {
    expect(lay(bare(), 'shore-5', 'jetty-a', 'tide').laid).toBeUndefined();
    expect(lay(bare('s1'), 'shore-5', 'jetty-a', 'shore').laid).toBeUndefined();
    expect(lay(bare(), 'lead-16-400', 'cobble-1', 'power').laid).toBeUndefined();
  });
});
