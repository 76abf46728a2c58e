import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/edit/apply.ts';
import type { Edit } from '../../src/edit/edit.ts';
import { freshBoardId, freshRowId, freshSupplyId } from '../../src/edit/fresh.ts';
import { record, redo, startHistory, undo } from '../../src/edit/history.ts';
import { headersInLine } from '../../src/layout/board-headers.ts';
import { CASE_PATTERNS } from '../../src/layout/case-patterns.ts';
import type { Layout, Supply } from '../../src/layout/layout.ts';
import {
  anyLayout,
  applied,
  flawsOf,
  littleLayout,
  module,
  refusalOf,
  ribbon,
  row,
  seats,
  takeOf,
} from '../support/little-layout.ts';
import { runs } from '../support/runs.ts';
import { anyDraw, editFrom } from './any-edit.ts';

const take = 'take';

/** A key from a newer program, to be kept. */
const later = { later: { kept: true } };

const supply = {
  id: 'supply',
  name: 'Supply',
  ratings: { '+12': 1000 },
  boards: [
    {
      id: 'board',
      name: 'Board',
      row: 'low',
      xMm: 200,
      headers: [
        { id: 'p1', bus: 'shore', ...later },
        { id: 'p2', bus: 'shore', dxMm: 12, pin1: 'down' },
      ],
      ...later,
    },
  ],
  ...later,
} satisfies Supply & object;

const layout = littleLayout({
  rows: [row('top', 60, { name: 'Upper', gapMm: 10, ...later }), row('low')],
  supplies: [supply, { id: 'other', name: 'Other', ratings: {}, boards: [] }],
  modules: [module('a', 'cobble', 0), module('b', 'cobble', 5), module('c', 'cobble', 0, { row: 'low' })],
  ribbons: [
    ribbon('link', 'shore3', seats('a', 'b')),
    ribbon('feed', 'lead', [
      { connector: 0, on: { board: 'board', header: 'p1' } },
      { connector: 1, on: { module: 'a', header: 'shore' } },
    ]),
    ribbon('short', 'lead', [{ connector: 0, on: { board: 'board', header: 'p2' } }]),
  ],
});
const before = takeOf(layout);

const outcome = (edit: Edit) => takeOf(applied(layout, edit));
const ids = (list: readonly { readonly id: string }[]) => list.map(({ id }) => id);

const CASE_EDITS = [
  'add-board',
  'add-row',
  'add-supply',
  'change-board',
  'change-row',
  'change-supply',
  'lay-out-rows',
  'move-row',
  'remove-board',
  'remove-row',
  'remove-supply',
  'set-board-headers',
] as const;

describe.each(CASE_EDITS)('%s', (type) => {
  it('is one undo away from the very layout before, and one redo from the very one after', () => {
    const property = fc.property(anyLayout, anyDraw, (any, numbers) => {
      const done = applyEdit(any, editFrom(any, numbers, type));
      if (!done.ok) return;
      const history = record(startHistory(any), type, done.value);
      expect(undo(history).present).toBe(any);
      expect(redo(undo(history)).present).toBe(history.present);
      expect(flawsOf(done.value)).toEqual([]);
    });
    fc.assert(property, runs(100));
  });
});

describe('rows', () => {
  it('are added below, like the lowest, with a name and id of their own', () => {
    const { rows } = outcome({ type: 'add-row', take });
    expect(rows[2]).toEqual({ ...row('low'), id: freshRowId(before), name: 'Row 3' });
    expect(rows[0]).toBe(before.rows[0]);
  });

  it('are copied with keys that nobody knows yet, to a place of choice', () => {
    const { rows } = outcome({ type: 'add-row', take, like: 'top', at: 1, fields: { widthHp: 84 } });
    expect(ids(rows)).toEqual(['top', 'row-1', 'low']);
    expect(rows[1]).toEqual({ ...before.rows[0], id: 'row-1', name: 'Row 3', widthHp: 84 });
  });

  it('start where there is none', () => {
    const none = littleLayout({ rows: [], supplies: [], modules: [] });
    expect(takeOf(applied(none, { type: 'add-row', take })).rows).toEqual([
      { id: 'row-1', name: 'Row 1', widthHp: 84, heightU: 3, depthMm: 60 },
    ]);
  });

  it('change field by field, and optional fields can be cleared', () => {
    const fields = { widthHp: 104, name: ' Top ', gapMm: null, case: 'Left case' };
    const [top, low] = outcome({ type: 'change-row', take, row: 'top', fields }).rows;
    expect(top).toEqual({
      id: 'top',
      name: 'Top',
      case: 'Left case',
      widthHp: 104,
      heightU: 3,
      depthMm: 60,
      ...later,
    });
    expect(low).toBe(before.rows[1]);
  });

  it('keep their modules when they shrink', () => {
    const shrunk = outcome({ type: 'change-row', take, row: 'top', fields: { widthHp: 4 } });
    expect(shrunk.modules).toBe(before.modules);
  });

  it.each([
    [{ widthHp: 10_001 }, 'The width of Upper must be at most 10000, not 10001'],
    [{ widthHp: -1 }, 'The width of Upper must be at least 0, not -1'],
    [{ heightU: 0 }, 'The height of Upper must be more than 0, not 0'],
    [{ depthMm: Number.POSITIVE_INFINITY }, 'The depth of Upper must be at most 1000000000, not Infinity'],
  ])('cannot become what could not be opened again: %j', (fields, message) => {
    expect(refusalOf(layout, { type: 'change-row', take, row: 'top', fields })).toBe(message);
  });

  it('are put in another order, with all that stands in them', () => {
    const moved = outcome({ type: 'move-row', take, row: 'low', to: 0 });
    expect(ids(moved.rows)).toEqual(['low', 'top']);
    expect(moved.modules).toBe(before.modules);
    expect(applied(layout, { type: 'move-row', take, row: 'low', to: 9 })).toBe(layout);
  });

  it('go with their modules and boards; a ribbon that keeps an end stays', () => {
    const left = outcome({ type: 'remove-row', take, row: 'low' });
    expect(ids(left.rows)).toEqual(['top']);
    expect(ids(left.modules)).toEqual(['a', 'b']);
    expect(left.supplies[0]).toEqual({ ...supply, boards: [] });
    expect(left.supplies[1]).toBe(before.supplies[1]);
    expect(ids(left.ribbons)).toEqual(['link', 'feed']);
    expect(left.ribbons[1]?.seats).toHaveLength(1);
  });

  it('never go altogether', () => {
    const one = littleLayout({ rows: [row('top')] });
    expect(refusalOf(one, { type: 'remove-row', take, row: 'top' })).toBe('Row 1 is the only row');
  });
});

describe('a ready pattern', () => {
  it.each(CASE_PATTERNS)('$name lays out an empty case', ({ rows }) => {
    const empty = littleLayout({ rows: [row('top')], supplies: [] });
    const laid = takeOf(applied(empty, { type: 'lay-out-rows', take, rows, depthMm: 45 }));
    expect(laid.rows.map(({ widthHp, heightU, depthMm }) => ({ widthHp, heightU, depthMm }))).toEqual(
      rows.map((each) => ({ ...each, depthMm: 45 })),
    );
    expect(new Set(ids(laid.rows)).size).toBe(rows.length);
    expect(new Set(laid.rows.map(({ name }) => name)).size).toBe(rows.length);
  });

  it('resizes rows in place and keeps what is known of them', () => {
    const laid = outcome({ type: 'lay-out-rows', take, rows: [{ widthHp: 104, heightU: 3 }] });
    expect(laid.rows[0]).toEqual({ ...before.rows[0], widthHp: 104 });
    expect(laid.rows[1], 'something stands in it').toBe(before.rows[1]);
    expect(laid.modules).toBe(before.modules);
  });

  it('takes away a row in which nothing stands', () => {
    const roomy = littleLayout({ rows: [row('top'), row('low')], supplies: [] });
    const laid = takeOf(applied(roomy, { type: 'lay-out-rows', take, rows: [{ widthHp: 60, heightU: 3 }] }));
    expect(laid.rows).toEqual([row('top')]);
  });

  it('loses no module and no board, whatever is laid out', () => {
    const property = fc.property(anyLayout, anyDraw, (any, numbers) => {
      const edit = editFrom(any, numbers, 'lay-out-rows');
      const done = applyEdit(any, edit);
      if (!done.ok) return;
      done.value.takes.forEach((each, i) => {
        expect(each.modules).toBe(any.takes[i]?.modules);
        expect(each.supplies).toBe(any.takes[i]?.supplies);
      });
    });
    fc.assert(property, runs(100));
  });
});

describe('supplies', () => {
  it('are added without boards, with the ratings of another', () => {
    const { supplies } = outcome({ type: 'add-supply', take, like: 'supply' });
    expect(supplies[2]).toEqual({ ...supply, id: freshSupplyId(before), name: 'Supply 2', boards: [] });
  });

  it('change their ratings voltage by voltage', () => {
    const change = (ratings: Record<string, number | null>): Layout =>
      applied(layout, { type: 'change-supply', take, supply: 'supply', ratings });
    expect(takeOf(change({ '+12': 1200 })).supplies[0]).toEqual({ ...supply, ratings: { '+12': 1200 } });
    expect(takeOf(change({ '+12': null })).supplies[0]).toEqual({ ...supply, ratings: {} });
    expect(change({ '+12': 1000 })).toBe(layout);
  });

  it('need a name, and ratings that are no debt', () => {
    expect(refusalOf(layout, { type: 'change-supply', take, supply: 'supply', name: ' ' })).toBe(
      'A supply needs a name',
    );
    expect(refusalOf(layout, { type: 'change-supply', take, supply: 'supply', ratings: { '+12': -1 } })).toBe(
      'The rating of Supply must be at least 0, not -1',
    );
  });

  it('go with their boards and the seats on them', () => {
    const left = outcome({ type: 'remove-supply', take, supply: 'supply' });
    expect(ids(left.supplies)).toEqual(['other']);
    expect(ids(left.ribbons)).toEqual(['link', 'feed']);
    expect(left.modules).toBe(before.modules);
  });
});

describe('boards', () => {
  const change = (fields: object): Layout =>
    applied(layout, { type: 'change-board', take, board: 'board', ...fields });
  const boardAfter = (fields: object) => takeOf(change(fields)).supplies[0]?.boards[0];

  it('are added bare, or as a copy with headers', () => {
    const bare = outcome({ type: 'add-board', take, supply: 'other', row: 'top', xMm: 12 });
    expect(bare.supplies[1]?.boards).toEqual([
      { id: freshBoardId(before), name: 'Board 2', row: 'top', xMm: 12, headers: [] },
    ]);
    expect(bare.supplies[0]).toBe(before.supplies[0]);
    const copy = outcome({ type: 'add-board', take, supply: 'other', like: 'board', row: 'top', xMm: 12 });
    expect(copy.supplies[1]?.boards[0]).toEqual({
      ...supply.boards[0],
      id: 'board-1',
      name: 'Board 2',
      row: 'top',
      xMm: 12,
    });
  });

  it('are moved along and to another row, and nothing else changes', () => {
    expect(boardAfter({ fields: { row: 'top', xMm: 30 } })).toEqual({
      ...supply.boards[0],
      row: 'top',
      xMm: 30,
    });
    expect(change({ fields: { row: 'low', xMm: 200 } })).toBe(layout);
  });

  it('have a lead or none', () => {
    const withLead = change({ lead: { lengthMm: 300, awg: 18 } });
    expect(takeOf(withLead).supplies[0]?.boards[0]?.lead).toEqual({ lengthMm: 300, awg: 18 });
    const edit = { type: 'change-board', take, board: 'board', lead: { awg: 18, lengthMm: 300 } } as const;
    expect(applied(withLead, edit)).toBe(withLead);
    expect(takeOf(applied(withLead, { ...edit, lead: null })).supplies[0]).toEqual(supply);
    expect(refusalOf(layout, { ...edit, lead: { lengthMm: 300, awg: 99 } })).toBe(
      'The gauge of the lead of Board must be at most 60, not 99',
    );
  });

  it('have limits of their own', () => {
    const limited = change({ limits: { '+12': 500 } });
    expect(takeOf(limited).supplies[0]?.boards[0]?.limits).toEqual({ '+12': 500 });
    const edit = { type: 'change-board', take, board: 'board', limits: { '+12': null } } as const;
    expect(takeOf(applied(limited, edit)).supplies[0]).toEqual(supply);
  });

  it('can be hung on another supply, with the ribbons on them', () => {
    const rehung = takeOf(change({ supply: 'other', fields: { name: 'Bus board' } }));
    expect(rehung.supplies.map(({ boards }) => boards)).toEqual([
      [],
      [{ ...supply.boards[0], name: 'Bus board' }],
    ]);
    expect(rehung.ribbons).toBe(before.ribbons);
    expect(change({ supply: 'supply' })).toBe(layout);
  });

  it('go with the seats on them', () => {
    const left = outcome({ type: 'remove-board', take, board: 'board' });
    expect(left.supplies[0]).toEqual({ ...supply, boards: [] });
    expect(ids(left.ribbons)).toEqual(['link', 'feed']);
  });
});

describe('headers of a board', () => {
  const set = (headers: Extract<Edit, { type: 'set-board-headers' }>['headers']): Edit => ({
    type: 'set-board-headers',
    take,
    board: 'board',
    headers,
  });

  it('keep their ribbons and unknown keys while their id stays', () => {
    const { supplies, ribbons } = outcome(
      set([
        { id: 'p1', bus: 'tide', keyed: true },
        { id: 'p2', bus: 'shore' },
      ]),
    );
    expect(supplies[0]?.boards[0]?.headers).toEqual([
      { id: 'p1', bus: 'tide', keyed: true, ...later },
      { id: 'p2', bus: 'shore' },
    ]);
    expect(ribbons).toBe(before.ribbons);
    expect(applied(layout, set(supply.boards[0]?.headers ?? []))).toBe(layout);
  });

  it('lose their ribbons when they go', () => {
    expect(ids(outcome(set([{ id: 'p1', bus: 'shore' }])).ribbons)).toEqual(['link', 'feed']);
  });

  it.each([
    [
      [
        { id: 'p1', bus: 'shore' },
        { id: 'p1', bus: 'shore' },
      ],
      'There would be two headers "p1"',
    ],
    [[{ id: 'p1', bus: 'shore', pin1: 'left' }], 'Pin 1 of a vertical header lies down or up'],
    [[{ id: '', bus: 'shore' }], 'The mark of a header of Board must not be empty'],
  ] as const)('are refused: %j', (headers, message) => {
    expect(refusalOf(layout, set(headers))).toBe(message);
  });

  it('stand in line at a pitch', () => {
    expect(headersInLine({ count: 3, bus: 'shore', pitchMm: 13.6, firstMm: 9, keyed: true })).toEqual([
      { id: '1', bus: 'shore', dxMm: 9, pin1: 'down', keyed: true },
      { id: '2', bus: 'shore', dxMm: 22.6, pin1: 'down', keyed: true },
      { id: '3', bus: 'shore', dxMm: 36.2, pin1: 'down', keyed: true },
    ]);
  });
});
