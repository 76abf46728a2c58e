import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  inUnit,
  newRibbonDraft,
  otherUnit,
  type RibbonDraft,
  readRibbon,
  ribbonDraftOf,
} from '../../../app/kinds/ribbon-draft.ts';
import { applyEdit, demoLayout, type Kit, type RibbonKind } from '../../../src/index.ts';
import { runs } from '../../support/runs.ts';

const demo = demoLayout();
const kit: Kit = demo.kit;
const none: Kit = { ...kit, ribbons: [] };

const ribbon = (part: Partial<RibbonDraft> = {}): RibbonDraft => ({
  ...newRibbonDraft(none, 'ribbon'),
  ...part,
});
const lead = (part: Partial<RibbonDraft> = {}): RibbonDraft => ({ ...newRibbonDraft(none, 'lead'), ...part });
const made = (draft: RibbonDraft): RibbonKind => {
  const { kind, problems } = readRibbon(none, draft);
  if (!kind) throw new Error(JSON.stringify(problems));
  return kind;
};
const at = ({ connectors }: RibbonKind): number[] => connectors.map(({ atMm }) => atMm);

describe('the form for a new ribbon', () => {
  it('starts with a flat one at the pitch of 5 HP modules: 25.4 mm (1 HP = 5.08 mm, IEC 60297-3-101)', () => {
    expect(made(ribbon())).toEqual({
      id: 'shore-3-at-5-hp',
      name: 'Shore, 3 at 5 HP',
      bus: 'shore',
      lay: 'flat',
      connectors: [{ atMm: 0 }, { atMm: 25.4 }, { atMm: 50.8 }],
    });
  });

  it('starts a lead with the widest power header', () => {
    expect(made(lead())).toEqual({
      id: 'lead-16-way-250-mm',
      name: 'Lead 16-way, 250 mm',
      bus: 'power-16',
      lay: 'loose',
      connectors: [{ atMm: 0 }, { atMm: 250 }],
    });
  });

  it('makes a lead to a smaller header, an extension, a bending one at typed places', () => {
    expect(made(lead({ lastWays: '10' }))).toMatchObject({
      name: 'Lead 16 to 10, 250 mm',
      connectors: [{ atMm: 0 }, { atMm: 250, ways: 10 }],
    });
    expect(made(ribbon({ plug: 'first' }))).toMatchObject({
      name: 'Shore extension, 3 at 5 HP',
      connectors: [{ atMm: 0, type: 'plug' }, { atMm: 25.4 }, { atMm: 50.8 }],
    });
    const bending = made(ribbon({ lay: 'bends', spacing: 'typed', places: '0; 36; 96,5; 156' }));
    expect(bending).toMatchObject({ name: 'Shore, 4 bending', bends: true });
    expect(at(bending)).toEqual([0, 36, 96.5, 156]);
  });

  it('shows a distance in both units', () => {
    expect(otherUnit(ribbon())).toBe('= 25.4 mm');
    expect(otherUnit(ribbon({ pitch: '25.4', unit: 'mm' }))).toBe('= 5 HP');
    expect(otherUnit(ribbon({ pitch: 'far' }))).toBe('');
    expect(inUnit(ribbon(), 'mm')).toMatchObject({ pitch: '25.4', unit: 'mm' });
    expect(inUnit(inUnit(ribbon(), 'mm'), 'HP')).toMatchObject({ pitch: '5', unit: 'HP' });
  });

  it.each([
    [ribbon({ count: '1' }), 'count'],
    [ribbon({ count: '2.5' }), 'count'],
    [ribbon({ count: '201' }), 'count'],
    [ribbon({ pitch: '0' }), 'pitch'],
    [ribbon({ pitch: 'five' }), 'pitch'],
    [ribbon({ pitch: '99999' }), 'pitch'],
    [ribbon({ spacing: 'typed', places: '' }), 'places'],
    [ribbon({ spacing: 'typed', places: '0' }), 'places'],
    [ribbon({ spacing: 'typed', places: '5, 10' }), 'places'],
    [ribbon({ spacing: 'typed', places: '0, 40, 36' }), 'places'],
    [ribbon({ spacing: 'typed', places: '0, here' }), 'places'],
    [ribbon({ lastWays: '11' }), 'lastWays'],
    [ribbon({ lastWays: '0' }), 'lastWays'],
    [ribbon({ gauge: 'thin' }), 'gauge'],
    [ribbon({ bus: '' }), 'bus'],
    [ribbon({ bus: 'gone' }), 'bus'],
    [ribbon({ bus: '\u0000new' }), 'bus'],
    [ribbon({ name: '' }), 'name'],
  ])('names what is wrong (%#), and makes nothing', (draft, field) => {
    const { kind, problems } = readRibbon(none, draft);
    expect(Object.keys(problems)).toEqual([field]);
    expect(kind).toBeNull();
  });

  it('makes only what the layout takes, whatever is typed', () => {
    const text = fc.oneof(
      fc.string({ maxLength: 12 }),
      fc.constantFrom('2', '5', '0, 9', '0 1e-9', '1e-320', '', '-0', '9'.repeat(400)),
      fc.integer({ min: -3, max: 300 }).map(String),
    );
    const part = fc.record({
      name: fc.option(text),
      bus: fc.constantFrom('shore', 'power-16', 'gone'),
      lay: fc.constantFrom('fixed', 'bends', 'loose' as const),
      spacing: fc.constantFrom('even', 'typed' as const),
      count: text,
      pitch: text,
      unit: fc.constantFrom('HP', 'mm' as const),
      places: text,
      plug: fc.constantFrom('none', 'first', 'last', 'kept' as const),
      lastWays: text,
      gauge: text,
      key: fc.constantFrom('none', 'with-stripe', 'against-stripe', 'kept' as const),
    });
    const property = fc.property(part, (typed) => {
      const { kind, problems } = readRibbon(none, ribbon(typed as Partial<RibbonDraft>));
      expect(kind === null).toBe(Object.keys(problems).length > 0);
      if (kind) {
        const done = applyEdit({ ...demo, kit: none }, { type: 'add-ribbon-kind', kind });
        expect(done).not.toMatchObject({ error: {} });
      }
    });
    fc.assert(property, runs(500));
  });
});

describe('the form for a ribbon that there is', () => {
  const odd: RibbonKind = {
    id: 'odd',
    name: 'Odd',
    bus: 'power-16',
    lay: 'flat',
    bends: false,
    awg: 26,
    connectors: [
      { atMm: 0, key: 'with-stripe' },
      { atMm: 10, type: 'plug', face: 'panel', ways: 10 },
      { atMm: 30, type: 'plug' },
      { atMm: 55, face: 'rear', key: 'none' },
    ],
    price: 3,
  };

  it.each([...kit.ribbons, odd])('gives $name back as it is where nothing is changed', (kind) => {
    expect(readRibbon(kit, ribbonDraftOf(kind), kind).kind).toEqual(kind);
  });

  it('keeps what it does not show of each connector, and both ends at the ends', () => {
    const { kind } = readRibbon(kit, { ...ribbonDraftOf(odd), places: '0, 10, 30, 40, 60' }, odd);
    expect(kind?.connectors).toEqual([
      { atMm: 0, key: 'with-stripe' },
      { atMm: 10, type: 'plug', face: 'panel', ways: 10 },
      { atMm: 30, type: 'plug' },
      { atMm: 40 },
      { atMm: 60, face: 'rear', key: 'none' },
    ]);
  });

  it('moves the plug and the fewer ways with the last connector', () => {
    const lead10 = kit.ribbons.find(({ id }) => id === 'lead-10-150') as RibbonKind;
    const three = readRibbon(kit, { ...ribbonDraftOf(lead10), count: '3' }, lead10).kind;
    expect(three?.connectors).toEqual([{ atMm: 0 }, { atMm: 150 }, { atMm: 300, ways: 10 }]);
    const more = kit.ribbons.find(({ id }) => id === 'tide-more') as RibbonKind;
    const first = readRibbon(kit, { ...ribbonDraftOf(more), plug: 'first' }, more).kind;
    expect(first?.connectors.map(({ type }) => type)).toEqual(['plug', undefined, undefined]);
  });
});

describe('each connector by itself', () => {
  const each = (kind: RibbonKind) => ({ ...ribbonDraftOf(kind), spacing: 'each' as const });

  it.each(kit.ribbons)('gives $name back as it is where nothing is changed', (kind) => {
    expect(readRibbon(kit, each(kind), kind).kind).toEqual(kind);
  });

  it('keeps what goes without saying where it was said, and keys that are not known', () => {
    const kind = {
      id: 'own',
      name: 'Own',
      bus: 'shore',
      lay: 'flat',
      later: 1,
      connectors: [
        { atMm: 0, type: 'socket', face: 'panel', key: 'none', later: 2 },
        { atMm: 20, type: 'plug', ways: 4, later: 3 },
        { atMm: 45, face: 'rear', key: 'with-stripe' },
      ],
    } as RibbonKind;
    expect(readRibbon(kit, each(kind), kind).kind).toEqual(kind);
    const draft = each(kind);
    const turned = draft.connectors.map((connector, i) =>
      i === 1 ? { ...connector, type: 'socket' as const, face: 'panel' as const, ways: '' } : connector,
    );
    expect(readRibbon(kit, { ...draft, connectors: turned }, kind).kind?.connectors[1]).toEqual({
      atMm: 20,
      later: 3,
    });
    const without = { ...draft, connectors: draft.connectors.slice(0, 2) };
    expect(readRibbon(kit, without, kind).kind?.connectors).toEqual(kind.connectors.slice(0, 2));
  });

  it.each([
    [{ connectors: [] }, 'connectors'],
    [{ ways: '11' }, 'connectors'],
    [{ atMm: 0 }, 'connectors'],
    [{ atMm: 20_000 }, 'connectors'],
  ])('names what is wrong in %j', (part, field) => {
    const draft = { ...newRibbonDraft(none, 'ribbon'), spacing: 'each' as const };
    const connectors =
      'connectors' in part
        ? []
        : draft.connectors.map((connector, i) => (i === 2 ? { ...connector, ...part } : connector));
    const { kind, problems } = readRibbon(none, { ...draft, connectors });
    expect(kind).toBeNull();
    expect(Object.keys(problems)).toEqual([field]);
  });
});
