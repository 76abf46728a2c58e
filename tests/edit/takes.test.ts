import { describe, expect, it } from 'vitest';
import { freshTakeId } from '../../src/edit/fresh.ts';
import { applied, littleLayout, module, refusalOf, ribbon, seats, takeOf } from '../support/little-layout.ts';

const layout = littleLayout({
  modules: [module('a', 'cobble', 0)],
  ribbons: [ribbon('r', 'shore3', seats('a'))],
  accepted: [{ key: 'loose-end/r' }],
  built: { on: 'a bench' },
});

describe('add-take', () => {
  it('copies a take but for its as-built record, sharing what is in it', () => {
    const copy = applied(layout, { type: 'add-take', from: 'take' }).takes[1];
    const { built: _, ...rest } = takeOf(layout);
    expect(copy).toEqual({ ...rest, id: 'take-1', name: 'Take 2' });
    expect(copy?.modules).toBe(takeOf(layout).modules);
    expect(copy?.ribbons).toBe(takeOf(layout).ribbons);
    expect(freshTakeId(layout)).toBe('take-1');
  });

  it('starts with an empty case where it copies none', () => {
    const { rows, supplies } = takeOf(layout);
    expect(applied(layout, { type: 'add-take' }).takes[1]).toEqual({
      id: 'take-1',
      name: 'Take 2',
      rows,
      supplies,
      modules: [],
      ribbons: [],
    });
  });

  it('numbers names on unless one is given', () => {
    const named = applied(layout, { type: 'add-take', from: 'take', name: ' Regrouped ' });
    const again = applied(named, { type: 'add-take', from: 'take-1' });
    expect(again.takes.map(({ id, name }) => [id, name])).toEqual([
      ['take', 'Take'],
      ['take-1', 'Regrouped'],
      ['take-2', 'Regrouped 2'],
    ]);
  });
});

describe('remove-take', () => {
  it('throws a take away and leaves the others as they are', () => {
    const two = applied(layout, { type: 'add-take', from: 'take' });
    const one = applied(two, { type: 'remove-take', take: 'take' });
    expect(one.takes).toEqual([two.takes[1]]);
    expect(one.takes[0]).toBe(two.takes[1]);
  });

  it('is refused for the last one', () => {
    expect(refusalOf(layout, { type: 'remove-take', take: 'take' })).toBe('Take is the only take');
  });
});

describe('move-take', () => {
  const two = applied(layout, { type: 'add-take', from: 'take' });

  it('puts a take at another place, kept within the list', () => {
    const moved = applied(two, { type: 'move-take', take: 'take', to: 9 });
    expect(moved.takes.map(({ id }) => id)).toEqual(['take-1', 'take']);
    expect(applied(moved, { type: 'move-take', take: 'take', to: 1 })).toBe(moved);
  });
});

describe('rewire-take', () => {
  const { modules } = takeOf(layout);

  it('adds a take in the same case with other places and ribbons, without what was built or accepted', () => {
    const there = modules.map((each) => ({ ...each, atHp: 20 }));
    const added = applied(layout, { type: 'rewire-take', from: 'take', modules: there, ribbons: [] })
      .takes[1];
    expect(added).toMatchObject({ id: 'take-1', name: 'Take, proposed', modules: there, ribbons: [] });
    expect(added).not.toHaveProperty('built');
    expect(added).not.toHaveProperty('accepted');
  });

  it('is refused where a module has gone meanwhile', () => {
    expect(refusalOf(layout, { type: 'rewire-take', from: 'take', modules: [], ribbons: [] })).toContain(
      'changed meanwhile',
    );
  });
});
