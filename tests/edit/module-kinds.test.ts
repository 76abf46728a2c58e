import { describe, expect, it } from 'vitest';
import { copyOfKind, freshKindId } from '../../src/edit/fresh.ts';
import type { Layout, ModuleKind } from '../../src/layout/layout.ts';
import {
  applied,
  littleLayout,
  module,
  refusalOf,
  ribbon,
  row,
  seats,
  takeOf,
} from '../support/little-layout.ts';

const other = {
  ...takeOf(littleLayout()),
  id: 'other',
  name: 'Other take',
  rows: [row('top')],
  modules: [module('z', 'cobble', 0)],
};
const layout = littleLayout(
  {
    modules: [module('a', 'cobble', 0), module('b', 'cobble', 5), module('j', 'jetty', 10)],
    ribbons: [ribbon('r', 'shore3', seats('a', 'b', 'j')), ribbon('t', 'shore3', seats('a'))],
  },
  [other],
);
const kindIn = ({ kit }: Layout, id: string) => kit.modules.find((kind) => kind.id === id) as ModuleKind;
const cobble = kindIn(layout, 'cobble');
const pebble: ModuleKind = { id: 'pebble', name: 'Pebble', widthHp: 5, draws: { '+12': null }, headers: [] };

describe('add-module-kind', () => {
  it('adds a kind as the last, or behind another', () => {
    const last = applied(layout, { type: 'add-module-kind', kind: pebble });
    expect(last.kit.modules.at(-1)).toEqual(pebble);
    const second = applied(layout, { type: 'add-module-kind', kind: pebble, after: 'cobble' });
    expect(second.kit.modules.map(({ id }) => id)).toEqual([
      'cobble',
      'pebble',
      'jetty',
      'boulder',
      'gull',
      'mark',
    ]);
    expect(second.kit.modules[0]).toBe(cobble);
  });

  it('adds the first kind of an empty kit', () => {
    const empty: Layout = { ...littleLayout(), kit: { ...layout.kit, modules: [] } };
    expect(applied(empty, { type: 'add-module-kind', kind: pebble }).kit.modules).toEqual([pebble]);
  });

  it.each([
    [{ ...pebble, id: 'cobble' }, 'There is already a kind of module "cobble"'],
    [{ ...pebble, name: '' }, 'A kind of module needs a name'],
    [{ ...pebble, widthHp: 5.2 }, 'Pebble cannot be kept so: widthHp: must be a multiple of 0.5, not 5.2'],
    [
      { ...pebble, draws: { '+12': -1 } },
      'Pebble cannot be kept so: draws["+12"]: must be at least 0, not -1',
    ],
  ])('refuses %j', (kind, words) => {
    expect(refusalOf(layout, { type: 'add-module-kind', kind })).toBe(words);
  });
});

describe('change-module-kind', () => {
  it('changes what is known of it, keeps what is not, and leaves its modules where they stand', () => {
    const changed = applied(layout, {
      type: 'change-module-kind',
      kind: { ...pebble, id: 'cobble', widthHp: 6, headers: cobble.headers },
    });
    expect(kindIn(changed, 'cobble')).toEqual({
      ...pebble,
      id: 'cobble',
      widthHp: 6,
      headers: cobble.headers,
      later: { kept: true },
    });
    expect(kindIn(changed, 'cobble').headers).toBe(cobble.headers);
    expect(changed.takes).toBe(layout.takes);
  });

  it('takes away what is not given', () => {
    const deep = applied(layout, { type: 'change-module-kind', kind: { ...cobble, depthMm: 30, owned: 2 } });
    const { depthMm: _, ...shallow } = kindIn(deep, 'cobble');
    const changed = applied(deep, { type: 'change-module-kind', kind: shallow });
    expect(kindIn(changed, 'cobble')).toEqual({ ...cobble, owned: 2 });
  });

  it('keeps strange keys of headers by their id', () => {
    const headers = [{ id: 'shore', bus: 'tide', role: 'host', xMm: 1, yMm: 2 } as const];
    const changed = applied(layout, { type: 'change-module-kind', kind: { ...cobble, headers } });
    expect(kindIn(changed, 'cobble').headers).toEqual([{ ...headers[0], later: 'header' }]);
  });

  it('takes connectors off headers that go, and a ribbon that is left bare out', () => {
    const changed = applied(layout, { type: 'change-module-kind', kind: { ...cobble, headers: [] } });
    expect(takeOf(changed).ribbons).toEqual([ribbon('r', 'shore3', seats(null, null, 'j'))]);
    expect(changed.takes[1]).toBe(layout.takes[1]);
  });

  it('gives back the very layout where nothing changes', () => {
    const same = structuredClone(cobble);
    expect(applied(layout, { type: 'change-module-kind', kind: same })).toBe(layout);
  });

  it('refuses what could not be saved', () => {
    const headers = [{ id: 'p', bus: 'nothing', role: 'member', xMm: 1, yMm: 2 } as const];
    expect(refusalOf(layout, { type: 'change-module-kind', kind: { ...cobble, headers } })).toBe(
      'Cobble cannot be kept so: headers[0].bus: no bus "nothing"',
    );
  });
});

describe('remove-module-kind', () => {
  it('takes a kind out that nobody uses', () => {
    const removed = applied(layout, { type: 'remove-module-kind', kind: 'gull' });
    expect(removed.kit.modules.map(({ id }) => id)).toEqual(['cobble', 'jetty', 'boulder', 'mark']);
    expect(removed.takes).toBe(layout.takes);
  });

  it('says where a kind is used', () => {
    expect(refusalOf(layout, { type: 'remove-module-kind', kind: 'cobble' })).toBe(
      'Cobble is in use: 2 modules in Take and 1 module in Other take',
    );
  });
});

describe('a copy of a kind', () => {
  it('has a name and id of its own, keeps strange keys, and is not owned', () => {
    const { modules } = layout.kit;
    const copy = copyOfKind(modules, { ...cobble, owned: 6 });
    expect(copy).toEqual({ ...cobble, id: 'cobble-copy', name: 'Cobble, copy' });
    const second = copyOfKind([...modules, copy], copy);
    expect([second.id, second.name]).toEqual(['cobble-copy-2', 'Cobble, copy 2']);
  });
});

describe('a fresh id for a kind', () => {
  it.each([
    ['Shore × 5 at 5 HP', 'shore-5-at-5-hp'],
    ['Cobble', 'cobble-2'],
    ['Möwe', 'möwe'],
    ['×', 'kind'],
    ['', 'kind'],
    ['x'.repeat(200), 'x'.repeat(40)],
  ])('of %j is %s', (name, id) => {
    expect(freshKindId(layout.kit.modules, name)).toBe(id);
  });
});
