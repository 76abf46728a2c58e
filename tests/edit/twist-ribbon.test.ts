import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { looksAway } from '../../src/checks/rules/looks-away.ts';
import { stripeReversed } from '../../src/checks/rules/stripe-reversed.ts';
import { openDocument } from '../../src/document.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import {
  anyLayout,
  applied,
  littleLayout,
  module,
  refusalOf,
  ribbon,
  seats,
  takeOf,
} from '../support/little-layout.ts';
import { runs } from '../support/runs.ts';
import { anyDraw, editFrom } from './any-edit.ts';

const twist = (id: string, after: number, halfTwists: number) =>
  ({ type: 'twist-ribbon', take: 'take', ribbon: id, after, halfTwists }) as const;

/** Stripe up, as the headers' pin 1 is: all three seats are right. */
const layout = littleLayout({
  modules: [module('a', 'cobble', 0), module('b', 'cobble', 5), module('c', 'cobble', 10)],
  ribbons: [
    ribbon('r', 'shore3', seats('a', 'b', 'c'), { stripe: 'up' }),
    ribbon('loose', 'lead', seats('a', 'c'), { label: 'L1' }),
    ribbon('fast', 'shore3', seats('a'), { locked: true }),
    ribbon('long', 'shore3', seats('a'), { twists: [0, 2] }),
    ribbon('padded', 'shore3', [], { twists: [0, 0] }),
  ],
});

const twistsOf = (of: Layout, id: string) => takeOf(of).ribbons.find((one) => one.id === id)?.twists;

const connectorsFound = (check: typeof looksAway, of: Layout): string[] =>
  [...check.find(deriveTake(of.kit, takeOf(of)))]
    .filter(({ subjects }) => subjects[0]?.id === 'r')
    .map(({ part }) => String(part));

describe('twist-ribbon', () => {
  it('sets the half-twists of one gap and keeps the list short', () => {
    expect(twistsOf(applied(layout, twist('r', 0, 1)), 'r')).toEqual([1]);
    expect(twistsOf(applied(layout, twist('r', 1, 3)), 'r')).toEqual([0, 3]);
    expect(twistsOf(applied(layout, twist('long', 0, 1)), 'long')).toEqual([1, 2]);
    expect(twistsOf(applied(layout, twist('long', 1, 0)), 'long')).toBeUndefined();
    expect('twists' in (takeOf(applied(layout, twist('long', 1, 0))).ribbons[3] ?? {})).toBe(false);
  });

  it('in and out again is as before', () => {
    const twisted = applied(layout, twist('r', 0, 1));
    expect(applied(twisted, twist('r', 0, 0))).toEqual(layout);
  });

  it('gives back the very layout where the gap has so many, zeros that nobody needs included', () => {
    expect(applied(layout, twist('r', 0, 0))).toBe(layout);
    expect(applied(layout, twist('long', 1, 2))).toBe(layout);
    expect(applied(layout, twist('padded', 1, 0))).toBe(layout);
  });

  // Common practice, no source: a half-twist turns a ribbon over, so that what lay on the lower edge lies on the
  // upper one and what opened to the panel opens to the rear.
  it('turns stripe and face over on all that comes after it, and two half-twists turn them back', () => {
    expect(connectorsFound(looksAway, layout)).toEqual([]);
    expect(connectorsFound(stripeReversed, layout)).toEqual([]);
    const once = applied(layout, twist('r', 0, 1));
    expect(connectorsFound(looksAway, once)).toHaveLength(2);
    const later = applied(layout, twist('r', 1, 1));
    expect(connectorsFound(looksAway, later)).toHaveLength(1);
    // The seats that a twist turns away conduct nothing; with the ribbon turned over they are right, the first is not.
    const turned = applied(once, { type: 'turn-ribbon', take: 'take', ribbon: 'r', seats: 'keep' });
    expect(connectorsFound(stripeReversed, turned)).toHaveLength(1);
    const twice = applied(layout, twist('r', 0, 2));
    expect([...connectorsFound(looksAway, twice), ...connectorsFound(stripeReversed, twice)]).toEqual([]);
  });

  it.each([
    [twist('loose', 0, 1), 'L1 hangs loose and has no twists'],
    [twist('fast', 0, 1), 'fast is locked'],
    [twist('r', -1, 1), 'r has no gap after connector 0'],
    [twist('r', 0.5, 1), 'r has no gap after connector 1.5'],
    [twist('r', Number.NaN, 1), 'r has no gap after connector NaN'],
    [twist('r', 0, 0.5), 'Half-twists must be a whole number, 0 or more'],
    [twist('r', 0, 1e300), 'Half-twists must be a whole number, 0 or more'],
    [twist('r', 0, Number.POSITIVE_INFINITY), 'Half-twists must be a whole number, 0 or more'],
  ])('is refused: %j', (edit, message) => {
    expect(refusalOf(layout, edit)).toBe(message);
  });
});

describe('whatever is done to a ribbon', () => {
  it.each(['twist-ribbon', 'lock-ribbon', 'label-ribbon', 'slide-ribbon'] as const)(
    '%s leaves a layout that can be saved and opened',
    (type) => {
      const property = fc.property(anyLayout, anyDraw, (before, numbers) => {
        const done = applyEdit(before, editFrom(before, numbers, type));
        if (!done.ok || !openDocument(before).ok) return;
        expect(openDocument(JSON.parse(JSON.stringify(done.value))).ok).toBe(true);
      });
      fc.assert(property, runs(60));
    },
  );
});
