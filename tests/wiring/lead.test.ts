import { describe, expect, it } from 'vitest';
import { example, onBoard, onModule, ribbon, ribbonKind } from '../../src/checks/example.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import type { DerivedTake } from '../../src/wiring/derived-take.ts';
import { fittingRibbons, stripeOver } from '../../src/wiring/fitting.ts';
import { leadFor } from '../../src/wiring/lead.ts';

const derive = ({ kit, takes: [take] }: Layout): DerivedTake =>
  deriveTake(kit, take ?? expect.fail('no take'));

const headerOf = (take: DerivedTake, module: string, id: string) =>
  take.places.moduleById.get(module)?.headers.find((header) => header.id === id) ??
  expect.fail(`${module} has no ${id}`);

function demo(...without: string[]): DerivedTake {
  const layout = demoLayout();
  const [take] = layout.takes;
  if (!take) throw new Error('no take');
  return derive({
    ...layout,
    takes: [{ ...take, ribbons: take.ribbons.filter(({ id }) => !without.includes(id)) }],
  });
}

const lead = (lengthMm: number, owned: number) =>
  ribbonKind(`lead ${lengthMm}`, [0, lengthMm], { bus: 'power', lay: 'loose', owned });

describe('a lead for a header', () => {
  it('is the shortest that reaches the nearest free header of a board', () => {
    const take = demo('l5');
    const choice = leadFor(take, headerOf(take, 'foghorn', 'power'));
    expect(choice.ok && choice.lead.facts.kind.id).toBe('lead-16-150');
    expect(choice.ok && choice.lead.seats[0]).toEqual(onBoard(0, '6', 'board-1'));
  });

  it('is one that is owned and left, even where a shorter one could be bought', () => {
    const from = (short: number, long: number) => {
      const take = derive(
        example({ ribbonKinds: [lead(240, short), lead(260, long)], modules: [['a', 'plain', 30]] }),
      );
      const choice = leadFor(take, headerOf(take, 'a', 'power'));
      return choice.ok ? [choice.lead.facts.kind.id, choice.lead.toBuy] : choice;
    };
    expect(from(1, 1)).toEqual(['lead 240', false]);
    expect(from(0, 1)).toEqual(['lead 260', false]);
    // The example's own lead of 300 mm is of a kind that nobody counts.
    expect(from(0, 0)).toEqual(['lead', false]);
  });

  it('counts those that lie already as used up', () => {
    const layout = example({
      ribbonKinds: [lead(240, 1), lead(260, 1)],
      modules: [
        ['a', 'plain', 30],
        ['b', 'plain', 40],
      ],
      ribbons: [ribbon('r', 'lead 240', [onBoard(0, 'p1'), onModule(1, 'b', 'power')])],
    });
    const take = derive(layout);
    const choice = leadFor(take, headerOf(take, 'a', 'power'));
    expect(choice.ok && choice.lead.facts.kind.id).toBe('lead 260');
  });

  it('tells the length that is needed where none reaches', () => {
    const take = derive(example({ modules: [['a', 'plain', 0]] }));
    // 300 − 20 mm along, 90 − 60 mm up, 40 mm to spare.
    expect(leadFor(take, headerOf(take, 'a', 'power'))).toEqual({
      ok: false,
      reason: { why: 'none reaches', wanted: { neededMm: 350, waysFrom: 10, waysTo: 10 } },
    });
  });
});

describe('ribbons that fit headers', () => {
  const over = (take: DerivedTake, header: string, ...modules: string[]) =>
    fittingRibbons(
      take,
      modules.map((module) => headerOf(take, module, header)),
    );

  it('are those on their pitch, and those that arch no tighter than the limits allow; at hand first, the shortest first', () => {
    const take = demo('s1', 's2', 's3');
    const fitting = over(take, 'shore', 'jetty-c', 'cobble-5', 'cobble-6');
    expect(fitting.slice(0, 2)).toEqual([
      { kind: 'shore-3', connectors: [2, 1, 0], ownedLeft: 1 },
      { kind: 'shore-bend-3', connectors: [2, 1, 0], ownedLeft: 1 },
    ]);
    expect(fitting.map(({ kind }) => kind)).not.toContain('shore-2');
  });

  it('names connectors in the order of the headers, and passes over those between', () => {
    const take = demo('s1', 's2', 's3');
    const [first] = over(take, 'shore', 'boulder-1', 'jetty-a', 'cobble-1', 'cobble-2');
    expect(first).toMatchObject({ kind: 'shore-5', connectors: [0, 4, 3, 2] });
  });

  it('puts those to be bought last', () => {
    const take = demo();
    const fitting = over(take, 'shore', 'jetty-c', 'cobble-5', 'cobble-6');
    const left = fitting.map(({ ownedLeft }) => ownedLeft ?? 0);
    expect(fitting.find(({ kind }) => kind === 'shore-3')?.ownedLeft).toBe(0);
    expect(left).toEqual([...left].sort((a, b) => b - a));
  });

  it('reach no other row when flat, and no further than their length when loose', () => {
    const take = demo();
    expect(over(take, 'shore', 'jetty-a', 'cobble-5')).toEqual([]);
    expect(over(take, 'tide', 'harbour', 'jetty-a').map(({ kind }) => kind)).toContain('tide-3');
  });

  it('join nothing to itself, and one header to nothing', () => {
    const take = demo();
    expect(over(take, 'shore', 'jetty-a')).toEqual([]);
    expect(over(take, 'shore', 'jetty-a', 'jetty-a')).toEqual([]);
  });

  it('have their stripe at pin 1', () => {
    const take = demo();
    expect(stripeOver([headerOf(take, 'jetty-a', 'shore')])).toBe('down');
    const up = { ...headerOf(take, 'jetty-a', 'shore'), pin1: 'up' as const };
    expect(stripeOver([up])).toBe('up');
    expect(stripeOver([up, headerOf(take, 'jetty-a', 'shore')])).toBeUndefined();
  });
});
