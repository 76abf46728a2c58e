import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Note } from '../../src/checks/check.ts';
import { checkLayout } from '../../src/checks/check-layout.ts';
import { checks } from '../../src/checks/index.ts';
import { judge } from '../../src/checks/judge.ts';
import { checkTake, pressingNotes } from '../../src/checks/run.ts';
import { seenFrom } from '../../src/geometry/side.ts';
import type { Layout, Seat, Take } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { runs } from '../support/runs.ts';

const HP_MM = 5.08;

const notesOf = (layout: Layout): Note[] => checkLayout(layout).flatMap(({ notes }) => notes);

const eachTake = (layout: Layout, change: (take: Take) => Take): Layout => ({
  ...layout,
  takes: layout.takes.map(change),
});

/** What a finding is, without words and places. */
const essence = ({ check, level, take, subjects, measure }: Note): string =>
  JSON.stringify([
    take,
    check,
    level,
    subjects.map(({ type, id }) => `${type} ${id}`).sort(),
    Object.entries(measure ?? {}).map(([name, value]) => [name, value.toFixed(5)]),
  ]);

const essences = (notes: readonly Note[]): string[] => notes.map(essence).sort();

/** A shifted row may bring a module on or off its ends; nothing else knows where the ends are. */
const withoutEnds = (notes: readonly Note[]): Note[] => notes.filter(({ check }) => check !== 'off-row');

function shift(layout: Layout, hp: number): Layout {
  return eachTake(layout, (take) => ({
    ...take,
    rows: take.rows.map((row) => ({ ...row, widthHp: row.widthHp + hp })),
    modules: take.modules.map((module) => ({ ...module, atHp: module.atHp + hp })),
    supplies: take.supplies.map((supply) => ({
      ...supply,
      boards: supply.boards.map((board) => ({ ...board, xMm: board.xMm + hp * HP_MM })),
    })),
  }));
}

/** Ids in another order of code units, so that everything sorted by id comes in another order. */
const renamed = (id: string): string => `${[...id].reverse().join('')}~`;

function renameSeat({ connector, on }: Seat): Seat {
  if ('module' in on) return { connector, on: { ...on, module: renamed(on.module) } };
  if ('board' in on) return { connector, on: { ...on, board: renamed(on.board) } };
  return { connector, on: { ...on, ribbon: renamed(on.ribbon) } };
}

const rename = (layout: Layout): Layout =>
  eachTake(layout, (take) => ({
    ...take,
    accepted: [],
    rows: take.rows.map((row) => ({ ...row, id: renamed(row.id) })),
    modules: take.modules.map((module) => ({ ...module, id: renamed(module.id), row: renamed(module.row) })),
    ribbons: take.ribbons.map((ribbon) => ({
      ...ribbon,
      id: renamed(ribbon.id),
      seats: ribbon.seats.map(renameSeat),
    })),
    supplies: take.supplies.map((supply) => ({
      ...supply,
      id: renamed(supply.id),
      boards: supply.boards.map((board) => ({ ...board, id: renamed(board.id), row: renamed(board.row) })),
    })),
  }));

const renameSubjects = (note: Note): Note => ({
  ...note,
  subjects: note.subjects.map(({ type, id }) => ({ type, id: renamed(id) })),
});

/** A module that has no headers, draws nothing and stands in a row of its own. */
const withStranger = (layout: Layout): Layout => ({
  ...eachTake(layout, (take) => ({
    ...take,
    rows: [...take.rows, { id: 'stranger row', widthHp: 20, heightU: 3, depthMm: 50 }],
    modules: [...take.modules, { id: 'stranger', kind: 'stranger', row: 'stranger row', atHp: 4 }],
  })),
  kit: {
    ...layout.kit,
    modules: [
      ...layout.kit.modules,
      { id: 'stranger', name: 'Stranger', widthHp: 4, depthMm: 10, draws: {}, headers: [] },
    ],
  },
});

const holds = (property: (layout: Layout) => void): void =>
  fc.assert(fc.property(arbitraryLayout, property), runs(300));

describe('for any layout', () => {
  it('checking never throws, and says sound things', () => {
    holds((layout) => {
      for (const note of notesOf(layout)) {
        expect(note.message).not.toMatch(/undefined|NaN|\[object|Infinity/);
        expect(Object.values(note.measure ?? {}).every(Number.isFinite)).toBe(true);
      }
    });
  });

  it('what presses and what reminds are judged apart, and are all there is, in the same order', () => {
    const property = (layout: Layout): void => {
      for (const take of layout.takes) {
        const derived = deriveTake(layout.kit, take);
        const all = judge(derived, checks);
        expect(checkTake(derived)).toEqual(all);
        expect(pressingNotes(derived)).toEqual(all.filter(({ level }) => level !== 'reminder'));
      }
    };
    fc.assert(fc.property(arbitraryLayout, property), runs(60));
  });

  it('no two findings of a take share a key', () => {
    holds((layout) => {
      const keys = notesOf(layout).map(({ take, key }) => `${take} ${key}`);
      expect(new Set(keys).size).toBe(keys.length);
    });
  });

  it('shifting everything by whole HP changes no finding', () => {
    fc.assert(
      fc.property(arbitraryLayout, fc.integer({ min: -30, max: 30 }), (layout, hp) => {
        const wide = eachTake(layout, (take) => ({
          ...take,
          rows: take.rows.map((row) => ({ ...row, widthHp: row.widthHp + 40 })),
        }));
        expect(essences(withoutEnds(notesOf(shift(wide, hp))))).toEqual(essences(withoutEnds(notesOf(wide))));
      }),
      runs(300),
    );
  });

  it('renaming ids renames the findings', () => {
    holds((layout) => {
      const plain = eachTake(layout, (take) => ({ ...take, accepted: [] }));
      expect(essences(notesOf(rename(plain)))).toEqual(essences(notesOf(plain).map(renameSubjects)));
    });
  });

  it('an unrelated module adds no damage', () => {
    holds((layout) => {
      const damage = (notes: readonly Note[]): string[] =>
        essences(notes.filter(({ level }) => level === 'damage'));
      expect(damage(notesOf(withStranger(layout)))).toEqual(damage(notesOf(layout)));
    });
  });

  it('the order in which modules stand in the file changes no finding', () => {
    holds((layout) => {
      const turned = eachTake(layout, (take) => ({ ...take, modules: [...take.modules].reverse() }));
      expect(essences(notesOf(turned))).toEqual(essences(notesOf(layout)));
    });
  });

  it('taking every ribbon out leaves no damage at all', () => {
    holds((layout) => {
      const bare = eachTake(layout, (take) => ({ ...take, ribbons: [] }));
      expect(notesOf(bare).filter(({ level }) => level === 'damage')).toEqual([]);
    });
  });
});

describe('the rear view', () => {
  it('mirrors: twice is the identity, and left of becomes right of', () => {
    const mm = fc.double({ min: -1000, max: 1000, noNaN: true });
    fc.assert(
      fc.property(mm, mm, mm, (a, b, width) => {
        expect(seenFrom('rear', seenFrom('rear', a, width), width)).toBeCloseTo(a, 9);
        expect(Math.sign(seenFrom('rear', a, width) - seenFrom('rear', b, width))).toBe(
          Math.sign(width - a - (width - b)),
        );
        expect(seenFrom('front', a, width)).toBe(a);
      }),
    );
  });
});
