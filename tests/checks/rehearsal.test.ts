import { describe, expect, test } from 'vitest';
import { boxWords } from '../../src/checks/box-words.ts';
import {
  example,
  kind,
  onBoard,
  onModule,
  POWER16,
  powerHeader,
  ribbon,
  ribbonKind,
} from '../../src/checks/example.ts';
import { howPlugged } from '../../src/checks/how-plugged.ts';
import { misplugDrawn, rehearsalOf, seatRehearsed } from '../../src/checks/rehearsal.ts';
import { examples as displaced } from '../../src/checks/rules/displaced.ts';
import { examples as linesDiffer } from '../../src/checks/rules/lines-differ.ts';
import { examples as stripeReversed } from '../../src/checks/rules/stripe-reversed.ts';
import { examples as wrongConnector } from '../../src/checks/rules/wrong-connector.ts';
import { checkTake } from '../../src/checks/run.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Key, Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { mishapAt, seatAt } from '../../src/wiring/rehearse.ts';

function derived(layout: Layout, index = 0) {
  const take = layout.takes[index];
  if (!take) throw new Error('no take');
  return deriveTake(layout.kit, take);
}

describe('as the drawing has it', () => {
  test('Cobble 3 of the second take: a row off; all others as they belong', () => {
    const take = derived(demoLayout(), 1);
    const drawn = take.wiring.joints.map((joint) => [
      `${joint.ribbon.id} ${joint.connector}`,
      misplugDrawn(joint, take),
    ]);
    expect(drawn.filter(([, misplug]) => misplug)).toEqual([
      ['s1 3', { type: 'shifted', rows: -1, pairs: 0 }],
    ]);
  });

  test('a stripe at the wrong end', () => {
    const take = derived(stripeReversed.bad());
    const misplugs = take.wiring.joints.map((joint) => misplugDrawn(joint, take));
    expect(misplugs).toContainEqual({ type: 'reversed' });
    expect(misplugs).toContainEqual(undefined);
  });
});

describe('the seat whose mishap a note tells', () => {
  test.each([
    ['displaced', displaced],
    ['lines-differ', linesDiffer],
    ['stripe-reversed', stripeReversed],
    ['wrong-connector', wrongConnector],
  ])('%s: what is rehearsed there is what the note tells', (check, { bad }) => {
    const take = derived(bad());
    const note = checkTake(take).find((each) => each.check === check);
    const seat = note && seatRehearsed(note, take);
    if (!seat) throw new Error('nothing to rehearse');
    const misplug = misplugDrawn(seat, take) ?? { type: 'shifted', rows: 0, pairs: 0 };
    const told = rehearsalOf(seat, misplug, take.kit).told.replace(/^[^,]*, (it )?/, '');
    expect(note?.detail.toLowerCase()).toContain(told.toLowerCase());
  });

  test('no other note tells one, nor one of halves that cannot mate', () => {
    const take = derived(demoLayout(), 1);
    const told = checkTake(take).filter((note) => seatRehearsed(note, take));
    expect(told.map(({ check }) => check)).toEqual(['displaced']);
    const plugOnHeader = example({
      kinds: [kind('plain-2', { headers: [powerHeader()] })],
      ribbonKinds: [
        {
          ...ribbonKind('plugged', [], { bus: 'power', lay: 'loose' }),
          connectors: [{ atMm: 0, type: 'plug' }, { atMm: 500 }],
        },
      ],
      modules: [['a', 'plain-2', 40]],
      ribbons: [ribbon('r', 'plugged', [onModule(0, 'a', 'power'), onBoard(1, 'p1')])],
    });
    const other = derived(plugOnHeader);
    const notes = checkTake(other).filter(({ check }) => check === 'wrong-connector');
    expect(notes.length).toBe(1);
    expect(notes.map((note) => seatRehearsed(note, other))).toEqual([undefined]);
  });
});

test('a rehearsal tells the same as the mishap, contact by contact', () => {
  const take = derived(demoLayout());
  const seat = seatAt(take, 'l1', 1);
  if (!seat) throw new Error('no seat');
  const rehearsal = rehearsalOf(seat, { type: 'reversed' }, take.kit);
  expect(rehearsal.mishap).toEqual(mishapAt(seat, { type: 'reversed' }, take.kit));
  expect(rehearsal.map).toEqual(Array.from({ length: 16 }, (_, i) => 15 - i));
  expect(rehearsal.told).toBe("Turned end for end, the module's GND would tie +12 V, +5 V and CV together.");
});

test('only lines that touch two or more are told to tie them', () => {
  // Shore, a row off towards the odd pins: GND meets GND and +12 V meets GND, but +12 V of the module has GND alone.
  const take = derived(demoLayout(), 1);
  const seat = seatAt(take, 's1', 3);
  const told = seat && rehearsalOf(seat, { type: 'shifted', rows: -1, pairs: 0 }, take.kit).told;
  expect(told).toContain("the module's GND would tie GND and +12 V together");
});

test.each([
  [{ type: 'shifted', rows: 0, pairs: 0 }, 'As it belongs'],
  [{ type: 'shifted', rows: 1, pairs: 0 }, 'Displaced by 1 row towards the even pins'],
  [
    { type: 'shifted', rows: -1, pairs: 2 },
    'Displaced by 1 row towards the odd pins and 2 pairs towards the far end',
  ],
  [{ type: 'reversed' }, 'Turned end for end'],
  [{ type: 'reversed', pairs: -1 }, 'Turned end for end and displaced by 1 pair towards pin 1'],
] as const)('how it is plugged: %o', (misplug, words) => {
  expect(howPlugged(misplug)).toBe(words);
});

/* A box with a notch keeps a connector with a key on its pins and the right way round: common practice, no source. */
describe('what a boxed header leaves of it', () => {
  const boxed = (keyed: boolean, key?: Key, ways?: number) => {
    const layout = example({
      kinds: [kind('boxed', { headers: [powerHeader({ keyed, bus: POWER16.id })] })],
      ribbonKinds: [
        {
          ...ribbonKind('own', [], { bus: POWER16.id, lay: 'loose' }),
          connectors: [
            { atMm: 0, ways: 10 },
            { atMm: 500, ...(key && { key }), ...(ways && { ways }) },
          ],
        },
      ],
      modules: [['a', 'boxed', 40]],
      ribbons: [ribbon('r', 'own', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
    });
    const seat = seatAt(derived(layout), 'r', 1);
    if (!seat) throw new Error('no seat');
    return boxWords(seat);
  };

  test.each([
    ['open header', boxed(false, 'with-stripe'), undefined],
    ['key with the stripe', boxed(true, 'with-stripe'), /over its pins.*unless the cable was made wrongly/],
    ['key against the stripe', boxed(true, 'against-stripe'), /over its pins.*only turned end for end/],
    ['no key known', boxed(true), /over its pins.*may still go in turned/],
    ['narrower connector', boxed(true, 'with-stripe', 10), /still sit some pairs off.*made wrongly/],
  ])('%s', (_, words, expected) => {
    if (expected) expect(words).toMatch(expected);
    else expect(words).toBeUndefined();
  });
});
