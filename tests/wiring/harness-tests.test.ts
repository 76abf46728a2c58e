import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/edit/apply.ts';
import type { Edit } from '../../src/edit/edit.ts';
import type { PlacedModule } from '../../src/geometry/place.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Connector, Header, Layout, ModuleKind, RibbonKind, Take } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { fingerprintOf, ribbonIdsOf, shortHash } from '../../src/wiring/fingerprint.ts';
import type { HeaderJoint } from '../../src/wiring/harness.ts';
import {
  HARNESS_TESTS,
  type HarnessState,
  harnessStates,
  isAllTested,
  testAgain,
} from '../../src/wiring/harness-tests.ts';
import type { LaidRibbon } from '../../src/wiring/laid-ribbon.ts';
import { anyDraw, editFrom } from '../edit/any-edit.ts';
import { deepFreeze } from '../support/deep-freeze.ts';
import { anyLayout } from '../support/little-layout.ts';
import { runs } from '../support/runs.ts';

const demo = deepFreeze(demoLayout());

const takeOf = (layout: Layout): Take => layout.takes[0] as Take;
const derived = (layout: Layout) => deriveTake(layout.kit, takeOf(layout));

const prints = (layout: Layout): Record<string, string> =>
  Object.fromEntries(
    derived(layout).harnesses.map((harness) => [ribbonIdsOf(harness).join(' '), fingerprintOf(harness)]),
  );

function edited(layout: Layout, ...edits: Edit[]): Layout {
  return edits.reduce((now, edit) => {
    const done = applyEdit(now, edit);
    if (!done.ok) throw new Error(done.error.message);
    return done.value;
  }, layout);
}

/** Names of harnesses whose fingerprints are not the same in both. */
function changedIn(before: Layout, after: Layout): string[] {
  const [was, is] = [prints(before), prints(after)];
  return Object.keys(was).filter((ribbons) => was[ribbons] !== is[ribbons]);
}

const take = takeOf(demo).id;

const allTested = (layout: Layout): Layout =>
  edited(
    layout,
    ...harnessStates(derived(layout)).map(
      ({ ribbons }): Edit => ({
        type: 'tick-test',
        take,
        ribbon: ribbons[0] as string,
        tests: HARNESS_TESTS,
      }),
    ),
  );

/** A link ribbon of the demo with what it sits on. */
const link = harnessStates(derived(demo)).find(
  ({ harness }) => harness.boardSeats.length === 0 && harness.moduleSeats.length > 1,
) as HarnessState;
const [first] = link.ribbons as [string];
const [seat] = link.harness.moduleSeats as [HeaderJoint];
const linked = seat.on.header;
const owner = linked.owner as PlacedModule;
const ribbonKindId = (link.harness.ribbons as [LaidRibbon])[0].ribbon.kind;
const ribbonKind = (layout: Layout): RibbonKind =>
  layout.kit.ribbons.find(({ id }) => id === ribbonKindId) as RibbonKind;
const moduleKind = (layout: Layout): ModuleKind =>
  layout.kit.modules.find(({ id }) => id === owner.module.kind) as ModuleKind;

const withRibbonKind = (change: Partial<RibbonKind>): Layout => ({
  ...demo,
  kit: {
    ...demo.kit,
    ribbons: demo.kit.ribbons.map((kind) => (kind === ribbonKind(demo) ? { ...kind, ...change } : kind)),
  },
});
const withModuleKind = (change: Partial<ModuleKind>): Layout => ({
  ...demo,
  kit: {
    ...demo.kit,
    modules: demo.kit.modules.map((kind) => (kind === moduleKind(demo) ? { ...kind, ...change } : kind)),
  },
});
const withHeader = (change: Partial<Header>): Layout =>
  withModuleKind({
    headers: moduleKind(demo).headers.map((header) =>
      header.id === linked.id ? { ...header, ...change } : header,
    ),
  });
const withConnector = (change: Partial<Connector>): Layout =>
  withRibbonKind({
    connectors: ribbonKind(demo).connectors.map((connector, i) =>
      i === 0 ? { ...connector, ...change } : connector,
    ),
  });

describe('a short hash', () => {
  it('is eight signs that cannot be taken for one another, and tells apart what differs little', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(shortHash(text)).toMatch(/^[2-9A-HJ-NP-Z]{8}$/);
      }),
      runs(100),
    );
    const texts = Array.from({ length: 20_000 }, (_, i) => `[25.4,${i / 1000}]`);
    expect(new Set(texts.map(shortHash)).size).toBe(texts.length);
  });
});

describe('the fingerprint of a harness', () => {
  it.each<[string, Layout]>([
    ['the layout’s name', { ...demo, title: 'Another', notes: 'any' }],
    ['the name of a ribbon', edited(demo, { type: 'label-ribbon', take, ribbon: first, label: 'Any' })],
    [
      'the name of a module',
      edited(demo, { type: 'rename-module', take, module: linked.owner.id, label: 'Any' }),
    ],
    ['names, prices and what is owned of a ribbon', withRibbonKind({ name: 'Any', price: 3, owned: 9 })],
    [
      'names, notes, prices, colours and currents of a module',
      withModuleKind({ name: 'Any', notes: 'any', price: 1, color: '#123456', draws: { '+12': 1 } }),
    ],
    ['the name of a header', withHeader({ name: 'Any' })],
    [
      'the order of the ribbons',
      { ...demo, takes: [{ ...takeOf(demo), ribbons: takeOf(demo).ribbons.toReversed() }] },
    ],
    [
      'how a ribbon is drawn over others',
      edited(demo, { type: 'order-ribbons', take, ribbons: [first], to: 'front' }),
    ],
  ])('is the same whatever %s', (_, other) => {
    expect(changedIn(demo, other)).toEqual([]);
  });

  it.each<[string, Layout]>([
    [
      'where a module stands',
      edited(demo, {
        type: 'move-modules',
        take,
        moves: [{ module: linked.owner.id, row: linked.row.row.id, atHp: 90.5 }],
      }),
    ],
    ['the stripe', edited(demo, { type: 'turn-ribbon', take, ribbon: first, seats: 'keep' })],
    ['a half-twist', edited(demo, { type: 'twist-ribbon', take, ribbon: first, after: 0, halfTwists: 1 })],
    [
      'a seat',
      edited(demo, {
        type: 'unseat',
        take,
        ribbon: first,
        connector: seat.connector,
      }),
    ],
    ['whether it bends', withRibbonKind({ bends: !ribbonKind(demo).bends })],
    ['the gauge', withRibbonKind({ awg: 26 })],
    [
      'the place of connectors',
      withRibbonKind({
        connectors: ribbonKind(demo).connectors.map((one) => ({ ...one, atMm: one.atMm * 1.1 })),
      }),
    ],
    ['a connector’s key', withConnector({ key: 'with-stripe' })],
    ['a connector’s face', withConnector({ face: 'rear' })],
    ['a connector’s ways', withConnector({ ways: 2 })],
    ['where a header is', withHeader({ xMm: linked.xMm + 1 })],
    ['its height', withHeader({ yMm: linked.yMm + 1 })],
    ['its depth', withHeader({ zMm: 11 })],
    ['its pin 1', withHeader({ pin1: linked.pin1 === 'up' ? 'down' : 'up' })],
    ['its box', withHeader({ keyed: !linked.keyed })],
    ['what passes inside', withHeader({ passes: !linked.passes })],
    ['what is isolated', withHeader({ isolated: !linked.isolated })],
    [
      'what lies on a pin',
      {
        ...demo,
        kit: {
          ...demo.kit,
          buses: demo.kit.buses.map((bus) =>
            bus.id === linked.bus.bus.id
              ? {
                  ...bus,
                  pinout: bus.pinout.map((line, i) => (i === bus.pinout.length - 1 ? 'other' : line)),
                }
              : bus,
          ),
        },
      },
    ],
  ])('is another with %s', (_, other) => {
    expect(changedIn(demo, other)).toContain(link.ribbons.join(' '));
  });

  it('changes with what touches a harness alone', () => {
    const moved = edited(demo, {
      type: 'move-modules',
      take,
      moves: [{ module: linked.owner.id, row: linked.row.row.id, atHp: 90.5 }],
    });
    const touching = derived(demo)
      .harnesses.filter((harness) =>
        harness.moduleSeats.some(({ on }) => on.header.owner.id === linked.owner.id),
      )
      .map((harness) => ribbonIdsOf(harness).join(' '));
    expect(changedIn(demo, moved).sort()).toEqual(touching.sort());
  });
});

describe('tests of harnesses', () => {
  it('hold as long as nothing of the harness changes, and again when it is put back', () => {
    const tested = allTested(demo);
    expect(isAllTested(derived(tested))).toBe(true);
    const { module } = owner;
    const move = (atHp: number): Edit => ({
      type: 'move-modules',
      take,
      moves: [{ module: module.id, row: module.row, atHp }],
    });
    const moved = edited(tested, move(module.atHp + 0.5));
    expect(isAllTested(derived(moved))).toBe(false);
    expect(testAgain(derived(moved))).toContain(link.name);
    const back = edited(moved, move(module.atHp));
    expect(testAgain(derived(back))).toEqual([]);
    expect(isAllTested(derived(back))).toBe(true);
  });

  it('are done anew when all three are ticked again, not when one is', () => {
    const turned = edited(allTested(demo), {
      type: 'turn-ribbon',
      take,
      ribbon: first,
      seats: 'keep',
    });
    const tick = (tests: readonly ('stripe' | 'continuity' | 'no-short')[]): Edit => ({
      type: 'tick-test',
      take,
      ribbon: first,
      tests,
    });
    const one = edited(turned, tick(['stripe']));
    expect(testAgain(derived(one))).toContain(link.name);
    const all = edited(one, tick(HARNESS_TESTS));
    expect(testAgain(derived(all))).not.toContain(link.name);
  });

  it('of nothing are none', () => {
    expect(isAllTested(derived(demo))).toBe(false);
    expect(isAllTested(derived({ ...demo, takes: [{ ...takeOf(demo), ribbons: [] }] }))).toBe(false);
  });

  it('of any layout are as many as its harnesses with seats, and taking them back leaves no record', () => {
    fc.assert(
      fc.property(anyLayout, (layout) => {
        const clean: Layout = { ...layout, takes: layout.takes.map(({ built: _, ...rest }) => rest) };
        const { id } = takeOf(clean);
        const states = harnessStates(derived(clean));
        const each = (type: 'tick-test' | 'untick-test'): Edit[] =>
          states.map(({ ribbons }) => ({
            type,
            take: id,
            ribbon: ribbons[0] as string,
            tests: HARNESS_TESTS,
          }));
        const tested = edited(clean, ...each('tick-test'));
        expect(isAllTested(derived(tested))).toBe(states.length > 0);
        expect(edited(tested, ...each('untick-test'))).toEqual(clean);
      }),
      runs(50),
    );
  });

  it('after any edit are either as they were or to be done again, never lost', () => {
    fc.assert(
      fc.property(anyLayout, anyDraw, (layout, numbers) => {
        const { id } = takeOf(layout);
        const tested = edited(
          layout,
          ...harnessStates(derived(layout)).map(
            ({ ribbons }): Edit => ({
              type: 'tick-test',
              take: id,
              ribbon: ribbons[0] as string,
              tests: HARNESS_TESTS,
            }),
          ),
        );
        const edit = editFrom(tested, numbers);
        const done = applyEdit(tested, edit);
        if (!done.ok || edit.type.endsWith('-test') || edit.type === 'remove-take') return;
        const had = new Map(Object.entries(prints(tested)));
        for (const { harness, ribbons, state } of harnessStates(derived(done.value))) {
          const isSame = had.get(ribbons.join(' ')) === fingerprintOf(harness);
          const isOld = ribbons.some((ribbon) =>
            takeOf(tested).ribbons.some((one) => one.id === ribbon && one.seats.length > 0),
          );
          if (isSame) expect(state).toBe('tested');
          else if (isOld) expect(state).toBe('changed');
        }
      }),
      runs(100),
    );
  });
});
