import { readdirSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit, commands } from '../../src/edit/apply.ts';
import { clipOf } from '../../src/edit/clip-of.ts';
import type { Edit } from '../../src/edit/edit.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deepFreeze } from '../support/deep-freeze.ts';
import { anyLayout, flawsOf, littleLayout, module, ribbon, seats, takeOf } from '../support/little-layout.ts';
import { whyNotOpened } from '../support/opened.ts';
import { runs } from '../support/runs.ts';
import { anyDraw, editFrom, KIT_EDITS } from './any-edit.ts';

/** What the commands share and what is no command. */
const HELPERS = [
  'add-copies',
  'apply',
  'case-parts',
  'change',
  'change-built',
  'check-noun',
  'check-seat',
  'clip-of',
  'drop-seats',
  'edit',
  'find-room',
  'forget-lost',
  'fresh',
  'harness-record',
  'history',
  'loss',
  'mark-letter',
  'in-use',
  'kind-faults',
  'merge-kit',
  'push',
  'replaced',
];

const types = Object.keys(commands) as Edit['type'][];

/** Every object of a document that an app may keep something by, by its place: two takes may hold equal ones. */
function partsOf(layout: Layout): Map<string, object> {
  const { kit } = layout;
  const parts = new Map<string, object>([['kit', kit]]);
  for (const list of ['voltages', 'buses', 'modules', 'ribbons'] as const) {
    for (const part of kit[list]) parts.set(`kit ${list} ${part.id}`, part);
  }
  for (const { id, headers } of kit.modules) {
    for (const header of headers) parts.set(`kit modules ${id} ${header.id}`, header);
  }
  for (const take of layout.takes) {
    parts.set(take.id, take);
    for (const list of ['rows', 'supplies', 'modules', 'ribbons'] as const) {
      for (const part of take[list]) parts.set(`${take.id} ${list} ${part.id}`, part);
    }
  }
  return parts;
}

const laterKeys = (layout: object): number => JSON.stringify(layout).split('"later"').length;

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
      expect(whyNotOpened(after)).toBeUndefined();
      if (!KIT_EDITS.has(type)) expect(after.kit).toBe(layout.kit);
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
    // Headers that a board loses take their ribbons along; a kind that another one takes the place of goes with all it has.
    const losing = ['remove-', 'duplicate-', 'set-board-headers', 'paste', 'take-kinds'];
    const keeping = types.filter((type) => !losing.some((start) => type.startsWith(start)));
    const property = fc.property(anyLayout, anyDraw, fc.constantFrom(...keeping), (layout, numbers, type) => {
      const applied = applyEdit(layout, editFrom(layout, numbers, type));
      if (!applied.ok) return;
      if (KIT_EDITS.has(type))
        expect(laterKeys(applied.value.kit)).toBe(laterKeysKept(layout, applied.value));
      else if (type === 'add-take' || type === 'rewire-take')
        expect(laterKeys(applied.value)).toBeGreaterThanOrEqual(laterKeys(layout));
      else expect(laterKeys(applied.value)).toBe(laterKeys(layout));
    });
    fc.assert(property);
  });
});

/** How many there are in the kit, headers and connectors that went aside. */
function laterKeysKept(before: Layout, after: Layout): number {
  const headers = new Set(
    after.kit.modules.flatMap((kind) => kind.headers.map(({ id }) => `${kind.id} ${id}`)),
  );
  const lost = before.kit.modules.flatMap((kind) =>
    kind.headers.filter((header) => 'later' in header && !headers.has(`${kind.id} ${header.id}`)),
  );
  return laterKeys(before.kit) - lost.length;
}

describe('an edit that names nothing', () => {
  const layout = littleLayout({
    modules: [module('a', 'cobble', 0), module('b', 'cobble', 5)],
    ribbons: [ribbon('r', 'shore3', seats('a', 'b'))],
  });
  const take = 'take';
  const here = { row: 'top', atHp: 10 };
  const clip = clipOf(layout.kit, takeOf(layout), takeOf(layout).modules);

  const cases: readonly (readonly [Edit, string])[] = [
    [{ type: 'accept-finding', take: 'x', key: 'k' }, 'There is no take "x"'],
    [{ type: 'add-board', take, supply: 'x', row: 'top', xMm: 0 }, 'There is no supply "x"'],
    [{ type: 'add-board', take, supply: 'supply', row: 'x', xMm: 0 }, 'There is no row "x"'],
    [{ type: 'add-board', take, supply: 'supply', like: 'x', row: 'top', xMm: 0 }, 'There is no board "x"'],
    [
      { type: 'add-bus', bus: { id: 'reef', name: 'Reef', pinout: ['GND', 'mix', 'GND'] } },
      'Reef cannot be kept so: pinout: pins come in pairs; there are 3',
    ],
    [
      {
        type: 'add-module-kind',
        kind: { id: 'p', name: 'P', widthHp: 5, draws: {}, headers: [] },
        after: 'x',
      },
      'There is no kind of module "x"',
    ],
    [
      { type: 'add-module-kind', kind: { id: 'p', name: 'P', widthHp: 5, draws: { '+9': 1 }, headers: [] } },
      'P cannot be kept so: draws["+9"]: no voltage "+9"',
    ],
    [
      {
        type: 'add-ribbon-kind',
        kind: { id: 'p', name: 'P', bus: 'x', lay: 'flat', connectors: [{ atMm: 0 }, { atMm: 9 }] },
      },
      'P cannot be kept so: bus: no bus "x"',
    ],
    [
      { type: 'change-module-kind', kind: { id: 'x', name: 'X', widthHp: 5, draws: {}, headers: [] } },
      'There is no kind of module "x"',
    ],
    [
      {
        type: 'change-ribbon-kind',
        kind: { id: 'x', name: 'X', bus: 'shore', lay: 'flat', connectors: [{ atMm: 0 }, { atMm: 9 }] },
      },
      'There is no kind of ribbon "x"',
    ],
    [{ type: 'remove-module-kind', kind: 'x' }, 'There is no kind of module "x"'],
    [{ type: 'remove-ribbon-kind', kind: 'x' }, 'There is no kind of ribbon "x"'],
    [{ type: 'add-ribbon', take, kind: 'x', seats: [], prefix: 'S' }, 'There is no kind of ribbon "x"'],
    [{ type: 'add-ribbon', take, kind: 'lead', seats: seats('x'), prefix: 'L' }, 'There is no module "x"'],
    [
      { type: 'add-ribbon', take, kind: 'lead', seats: seats(null, null, 'a'), prefix: 'L' },
      'Lead has no connector 3',
    ],
    [{ type: 'add-row', take, like: 'x' }, 'There is no row "x"'],
    [{ type: 'add-supply', take, like: 'x' }, 'There is no supply "x"'],
    [{ type: 'add-take', from: 'x' }, 'There is no take "x"'],
    [{ type: 'bring-back', take, key: 'x' }, 'No note "x" is put away'],
    [{ type: 'change-board', take, board: 'x' }, 'There is no board "x"'],
    [{ type: 'change-board', take, board: 'board', fields: { row: 'x' } }, 'There is no row "x"'],
    [{ type: 'change-board', take, board: 'board', limits: { '+9': 1 } }, 'There is no voltage "+9"'],
    [{ type: 'change-board', take, board: 'board', supply: 'x' }, 'There is no supply "x"'],
    [{ type: 'change-row', take, row: 'x', fields: {} }, 'There is no row "x"'],
    [{ type: 'change-supply', take, supply: 'x' }, 'There is no supply "x"'],
    [{ type: 'change-supply', take, supply: 'supply', ratings: { '+9': 1 } }, 'There is no voltage "+9"'],
    [{ type: 'duplicate-modules', take, modules: ['a', 'x'] }, 'There is no module "x"'],
    [{ type: 'lay-out-rows', take: 'x', rows: [] }, 'There is no take "x"'],
    [{ type: 'label-ribbon', take, ribbon: 'x', label: 'S1' }, 'There is no ribbon "x"'],
    [{ type: 'lock-ribbon', take, ribbons: ['r', 'x'], locked: true }, 'There is no ribbon "x"'],
    [{ type: 'move-modules', take, moves: [{ module: 'x', ...here }] }, 'There is no module "x"'],
    [{ type: 'move-modules', take, moves: [{ module: 'a', row: 'x', atHp: 0 }] }, 'There is no row "x"'],
    [
      { type: 'move-modules', take, moves: [{ module: 'a', row: 'top', atHp: Number.NaN }] },
      'A place on the rails must be a number',
    ],
    [{ type: 'move-row', take, row: 'x', to: 0 }, 'There is no row "x"'],
    [{ type: 'order-ribbons', take, ribbons: ['r', 'x'], to: 'front' }, 'There is no ribbon "x"'],
    [{ type: 'paste', take: 'x', clip }, 'There is no take "x"'],
    [{ type: 'paste', take, clip, near: { row: 'x', atHp: 0 } }, 'There is no row "x"'],
    [{ type: 'exchange-ribbon', take, ribbon: 'x', kind: 'lead' }, 'There is no ribbon "x"'],
    [{ type: 'exchange-ribbon', take, ribbon: 'r', kind: 'x' }, 'There is no kind of ribbon "x"'],
    [{ type: 'pin-modules', take, modules: ['x'], pinned: true }, 'There is no module "x"'],
    [{ type: 'place-module', take, kind: 'x', ...here }, 'There is no kind of module "x"'],
    [{ type: 'place-module', take, kind: 'cobble', row: 'x', atHp: 0 }, 'There is no row "x"'],
    [
      { type: 'place-module', take, kind: 'cobble', row: 'top', atHp: Number.POSITIVE_INFINITY },
      'A place on the rails must be a number',
    ],
    [{ type: 'adopt-measured', take, kind: 'x' }, 'There is no kind of module "x"'],
    [{ type: 'adopt-measured', take, kind: 'cobble' }, 'No current of Cobble was measured'],
    [{ type: 'mark-in-case', inCase: 'x' }, 'There is no take "x"'],
    [
      { type: 'note-measured', take, on: 'module', id: 'x', line: '+12', quantity: 'ma', value: 1 },
      'There is no module "x"',
    ],
    [
      { type: 'note-measured', take, on: 'supply', id: 'supply', line: 'x', quantity: 'ma', value: 1 },
      'There is no voltage "x"',
    ],
    [
      { type: 'note-measured', take, on: 'supply', id: 'supply', line: '+12', quantity: 'ma', value: -1 },
      'A current must be a number of mA, not negative',
    ],
    [{ type: 'tick-step', take, step: '', done: true }, 'There is no such step'],
    [{ type: 'tick-test', take, ribbon: 'x', tests: ['stripe'] }, 'There is no ribbon "x"'],
    [{ type: 'untick-test', take, ribbon: 'x', tests: ['stripe'] }, 'There is no ribbon "x"'],
    [{ type: 'remove-board', take, board: 'x' }, 'There is no board "x"'],
    [{ type: 'remove-modules', take, modules: ['x'] }, 'There is no module "x"'],
    [{ type: 'remove-ribbons', take, ribbons: ['x'] }, 'There is no ribbon "x"'],
    [{ type: 'remove-row', take, row: 'x' }, 'There is no row "x"'],
    [{ type: 'remove-supply', take, supply: 'x' }, 'There is no supply "x"'],
    [{ type: 'remove-take', take: 'x' }, 'There is no take "x"'],
    [{ type: 'rename-module', take, module: 'x', label: 'A' }, 'There is no module "x"'],
    [{ type: 'move-take', take: 'x', to: 0 }, 'There is no take "x"'],
    [{ type: 'rename-take', take: 'x', name: 'A' }, 'There is no take "x"'],
    [{ type: 'rewire-take', from: 'x', modules: [], ribbons: [] }, 'There is no take "x"'],
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
    [{ type: 'set-board-headers', take, board: 'x', headers: [] }, 'There is no board "x"'],
    [
      { type: 'set-board-headers', take, board: 'board', headers: [{ id: 'p1', bus: 'x' }] },
      'There is no bus "x"',
    ],
    [
      { type: 'several', label: 'unseat', edits: [{ type: 'unseat', take, ribbon: 'x', connector: 0 }] },
      'There is no ribbon "x"',
    ],
    [{ type: 'slide-ribbon', take, ribbon: 'x', to: { headers: 1 } }, 'There is no ribbon "x"'],
    [
      { type: 'slide-ribbon', take, ribbon: 'r', to: { connector: 3, on: { module: 'a', header: 'shore' } } },
      'r has no connector 4',
    ],
    [
      { type: 'slide-ribbon', take, ribbon: 'r', to: { connector: 0, on: { module: 'x', header: 'shore' } } },
      'There is no module "x"',
    ],
    [
      { type: 'slide-ribbon', take, ribbon: 'r', to: { connector: 0, on: { module: 'a', header: 'x' } } },
      'There is no header "x"',
    ],
    [
      { type: 'slide-ribbon', take, ribbon: 'r', to: { connector: 2, on: { module: 'a', header: 'shore' } } },
      'Connector 3 of r sits on no module',
    ],
    [{ type: 'slide-ribbon', take, ribbon: 'r', to: { headers: 0.5 } }, 'A ribbon slides by whole headers'],
    [{ type: 'swap-modules', take, modules: ['a', 'x'] }, 'There is no module "x"'],
    [
      { type: 'take-kinds', from: layout.kit, kinds: [{ sort: 'module', id: 'x' }] },
      'There is no kind "x" to take',
    ],
    [
      { type: 'take-kinds', from: layout.kit, kinds: [{ sort: 'bus', id: 'shore', instead: 'x' }] },
      'There is no bus "x"',
    ],
    [{ type: 'turn-ribbon', take, ribbon: 'x', seats: 'keep' }, 'There is no ribbon "x"'],
    [{ type: 'twist-ribbon', take, ribbon: 'x', after: 0, halfTwists: 1 }, 'There is no ribbon "x"'],
    [{ type: 'twist-ribbon', take, ribbon: 'r', after: 2, halfTwists: 1 }, 'r has no gap after connector 3'],
    [
      { type: 'twist-ribbon', take, ribbon: 'r', after: 0, halfTwists: -1 },
      'Half-twists must be a whole number, 0 or more',
    ],
    [
      { type: 'add-voltage', voltage: { id: 'GND', volts: 1 } },
      'GND cannot be kept so: id: GND is implied and no voltage',
    ],
    [{ type: 'change-bus', bus: { id: 'x', name: 'X', pinout: ['GND', ''] } }, 'There is no bus "x"'],
    [{ type: 'change-voltage', id: 'x', voltage: { id: 'x', volts: 9 } }, 'There is no voltage "x"'],
    [{ type: 'remove-bus', bus: 'x' }, 'There is no bus "x"'],
    [{ type: 'remove-voltage', voltage: 'x' }, 'There is no voltage "x"'],
    [
      { type: 'set-limits', limits: { headroom: 2 } },
      'The limits cannot be kept so: headroom: must be at most 1, not 2',
    ],
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
