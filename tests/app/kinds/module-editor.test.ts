import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type HeaderDraft, headerLike, newHeader, placedAt } from '../../../app/kinds/header-draft.ts';
import {
  drawnSize,
  headersShown,
  type ModuleDraft,
  moduleDraftOf,
  newModuleDraft,
  readModule,
  withEdges,
  withHeaders,
} from '../../../app/kinds/module-draft.ts';
import { effectsOf } from '../../../app/kinds/use-effects.ts';
import { openLayout, writeLayout } from '../../../src/document.ts';
import {
  applyEdit,
  demoLayout,
  type Edges,
  type Edit,
  emptyLayout,
  type Kit,
  type Layout,
  type ModuleKind,
  panelSizeMm,
  record,
  startHistory,
  undo,
} from '../../../src/index.ts';
import { deepFreeze } from '../../support/deep-freeze.ts';
import { runs } from '../../support/runs.ts';

const demo = deepFreeze(demoLayout());
const { kit } = demo;
/** The same kit, and hardly anything besides. */
const bare = deepFreeze(emptyLayout(kit));

const anyEdges: fc.Arbitrary<Edges> = fc.record({
  across: fc.constantFrom('front-left', 'rear-left'),
  up: fc.constantFrom('bottom', 'top'),
});

const text = fc.oneof(
  fc.string({ maxLength: 12 }),
  fc.constantFrom('5', '7.5', '12,7', '38 mm', '1e3', '½', '', ' ', '-3', '٣', '__proto__', '9'.repeat(400)),
  fc.integer({ min: -200, max: 2000 }).map(String),
);
/** What can be read more often than not, so that most drafts become kinds. */
const mostly = (usual: string) =>
  fc.oneof({ weight: 9, arbitrary: fc.constant(usual) }, { weight: 1, arbitrary: text });

const said = fc.constantFrom('', 'yes', 'no' as const);
const anyHeaderPart: fc.Arbitrary<Partial<HeaderDraft>> = fc.record(
  {
    id: fc.oneof(
      { weight: 6, arbitrary: fc.constantFrom('shore', 'power', 'a', 'b', 'c', 'd') },
      { weight: 1, arbitrary: text },
    ),
    name: text,
    bus: fc.oneof(
      { weight: 9, arbitrary: fc.constantFrom(...kit.buses.map(({ id }) => id)) },
      { weight: 1, arbitrary: fc.constantFrom('', 'nobody', '\u0000new') },
    ),
    role: fc.constantFrom('host', 'member'),
    x: mostly('10.16'),
    y: mostly('40'),
    z: mostly('20'),
    axis: fc.constantFrom('', 'vertical', 'horizontal' as const),
    pin1: fc.constantFrom('', 'down', 'up', 'left', 'right' as const),
    keyed: said,
    passes: said,
    isolated: said,
    counts: mostly('2'),
  },
  { requiredKeys: [] },
);

const anyPart: fc.Arbitrary<Partial<ModuleDraft>> = fc.record(
  {
    name: fc.oneof({ weight: 3, arbitrary: fc.constant('Pebble') }, { weight: 1, arbitrary: text }),
    widthHp: mostly('8'),
    heightU: mostly(''),
    template: fc.constantFrom('plain', 'voice', 'collector', 'main', 'expander', 'blank', 'kept' as const),
    depth: mostly('30'),
    depthIs: fc.constantFrom('', 'with-plugs', 'without-plugs' as const),
    draws: fc.dictionary(
      fc.constantFrom('+12', '-12', '+5'),
      fc.record({ is: fc.constantFrom('none', 'unknown', 'known' as const), ma: mostly('20') }),
    ),
    owned: mostly('2'),
    price: mostly(''),
    color: text,
    notes: text,
    known: fc.constantFrom('', 'measured', 'guessed' as const),
  },
  { requiredKeys: [] },
);

/** One thing that a hand can do in the editor. */
type Deed = (draft: ModuleDraft, kit: Kit) => ModuleDraft;

const sizeIn = (draft: ModuleDraft) => {
  const { widthHp, heightU } = drawnSize(draft);
  return panelSizeMm(widthHp, heightU);
};

const headersThen =
  (change: (headers: readonly HeaderDraft[], draft: ModuleDraft, kit: Kit) => readonly HeaderDraft[]): Deed =>
  (draft, of) =>
    withHeaders(draft, change(headersShown(of, draft), draft, of));

const onOne = (i: number, change: (header: HeaderDraft, draft: ModuleDraft) => HeaderDraft): Deed =>
  headersThen((headers, draft) =>
    headers.map((header, at) => (at === i % headers.length ? change(header, draft) : header)),
  );

const anyDeed: fc.Arbitrary<Deed> = fc.oneof(
  anyPart.map(
    (part): Deed =>
      (draft) => ({ ...draft, ...part }),
  ),
  anyEdges.map(
    (edges): Deed =>
      (draft) =>
        withEdges(draft, edges),
  ),
  fc.constant(
    headersThen((headers, draft, of) => [...headers, newHeader(of, headers, draft.edges, sizeIn(draft))]),
  ),
  fc.nat({ max: 5 }).map((i) => headersThen((headers) => headers.filter((_, at) => at !== i))),
  fc.nat({ max: 5 }).map((i) =>
    headersThen((headers, draft) => {
      const header = headers[i % Math.max(1, headers.length)];
      return header ? [...headers, headerLike(header, headers, draft.edges, sizeIn(draft))] : headers;
    }),
  ),
  fc
    .record({
      i: fc.nat({ max: 5 }),
      xMm: fc.integer({ min: -20, max: 200 }),
      yMm: fc.integer({ min: -20, max: 200 }),
    })
    .map(({ i, ...place }) =>
      onOne(i, (header, draft) => placedAt(header, draft.edges, sizeIn(draft), place)),
    ),
  fc
    .record({ i: fc.nat({ max: 5 }), part: anyHeaderPart })
    .map(({ i, part }) => onOne(i, (header) => ({ ...header, ...part }))),
  fc
    .record({
      i: fc.nat({ max: 5 }),
      lie: fc.constantFrom(
        { axis: 'vertical', pin1: 'up' } as const,
        { axis: 'horizontal', pin1: 'right' } as const,
        { axis: '', pin1: '' } as const,
      ),
    })
    .map(({ i, lie }) => onOne(i, (header) => ({ ...header, ...lie }))),
);

const anyDeeds = fc.array(anyDeed, { minLength: 1, maxLength: 8 });

function done(layout: Layout, edit: Edit): Layout {
  const result = applyEdit(layout, edit);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

/** Writes it, opens it again, and is content with nothing less than the same. */
function expectToOpen(layout: Layout): void {
  const opened = openLayout(writeLayout(layout));
  expect(opened).toMatchObject({ ok: true });
  if (opened.ok) expect(opened.value).toEqual(layout);
}

describe('whatever is done in the editor', () => {
  it('makes only kinds that the layout takes, writes and opens again', () => {
    let made = 0;
    const property = fc.property(anyDeeds, (deeds) => {
      const draft = deeds.reduce((now, deed) => deed(now, kit), newModuleDraft(kit));
      const { kind, problems } = readModule(kit, draft);
      expect(kind === null).toBe(Object.keys(problems).length > 0);
      if (!kind) return;
      made++;
      expectToOpen(done(bare, { type: 'add-module-kind', kind }));
    });
    fc.assert(property, runs(250));
    expect(made).toBeGreaterThan(60);
  });

  it('changes a kind in one step, and undoing it gives back the very layout', () => {
    let changed = 0;
    const property = fc.property(fc.constantFrom(...kit.modules), anyDeeds, (before, deeds) => {
      const draft = deeds.reduce((now, deed) => deed(now, kit), moduleDraftOf(kit, before));
      const { kind } = readModule(kit, draft, before);
      if (!kind) return;
      const after = done(demo, { type: 'change-module-kind', kind });
      const history = record(startHistory(demo), 'change', after);
      if (after !== demo) {
        changed++;
        expect(undo(history).present).toBe(demo);
      }
      expectToOpen(after);
    });
    fc.assert(property, runs(120));
    expect(changed).toBeGreaterThan(30);
  });

  it('keeps what this program does not know of the kind and its headers', () => {
    const strange = {
      ...(kit.modules.find(({ id }) => id === 'boulder') as ModuleKind),
      later: { of: 'a newer program' },
    } as ModuleKind;
    const [first, ...rest] = strange.headers;
    const kind = { ...strange, headers: [{ ...first, later: [1, 2] }, ...rest] } as ModuleKind;
    const stocked = { ...kit, modules: kit.modules.map((other) => (other.id === kind.id ? kind : other)) };
    const draft = moduleDraftOf(stocked, kind);
    const [header] = headersShown(stocked, draft);
    if (!header) throw new Error('no header');
    const edited = withHeaders(
      { ...draft, notes: 'mended' },
      headersShown(stocked, draft).map((each, i) => (i === 0 ? { ...each, id: 'renamed', x: '20' } : each)),
    );
    const read = readModule(stocked, edited, kind).kind;
    if (!read) throw new Error('not read');
    const after = done({ ...demo, kit: stocked }, { type: 'change-module-kind', kind: read });
    const kept = after.kit.modules.find(({ id }) => id === 'boulder');
    expect(kept).toMatchObject({ later: { of: 'a newer program' }, notes: 'mended' });
    expect(kept?.headers[0]).toMatchObject({ id: 'renamed', xMm: 20, later: [1, 2] });
  });

  it('gives every kind back as it is, whatever its places are measured from', () => {
    const property = fc.property(fc.constantFrom(...kit.modules), anyEdges, (kind, edges) => {
      const draft = withEdges(moduleDraftOf(kit, kind), edges);
      const own = withHeaders(draft, headersShown(kit, draft));
      expect(readModule(kit, draft, kind).kind).toEqual(kind);
      expect(readModule(kit, own, kind).kind).toEqual(kind);
    });
    fc.assert(property, runs(60));
  });
});

describe('what a change would do', () => {
  const boulder = kit.modules.find(({ id }) => id === 'boulder') as ModuleKind;

  it('tells the notes that come, in the take that is shown first', () => {
    const headers = boulder.headers.map((header) =>
      header.id === 'shore' ? { ...header, xMm: header.xMm - 5.08 } : header,
    );
    const effects = effectsOf(
      demo,
      { type: 'change-module-kind', kind: { ...boulder, headers } },
      'one-long-jetty',
    );
    expect(effects.map(({ take }) => take.id)).toEqual(['one-long-jetty', 'three-jetties']);
    expect(effects[1]?.came.map(({ headline }) => headline)).toContain(
      'S1, connector 1 misses Boulder 1 by 5.08 mm',
    );
  });

  it('tells the notes that go, and nothing of what stays', () => {
    const kelp = kit.modules.find(({ id }) => id === 'kelp') as ModuleKind;
    const [effect] = effectsOf(
      demo,
      { type: 'change-module-kind', kind: { ...kelp, known: 'measured' } },
      'three-jetties',
    );
    expect(effect?.gone.map(({ check }) => check)).toEqual(['guessed-data']);
    expect([effect?.came, effect?.grew, effect?.shrank]).toEqual([[], [], []]);
    expect(effectsOf(demo, { type: 'change-module-kind', kind: kelp }, 'three-jetties')).toEqual([]);
  });
});
