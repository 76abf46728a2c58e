import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sayItem } from '../../../app/by-list/item-words.ts';
import { type Branch, connectorId, headerId, noteId, type Tree, treeOf } from '../../../app/by-list/tree.ts';
import { selectionKey } from '../../../app/canvas/model.ts';
import { checkTake, deriveTake, type Layout, type Take } from '../../../src/index.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
import { arbitraryLayout } from '../../support/arbitrary-layout.ts';
import { runs } from '../../support/runs.ts';

const treeIn = ({ kit }: Layout, take: Take): Tree => {
  const derived = deriveTake(kit, take);
  return treeOf(derived, checkTake(derived));
};

function* all(branches: readonly Branch[]): Generator<Branch> {
  for (const branch of branches) {
    yield branch;
    yield* all(branch.children);
  }
}

/** A take with the worst of the layouts' notes put away, so that these are looked at too. */
const withPutAway = (layout: Layout, take: Take): Take => {
  const note = checkTake(deriveTake(layout.kit, take)).find(({ level }) => level !== 'damage');
  return note ? { ...take, accepted: [...(take.accepted ?? []), { key: note.key }] } : take;
};

describe('the list of a take', () => {
  test('has every row, module, header, ribbon, connector, supply, board and note exactly once, where it belongs', () => {
    const property = (layout: Layout): void => {
      for (const plain of layout.takes) {
        const take = withPutAway(layout, plain);
        const derived = deriveTake(layout.kit, take);
        const notes = checkTake(derived);
        const tree = treeOf(derived, notes);
        const branches = [...all(tree.roots)];
        const count = new Map<string, number>();
        for (const { id } of branches) count.set(id, (count.get(id) ?? 0) + 1);
        expect([...count.values()].every((times) => times === 1)).toBe(true);
        expect(tree.byId.size).toBe(branches.length);
        const parentOf = (id: string): string | undefined => tree.byId.get(id)?.parent?.id;

        const expected: (readonly [id: string, parent: string | undefined])[] = [
          ...take.rows.map(({ id }) => [selectionKey('row', id), undefined] as const),
          ...take.modules.map(
            ({ id, row }) => [selectionKey('module', id), selectionKey('row', row)] as const,
          ),
          ...derived.places.modules.flatMap((module) =>
            module.headers.map((header) => [headerId(header), selectionKey('module', module.id)] as const),
          ),
          ...take.ribbons.map(({ id }) => [selectionKey('ribbon', id), 'ribbons'] as const),
          ...derived.wiring.ribbons.flatMap(({ id, facts }) =>
            facts.connectors.map((_, i) => [connectorId(id, i), selectionKey('ribbon', id)] as const),
          ),
          ...take.supplies.map(({ id }) => [selectionKey('supply', id), undefined] as const),
          ...take.supplies.flatMap(({ id, boards }) =>
            boards.map((board) => [selectionKey('board', board.id), selectionKey('supply', id)] as const),
          ),
          ...derived.places.boards.flatMap((board) =>
            board.headers.map((header) => [headerId(header), selectionKey('board', board.id)] as const),
          ),
        ];
        for (const [id, parent] of expected) {
          expect(tree.byId.has(id), id).toBe(true);
          expect(parentOf(id), id).toBe(parent);
        }
        for (const note of notes) {
          const home = tree.byId.get(noteId(note))?.parent;
          const subjects = note.subjects.map(({ type, id }) => selectionKey(type, id));
          if (note.accepted) expect(home?.id).toBe('put-away');
          else if (subjects.length === 0) expect(home?.id).toMatch(/take$/);
          else {
            const at = note.level === 'reminder' ? home?.parent?.id : home?.id;
            expect(subjects).toContain(at);
          }
        }
        const groups = branches.filter(({ item }) =>
          ['ribbons', 'take', 'reminders', 'put-away'].includes(item.type),
        );
        expect(branches.length).toBe(expected.length + notes.length + groups.length);
        expect(groups.every(({ children }) => children.length > 0)).toBe(true);
      }
    };
    fc.assert(fc.property(arbitraryLayout, property), runs(120));
  });

  test('levels and places tell where each branch stands', () => {
    fc.assert(
      fc.property(arbitraryLayout, (layout) => {
        const [take] = layout.takes;
        if (!take) return;
        const tree = treeIn(layout, take);
        for (const branch of all(tree.roots)) {
          const siblings = branch.parent?.children ?? tree.roots;
          expect(siblings[branch.place]).toBe(branch);
          expect(branch.level).toBe((branch.parent?.level ?? 0) + 1);
          expect(sayItem(tree, branch).trim()).not.toBe('');
        }
      }),
      runs(60),
    );
  });
});

describe('an item in words', () => {
  const layout = demoLayout();
  const say = (take: number, id: string): string => {
    const tree = treeIn(layout, layout.takes[take] as Take);
    const branch = tree.byId.get(id);
    return branch ? sayItem(tree, branch) : '';
  };

  test('says what the drawing shows', () => {
    expect(say(0, 'row:upper')).toBe('Upper row, 104 HP, 11 modules');
    expect(say(0, 'module:cobble-1')).toBe('Cobble 1, 5 HP at 15 HP from the left end seen from the front');
    expect(say(0, 'header:["module","cobble-1","shore"]')).toBe(
      'shore header, member, taken by S1 connector 4, centre 12.7 mm from the left and 38 mm up, seen from the front, pin 1 down',
    );
    expect(say(0, 'header:["module","cobble-1","power"]')).toContain('Power, 10-way, free');
    expect(say(0, 'ribbon:s1')).toBe('S1, Shore, 5 at 5 HP, stripe down, 4 of 5 connectors seated');
    expect(say(0, 'connector:["s1",3]')).toBe('Connector 4, Cobble 1, shore, lands');
    expect(say(0, 'connector:["s1",1]')).toBe('Connector 2, free');
    expect(say(0, 'connector:["t2",2]')).toBe('Connector 3, plug, connector 1 of T1, lands');
    expect(say(0, 'connector:["t1",0]')).toBe('Connector 1, carries connector 3 of T2, lands');
    expect(say(0, 'board:board-1')).toBe(
      'Board 1, Supply, 5 of 8 headers used, Upper row, 370 mm from the left end seen from the front',
    );
    expect(say(0, 'header:["board","board-1","1"]')).toContain(
      'Header 1, Power, 16-way, taken by L1 connector 1',
    );
  });

  test('counts what is wrong, of a row with all that stands in it', () => {
    expect(say(1, 'module:cobble-3')).toMatch(/, 1 damage, 1 fault$/);
    expect(say(1, 'ribbon:s1')).toMatch(/damage/);
    expect(say(1, 'row:upper')).toMatch(/^Upper row, 104 HP, 7 modules, 1 damage, 1 fault$/);
  });
});
