import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/checks/catalogue.ts';
import type { Mend, Note } from '../../src/checks/check.ts';
import {
  along,
  BOARD,
  example,
  kind,
  onBoard,
  onModule,
  powerHeader,
  ROW,
  ribbon,
  ribbonKind,
  SUPPLY,
  shoreHeader,
} from '../../src/checks/example.ts';
import { mendsOf } from '../../src/checks/remedies/mends-of.ts';
import { checkTake } from '../../src/checks/run.ts';
import { verdictOf } from '../../src/checks/verdict.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';

const bad = (check: string): Layout => (catalogue[check] ?? expect.fail(check)).examples.bad();

const CLEAR = 'No conflict found in the data entered';
const dark = (islands: number): string => `${islands} will not fit or work`;

/** Modules that draw nothing, so that no lead is missed. */
const quiet = kind('quiet', { headers: [shoreHeader()] });
const longLead = ribbonKind('long lead', [0, 500], { bus: 'power', lay: 'loose' });
const shortLead = [onBoard(0, 'p1'), onModule(1, 'a', 'power')];

/** One drawing for each check; where its own example leaves nothing to be done, one with room to do it. */
const DRAWINGS: readonly (readonly [
  check: string,
  layout: Layout,
  labels: readonly string[],
  after: string,
])[] = [
  ['overlap', bad('overlap'), ['Move voice (b) to 5 HP', 'Move voice (a) to 9.5 HP'], dark(2)],
  ['off-row', bad('off-row'), ['Move voice to 79 HP'], dark(1)],
  [
    'wrong-height',
    example({
      kinds: [kind('tile', { heightU: 1 })],
      rows: [ROW, { ...ROW, id: 'tiles', name: 'Tiles', heightU: 1 }],
      modules: [['a', 'tile', 3]],
    }),
    ['Move tile to 3 HP of Tiles'],
    CLEAR,
  ],
  [
    'too-deep',
    example({
      kinds: [kind('deep', { depthMm: 61 }), quiet],
      rows: [ROW, { ...ROW, id: 'deeper', depthMm: 61 }],
      modules: [
        ['a', 'deep', 3],
        ['b', 'quiet', 5, 'deeper'],
      ],
    }),
    ['Move deep to 0 HP of row 2', 'Move deep to 10 HP of row 2'],
    CLEAR,
  ],
  ['over-board', bad('over-board'), ['Move voice to 10 HP'], dark(1)],
  ['wrong-connector', bad('wrong-connector'), ['Use lead for r', 'Take r out'], CLEAR],
  [
    'lines-differ',
    example({
      kinds: [
        kind('two', {
          headers: [powerHeader({ id: 'wrong', bus: 'shore', role: 'member' }), powerHeader({ id: 'right' })],
        }),
      ],
      modules: [['a', 'two', 40]],
      ribbons: [ribbon('r', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'wrong')])],
    }),
    ['Seat r, connector 2, on header right of two', 'Take r out'],
    CLEAR,
  ],
  ['double-seat', bad('double-seat'), ['Take s out'], dark(4)],
  [
    'loose-end',
    example({
      kinds: [quiet],
      modules: [
        ['a', 'quiet', 5],
        ['b', 'collector', 0],
      ],
      ribbons: [ribbon('r', 'stiff', along('a'))],
    }),
    ['Seat r, connector 2, on collector', 'Take r out'],
    CLEAR,
  ],
  [
    'wrong-axis',
    example({
      kinds: [quiet, kind('turned', { headers: [shoreHeader({ axis: 'horizontal', pin1: 'left' })] })],
      ribbonKinds: [ribbonKind('hanging', [0, 100], { lay: 'loose' })],
      modules: [
        ['a', 'collector', 5],
        ['b', 'turned', 0],
      ],
      ribbons: [ribbon('r', 'stiff', along('a', 'b'))],
    }),
    ['Use hanging for r', 'Take r out'],
    CLEAR,
  ],
  [
    'looks-away',
    example({
      kinds: [quiet],
      modules: [
        ['a', 'collector', 7],
        ['b', 'quiet', 0],
      ],
      ribbons: [ribbon('r', 'bending', along('a', 'b'), { twists: [1] })],
    }),
    ['Take a half-twist out of r, after connector 1', 'Take r out'],
    CLEAR,
  ],
  ['crossed', bad('crossed'), ['Seat r in order, on the same headers'], dark(2)],
  [
    'displaced',
    bad('displaced'),
    ['Move voice (c) to 0 HP', 'Move voice (a) and voice (b) 0.5 HP to the left, seen from the front'],
    dark(2),
  ],
  [
    'off-pitch',
    bad('off-pitch'),
    ['Move voice (c) to 10 HP', 'Move voice (a) and voice (b) 1 HP to the left, seen from the front'],
    dark(2),
  ],
  ['out-of-line', bad('out-of-line'), ['Take r out'], dark(1)],
  [
    'short-ribbon',
    example({
      kinds: [quiet],
      ribbonKinds: [ribbonKind('longer', [0, 42], { bends: true, owned: 0 })],
      modules: [
        ['a', 'collector', 8.08],
        ['b', 'quiet', 0],
      ],
      ribbons: [ribbon('r', 'bending', along('a', 'b'))],
    }),
    ['Use longer (to buy) for r', 'Move collector to 7.5 HP', 'Move quiet to 0.5 HP'],
    CLEAR,
  ],
  [
    'tight-bend',
    bad('tight-bend'),
    ['Move slim (a) to 6 HP', 'Move slim (a) to 8 HP', 'Take r out'],
    dark(1),
  ],
  ['no-clearance', bad('no-clearance'), ['Take r out'], dark(1)],
  ['ribbons-clash', bad('ribbons-clash'), ['Take r out', 'Take s out'], dark(3)],
  ['crowded', bad('crowded'), ['Take r out'], dark(1)],
  ['stripe-reversed', bad('stripe-reversed'), ['Take r out'], dark(1)],
  ['key-against', bad('key-against'), ['Use lead for r', 'Take r out'], CLEAR],
  [
    'lead-short',
    example({
      kinds: [],
      ribbonKinds: [longLead],
      modules: [['a', 'plain', 5]],
      ribbons: [ribbon('r', 'lead', shortLead)],
    }),
    ['Use long lead for r'],
    CLEAR,
  ],
  [
    'over-members',
    bad('over-members'),
    [
      'Lift r, connector 8, off voice (v6)',
      'Lift r, connector 2, off voice (v0)',
      'Lift r, connector 3, off voice (v1)',
    ],
    dark(2),
  ],
  ['two-hosts', bad('two-hosts'), ['Take r out'], CLEAR],
  [
    'no-host',
    example({
      kinds: [quiet],
      modules: [
        ['h', 'collector', 10],
        ['a', 'quiet', 5],
        ['b', 'quiet', 0],
      ],
      ribbons: [ribbon('r', 'stiff', along('a', 'b'))],
    }),
    ['Use stiff3 for r, on collector too'],
    CLEAR,
  ],
  ['split-member', bad('split-member'), ['Take s out', 'Take r out'], CLEAR],
  ['unlinked', bad('unlinked'), ['Link voice (c) to collector by r, connector 3'], dark(1)],
  [
    'unlinked',
    example({
      kinds: [quiet],
      modules: [
        ['h', 'collector', 10],
        ['a', 'quiet', 5],
        ['b', 'quiet', 0],
      ],
      ribbons: [],
    }),
    [
      'Link quiet (b) and quiet (a) to collector by stiff3',
      'Link quiet (a) to collector by stiff',
      'Link quiet (a) to collector by bending',
    ],
    CLEAR,
  ],
  [
    'unlinked',
    example({
      kinds: [quiet],
      modules: [
        ['h', 'collector', 10],
        ['a', 'quiet', 5],
        ['b', 'quiet', 0],
      ],
      ribbons: [ribbon('r', 'stiff3', along('h', 'a'))],
    }),
    ['Link quiet (b) to collector by r, connector 3'],
    CLEAR,
  ],
  [
    'unpowered',
    bad('unpowered'),
    ['Seat r, connector 2, on plain too', 'Feed it by lead, from plain to header p2 of Board'],
    CLEAR,
  ],
  [
    'missing-voltage',
    example({
      kinds: [kind('both', { draws: { '+12': 10, '-12': 10 }, headers: [powerHeader()] })],
      supplies: [
        { ...SUPPLY, ratings: { '+12': 100 } },
        { ...SUPPLY, id: 'second', boards: [{ ...BOARD, id: 'board2', name: 'Board 2', xMm: 340 }] },
      ],
      modules: [['a', 'both', 40]],
      ribbons: [ribbon('r', 'lead', shortLead)],
    }),
    ['Seat r on header p1 of Board 2'],
    CLEAR,
  ],
  ['double-feed', bad('double-feed'), ['Take l2 out', 'Take l1 out'], dark(1)],
  ['joined-supplies', bad('joined-supplies'), ['Take l2 out', 'Take l1 out', 'Take link out'], dark(1)],
];

interface Look {
  readonly note: Note;
  readonly mends: readonly Mend[];
}

function look(layout: Layout, check: string, at = 0): Look {
  const take = layout.takes[at] ?? expect.fail('no take');
  const derived = deriveTake(layout.kit, take);
  const note = checkTake(derived).find((each) => each.check === check) ?? expect.fail(`no ${check}`);
  return { note, mends: mendsOf(derived, note) };
}

function mendedBy(layout: Layout, { edit }: Mend): Layout {
  const result = applyEdit(layout, edit);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

const verdict = (layout: Layout, at = 0): string => {
  const take = layout.takes[at] ?? expect.fail('no take');
  return verdictOf(checkTake(deriveTake(layout.kit, take))).text;
};

describe('what mends a drawing just outside a rule', () => {
  it.each(DRAWINGS)('%s', (check, layout, labels, verdictAfter) => {
    const { mends } = look(layout, check);
    expect(mends.map(({ label }) => label)).toEqual(labels);
    const [first] = mends;
    if (first) expect(verdict(mendedBy(layout, first))).toBe(verdictAfter);
  });
});

describe('mends', () => {
  it('leave pinned modules where they stand: the others come to their pitch', () => {
    const layout = bad('displaced');
    const [take] = layout.takes;
    if (!take) throw new Error('no take');
    const modules = take.modules.map((module) => (module.id === 'c' ? { ...module, pinned: true } : module));
    const { mends } = look({ ...layout, takes: [{ ...take, modules }] }, 'displaced');
    expect(mends.map(({ label }) => label)).toEqual([
      'Move voice (a) and voice (b) 0.5 HP to the left, seen from the front',
    ]);
  });

  it('leave locked ribbons alone', () => {
    const layout = bad('two-hosts');
    const [take] = layout.takes;
    if (!take) throw new Error('no take');
    const ribbons = take.ribbons.map((each) => ({ ...each, locked: true }));
    expect(look({ ...layout, takes: [{ ...take, ribbons }] }, 'two-hosts').mends).toEqual([]);
  });

  it('keep the lead at the largest draw, and say why', () => {
    const { mends } = look(demoLayout(), 'double-feed', 1);
    expect(mends.map(({ label, why }) => `${label}. ${why}`)).toEqual([
      'Take L4 out. L3 stays: Boulder 2 draws most of those that are fed.',
      'Take L3 out. L4 stays, at Cobble 4.',
    ]);
  });

  it('give a module that moves to another row a header there for its lead', () => {
    const { mends } = look(demoLayout(), 'over-board', 1);
    expect(mends[0]?.label).toBe('Move Foghorn to 80 HP of Upper row, with L8 on header 6 of Board 1');
    expect(mends[0]?.edit.type).toBe('several');
  });

  it('link the whole demo anew where all its ribbons are gone, also across rows, without a conflict', () => {
    const demo = demoLayout();
    const [take] = demo.takes;
    if (!take) throw new Error('no take');
    const ribbons = take.ribbons.filter(({ label }) => label?.startsWith('L'));
    let layout: Layout = { ...demo, takes: [{ ...take, ribbons }] };
    const linked = /^Link .* to (Jetty [ABC]|Harbour) by /;
    for (let tap = 0; tap < 8; tap++) {
      const now = layout.takes[0] ?? expect.fail('no take');
      if (!checkTake(deriveTake(layout.kit, now)).some(({ check }) => check === 'unlinked')) break;
      const [mend] = look(layout, 'unlinked').mends;
      expect(mend?.label).toMatch(linked);
      if (mend) layout = mendedBy(layout, mend);
    }
    const notes = checkTake(deriveTake(layout.kit, layout.takes[0] ?? take));
    expect(notes.filter(({ check }) => check === 'unlinked')).toEqual([]);
    expect(verdict(layout)).toBe(CLEAR);
  });

  it('one after the other bring the tempting regrouping of the demo to no conflict', () => {
    let layout = demoLayout();
    const done: string[] = [];
    for (let tap = 0; tap < 10; tap++) {
      const take = layout.takes[1] ?? expect.fail('no take');
      const derived = deriveTake(layout.kit, take);
      const severe = checkTake(derived).filter(({ level }) => level !== 'reminder');
      if (severe.length === 0) break;
      const [mend] = severe.flatMap((note) => mendsOf(derived, note));
      if (!mend) throw new Error(`nothing mends ${severe.map(({ headline }) => headline).join('; ')}`);
      done.push(mend.label);
      layout = mendedBy(layout, mend);
    }
    expect(verdict(layout, 1)).toBe(CLEAR);
    expect(done).toEqual([
      'Move Cobble 3 to 25 HP',
      'Lift S2, connector 1, off Jetty C',
      'Move Foghorn to 80 HP of Upper row, with L8 on header 6 of Board 1',
      'Use Shore, 3 bending for S3, on Jetty C too',
      'Feed it by Lead 16 to 10, 250 mm, from Boulder 1 to header 3 of Board 1',
      'Take L4 out',
    ]);
  });
});
