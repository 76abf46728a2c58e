import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ModuleDraft,
  moduleDraftOf,
  newModuleDraft,
  readModule,
} from '../../../app/kinds/module-draft.ts';
import {
  applyEdit,
  demoLayout,
  emptyKit,
  emptyLayout,
  type Kit,
  type ModuleKind,
} from '../../../src/index.ts';
import { runs } from '../../support/runs.ts';

const { kit: shoreline } = demoLayout();
const stocked: Kit = {
  ...emptyKit(),
  buses: [...emptyKit().buses, { id: 'reef', name: 'Reef', pinout: ['GND', 'mix'] }],
};

const draft = (part: Partial<ModuleDraft> = {}, kit = stocked): ModuleDraft => ({
  ...newModuleDraft(kit),
  ...part,
});
const problemsOf = (part: Partial<ModuleDraft>) => readModule(stocked, draft(part)).problems;
const kindOf = (part: Partial<ModuleDraft>): ModuleKind => {
  const { kind, problems } = readModule(stocked, draft(part));
  if (!kind) throw new Error(JSON.stringify(problems));
  return kind;
};

describe('the form for a new module', () => {
  it('claims nothing that was not said', () => {
    expect(kindOf({})).toEqual({
      id: 'plain-module-5-hp',
      name: 'Plain module, 5 HP',
      widthHp: 5,
      draws: { '+12': null, '-12': null },
      headers: [{ id: 'power', bus: 'power-10', role: 'member', xMm: 12.7, yMm: 64.2 }],
    });
  });

  it('tells the three states of a draw apart', () => {
    const { draws } = kindOf({
      draws: {
        '+12': { is: 'known', ma: '35,5' },
        '-12': { is: 'unknown', ma: '9' },
        '+5': { is: 'none', ma: '9' },
      },
    });
    expect(draws).toEqual({ '+12': 35.5, '-12': null });
  });

  it('reads figures as people write them', () => {
    const kind = kindOf({ widthHp: '7½', depth: '32 mm', heightU: '1', owned: ' 3 ', price: '4,50' });
    expect(kind).toMatchObject({ widthHp: 7.5, depthMm: 32, heightU: 1, owned: 3, price: 4.5 });
  });

  it('gives a blank panel no headers and no draws', () => {
    expect(kindOf({ template: 'blank' })).toMatchObject({ headers: [], draws: {} });
  });

  it.each([
    [{ widthHp: '' }, 'widthHp'],
    [{ widthHp: '0' }, 'widthHp'],
    [{ widthHp: '5.2' }, 'widthHp'],
    [{ widthHp: '-5' }, 'widthHp'],
    [{ widthHp: '1e9' }, 'widthHp'],
    [{ widthHp: 'Infinity' }, 'widthHp'],
    [{ heightU: '0' }, 'heightU'],
    [{ depth: 'deep' }, 'depth'],
    [{ depth: '-1' }, 'depth'],
    [{ owned: '1.5' }, 'owned'],
    [{ price: '-1' }, 'price'],
    [{ name: '  ' }, 'name'],
    [{ name: 'x'.repeat(101) }, 'name'],
    [{ powerBus: '' }, 'powerBus'],
    [{ template: 'voice', bus: '' }, 'bus'],
    [{ template: 'voice', bus: '\u0000new' }, 'bus'],
    [{ draws: { '+12': { is: 'known', ma: '' } } }, 'draws +12'],
    [{ draws: { '-12': { is: 'known', ma: '-3' } } }, 'draws -12'],
  ] as const)('names what is wrong in %j, and makes nothing', (part, field) => {
    expect(Object.keys(problemsOf(part))).toEqual([field]);
    expect(readModule(stocked, draft(part)).kind).toBeNull();
  });

  it('will not make two of one name', () => {
    const kit = { ...stocked, modules: [kindOf({ name: 'Pebble' })] };
    expect(readModule(kit, draft({ name: 'Pebble' }, kit)).problems.name).toBe('Another one has this name');
    expect(readModule(kit, draft({ name: null }, kit)).kind?.name).toBe('Plain module, 5 HP');
  });

  it('makes only what the layout takes, whatever is typed', () => {
    const text = fc.oneof(
      fc.string({ maxLength: 12 }),
      fc.constantFrom('5', '7.5', '1e3', '0x10', '½', '', ' ', '٣', '__proto__', '9'.repeat(400)),
      fc.integer().map(String),
    );
    const part = fc.record({
      name: fc.option(text),
      widthHp: fc.oneof(text, fc.constant('6')),
      heightU: fc.oneof(text, fc.constant('3')),
      template: fc.constantFrom('plain', 'voice', 'collector', 'main', 'expander', 'blank', 'kept' as const),
      bus: fc.constantFrom('reef', 'power-10', ''),
      nextBus: fc.constantFrom('reef', 'power-16', ''),
      powerBus: fc.constantFrom('power-16', ''),
      pin1: fc.constantFrom('', 'up', 'down' as const),
      depth: text,
      owned: text,
      price: text,
      draws: fc.dictionary(
        fc.constantFrom('+12', '-12'),
        fc.record({ is: fc.constant('known' as const), ma: text }),
      ),
    });
    const property = fc.property(part, (typed) => {
      const { kind, problems } = readModule(stocked, draft(typed as Partial<ModuleDraft>));
      expect(kind === null).toBe(Object.keys(problems).length > 0);
      if (kind) {
        const done = applyEdit(emptyLayout(stocked), { type: 'add-module-kind', kind });
        expect(done).toMatchObject({ ok: true });
      }
    });
    fc.assert(property, runs(500));
  });
});

describe('the form for a module that there is', () => {
  it.each(shoreline.modules)('gives $name back as it is where nothing is changed', (kind) => {
    expect(readModule(shoreline, moduleDraftOf(shoreline, kind), kind).kind).toEqual(kind);
  });

  it('keeps what it does not show', () => {
    const kind = {
      ...(shoreline.modules[3] as ModuleKind),
      notes: 'mended',
      depthIs: 'without-plugs',
      heightU: 3,
      later: 1,
    } as ModuleKind;
    const read = readModule(shoreline, { ...moduleDraftOf(shoreline, kind), widthHp: '16' }, kind);
    expect(read.kind).toEqual({ ...kind, widthHp: 16 });
  });

  it('moves the headers of a template with the width, and leaves others where they are', () => {
    const cobble = shoreline.modules.find(({ id }) => id === 'cobble') as ModuleKind;
    const wide = readModule(shoreline, { ...moduleDraftOf(shoreline, cobble), widthHp: '15' }, cobble);
    expect(wide.kind?.headers.map(({ id, xMm }) => [id, xMm])).toEqual([
      ['shore', 38.1],
      ['power', 38.1],
    ]);
    const harbour = shoreline.modules[0] as ModuleKind;
    const same = readModule(shoreline, { ...moduleDraftOf(shoreline, harbour), widthHp: '12' }, harbour);
    expect(same.kind?.headers).toBe(harbour.headers);
  });

  it('has its own headers still when a template was tried and left', () => {
    const gull = shoreline.modules.find(({ id }) => id === 'gull') as ModuleKind;
    const tried = { ...moduleDraftOf(shoreline, gull), template: 'voice' as const };
    expect(readModule(shoreline, { ...tried, template: 'kept' }, gull).kind).toEqual(gull);
  });

  it('takes a fact back that was not one', () => {
    const gull = shoreline.modules.find(({ id }) => id === 'gull') as ModuleKind;
    const unknown = { ...moduleDraftOf(shoreline, gull), depth: '', known: '' as const, owned: '' };
    const { kind } = readModule(shoreline, unknown, gull);
    expect(kind).not.toHaveProperty('depthMm');
    expect(kind).not.toHaveProperty('known');
    expect(kind).not.toHaveProperty('owned');
  });
});
