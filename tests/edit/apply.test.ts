import { readdirSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit, commands } from '../../src/edit/apply.ts';
import type { Edit } from '../../src/edit/edit.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deepFreeze } from '../support/deep-freeze.ts';
import { anyLayout, flawsOf, littleLayout, module, ribbon, seats } from '../support/little-layout.ts';
import { runs } from '../support/runs.ts';
import { anyDraw, editFrom } from './any-edit.ts';

/** What the commands share and what is no command. */
const HELPERS = [
  'apply',
  'change',
  'check-seat',
  'drop-seats',
  'edit',
  'find-room',
  'fresh',
  'history',
  'push',
];

const types = Object.keys(commands) as Edit['type'][];

/** Every object of a document that an app may keep something by, by its place: two takes may hold equal ones. */
function partsOf(layout: Layout): Map<string, object> {
  const parts = new Map<string, object>([['kit', layout.kit]]);
  for (const take of layout.takes) {
    parts.set(take.id, take);
    for (const list of ['rows', 'supplies', 'modules', 'ribbons'] as const) {
      for (const part of take[list]) parts.set(`${take.id} ${list} ${part.id}`, part);
    }
  }
  return parts;
}

const laterKeys = (layout: Layout): number => JSON.stringify(layout).split('"later"').length;

describe('the registry', () => {
  it('has one command for each file that is no helper', () => {
    const files = readdirSync(new URL('../../src/edit/', import.meta.url)).map((name) =>
      name.replace('.ts', ''),
    );
    expect([...types, ...HELPERS].sort()).toEqual(files.sort());
  });
});

describe('any edit', () => {
  it.each(types)('%s keeps a layout sound, untouched parts the same, and its input as it was', (type) => {
    let changes = 0;
    const property = fc.property(anyLayout, anyDraw, (layout, numbers) => {
      const edit = deepFreeze(editFrom(layout, numbers, type));
      const applied = applyEdit(layout, edit);
      if (!applied.ok) {
        expect(applied.error.message).toMatch(/^\S+( \S+)+(?<!\.)$/);
        return;
      }
      const after = applied.value;
      expect(flawsOf(after)).toEqual([]);
      expect(after.kit).toBe(layout.kit);
      if (after !== layout) changes++;
      expect(after === layout).toBe(isDeepStrictEqual(after, layout));

      const before = partsOf(layout);
      for (const [place, part] of partsOf(after)) {
        const was = before.get(place);
        if (isDeepStrictEqual(was, part)) expect(part, `${place}, unchanged, lost its identity`).toBe(was);
      }
    });
    fc.assert(property, runs(150));
    expect(changes, 'runs that changed something').toBeGreaterThan(10);
  });

  it('touches no other take', () => {
    const property = fc.property(anyLayout, anyDraw, (layout, numbers) => {
      const edit = editFrom(layout, numbers);
      const applied = applyEdit(layout, edit);
      if (!applied.ok || !('take' in edit)) return;
      const others = layout.takes.filter(({ id }) => id !== edit.take);
      expect(others.every((take) => applied.value.takes.includes(take))).toBe(true);
    });
    fc.assert(property);
  });

  it('keeps keys that this program does not know', () => {
    const keeping = types.filter((type) => !type.startsWith('remove-') && !type.startsWith('duplicate-'));
    const property = fc.property(anyLayout, anyDraw, fc.constantFrom(...keeping), (layout, numbers, type) => {
      const applied = applyEdit(layout, editFrom(layout, numbers, type));
      if (!applied.ok) return;
      if (type === 'add-take') expect(laterKeys(applied.value)).toBeGreaterThanOrEqual(laterKeys(layout));
      else expect(laterKeys(applied.value)).toBe(laterKeys(layout));
    });
    fc.assert(property);
  });
});

describe('an edit that names nothing', () => {
  const layout = littleLayout({
    modules: [module('a', 'cobble', 0), module('b', 'cobble', 5)],
    ribbons: [ribbon('r', 'shore3', seats('a', 'b'))],
  });
  const take = 'take';
  const here = { row: 'top', atHp: 10 };

  const cases: readonly (readonly [Edit, string])[] = [
    [{ type: 'accept-finding', take: 'x', key: 'k' }, 'There is no take "x"'],
    [{ type: 'add-ribbon', take, kind: 'x', seats: [], prefix: 'S' }, 'There is no kind of ribbon "x"'],
    [{ type: 'add-ribbon', take, kind: 'lead', seats: seats('x'), prefix: 'L' }, 'There is no module "x"'],
    [
      { type: 'add-ribbon', take, kind: 'lead', seats: seats(null, null, 'a'), prefix: 'L' },
      'Lead has no connector 3',
    ],
    [{ type: 'add-take', from: 'x' }, 'There is no take "x"'],
    [{ type: 'bring-back', take, key: 'x' }, 'No note "x" is put away'],
    [{ type: 'duplicate-modules', take, modules: ['a', 'x'] }, 'There is no module "x"'],
    [{ type: 'move-modules', take, moves: [{ module: 'x', ...here }] }, 'There is no module "x"'],
    [{ type: 'move-modules', take, moves: [{ module: 'a', row: 'x', atHp: 0 }] }, 'There is no row "x"'],
    [
      { type: 'move-modules', take, moves: [{ module: 'a', row: 'top', atHp: Number.NaN }] },
      'A place on the rails must be a number',
    ],
    [{ type: 'exchange-ribbon', take, ribbon: 'x', kind: 'lead' }, 'There is no ribbon "x"'],
    [{ type: 'exchange-ribbon', take, ribbon: 'r', kind: 'x' }, 'There is no kind of ribbon "x"'],
    [{ type: 'pin-modules', take, modules: ['x'], pinned: true }, 'There is no module "x"'],
    [{ type: 'place-module', take, kind: 'x', ...here }, 'There is no kind of module "x"'],
    [{ type: 'place-module', take, kind: 'cobble', row: 'x', atHp: 0 }, 'There is no row "x"'],
    [
      { type: 'place-module', take, kind: 'cobble', row: 'top', atHp: Number.POSITIVE_INFINITY },
      'A place on the rails must be a number',
    ],
    [{ type: 'remove-modules', take, modules: ['x'] }, 'There is no module "x"'],
    [{ type: 'remove-ribbons', take, ribbons: ['x'] }, 'There is no ribbon "x"'],
    [{ type: 'remove-take', take: 'x' }, 'There is no take "x"'],
    [{ type: 'rename-module', take, module: 'x', label: 'A' }, 'There is no module "x"'],
    [{ type: 'rename-take', take: 'x', name: 'A' }, 'There is no take "x"'],
    [
      { type: 'seat-connector', take, ribbon: 'x', connector: 0, on: { module: 'a', header: 'shore' } },
      'There is no ribbon "x"',
    ],
    [
      { type: 'seat-connector', take, ribbon: 'r', connector: 3, on: { module: 'a', header: 'shore' } },
      'r has no connector 4',
    ],
    [
      { type: 'seat-connector', take, ribbon: 'r', connector: 0, on: { module: 'a', header: 'x' } },
      'There is no header "x"',
    ],
    [
      { type: 'seat-connector', take, ribbon: 'r', connector: 0, on: { board: 'x', header: 'p1' } },
      'There is no board "x"',
    ],
    [
      { type: 'seat-connector', take, ribbon: 'r', connector: 0, on: { board: 'board', header: 'x' } },
      'There is no header "x"',
    ],
    [
      { type: 'seat-connector', take, ribbon: 'r', connector: 0, on: { ribbon: 'x', connector: 0 } },
      'There is no ribbon "x"',
    ],
    [
      { type: 'seat-connector', take, ribbon: 'r', connector: 0, on: { ribbon: 'r', connector: 0.5 } },
      'r has no connector 1.5',
    ],
    [
      { type: 'several', label: 'unseat', edits: [{ type: 'unseat', take, ribbon: 'x', connector: 0 }] },
      'There is no ribbon "x"',
    ],
    [{ type: 'swap-modules', take, modules: ['a', 'x'] }, 'There is no module "x"'],
    [{ type: 'turn-ribbon', take, ribbon: 'x', seats: 'keep' }, 'There is no ribbon "x"'],
    [{ type: 'twist-ribbon', take, ribbon: 'x', after: 0, halfTwists: 1 }, 'There is no ribbon "x"'],
    [{ type: 'unseat', take, ribbon: 'x', connector: 0 }, 'There is no ribbon "x"'],
    [{ type: 'unseat', take, ribbon: 'r', connector: -1 }, 'r has no connector 0'],
  ];

  it.each(cases)('is refused: %j', (edit, message) => {
    expect(applyEdit(layout, edit)).toEqual({ ok: false, error: { message } });
  });

  it('is told for every command that names anything', () => {
    const told = new Set(cases.map(([edit]) => edit.type));
    expect(types.filter((type) => !told.has(type))).toEqual(['rename-layout']);
  });
});
