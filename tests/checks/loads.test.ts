import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/checks/catalogue.ts';
import type { Note } from '../../src/checks/check.ts';
import { checkLayout } from '../../src/checks/check-layout.ts';
import {
  along,
  BOARD,
  example,
  kind,
  onBoard,
  onModule,
  POWER16,
  powerHeader,
  ribbon,
  ribbonKind,
  SUPPLY,
  shoreHeader,
} from '../../src/checks/example.ts';
import { howManyMore, MOST } from '../../src/checks/how-many-more.ts';
import { mendsOf } from '../../src/checks/remedies/mends-of.ts';
import { checkTake } from '../../src/checks/run.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import { feedChoices, worstLossMv } from '../../src/electrical/best-feed.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout, ModuleKind } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';

const only = (layout: Layout, check: string): Note[] =>
  checkLayout(layout).flatMap(({ notes }) => notes.filter((note) => note.check === check));

const first = (layout: Layout, check: string): Note => only(layout, check)[0] ?? expect.fail(`no ${check}`);

const derive = ({ kit, takes: [take] }: Layout) => deriveTake(kit, take ?? expect.fail('no take'));

const bad = (id: string): Layout => (catalogue[id] ?? expect.fail(id)).examples.bad();

const lead = (id: string, header: string, module: string, on = 'power') =>
  ribbon(id, 'lead', [onBoard(0, header), onModule(1, module, on)]);

describe('loads', () => {
  it('are judged per supply and voltage, each with a key of its own', () => {
    const layout = example({
      kinds: [kind('both', { draws: { '+12': 100, '-12': 100 }, headers: [powerHeader()] })],
      supplies: [{ ...SUPPLY, ratings: { '+12': 90, '-12': 95 } }],
      modules: [['a', 'both', 40]],
      ribbons: [lead('l', 'p1', 'a')],
    });
    const notes = only(layout, 'overload');
    expect(notes.map(({ key }) => key)).toEqual([
      'overload/supply:supply/%2b12',
      'overload/supply:supply/-12',
    ]);
    expect(notes.map(({ measure }) => measure)).toEqual([
      { ma: 100, allowed: 90 },
      { ma: 100, allowed: 95 },
    ]);
    expect(only(layout, 'low-headroom')).toEqual([]);
  });

  it('at a limit are no more than allowed: beyond 1e-6 they are', () => {
    const drawing = (ma: number) =>
      example({
        kinds: [kind('m', { draws: { '+12': ma }, headers: [powerHeader()] })],
        supplies: [{ ...SUPPLY, ratings: { '+12': 100 } }],
        modules: [['a', 'm', 40]],
        ribbons: [lead('l', 'p1', 'a')],
      });
    expect(only(drawing(100), 'overload')).toEqual([]);
    expect(only(drawing(100.0000009), 'overload')).toEqual([]);
    expect(only(drawing(100.000002), 'overload')).toHaveLength(1);
    expect(only(drawing(80), 'low-headroom')).toEqual([]);
    expect(only(drawing(80.000002), 'low-headroom')).toHaveLength(1);
    expect(first(drawing(100.000002), 'overload').message).toContain('100.000002 of 100 mA');
  });

  it('that are not fed do not weigh on the supply', () => {
    const layout = example({
      supplies: [{ ...SUPPLY, ratings: { '+12': 60 } }],
      modules: [
        ['a', 'plain', 10],
        ['b', 'plain', 40],
      ],
      ribbons: [lead('l', 'p1', 'a')],
    });
    expect(only(layout, 'overload')).toEqual([]);
  });

  it('name the worst place of a ribbon once', () => {
    const note = first(bad('contact-overload'), 'contact-overload');
    expect(only(bad('contact-overload'), 'contact-overload')).toHaveLength(1);
    expect(note.subjects).toEqual([{ type: 'ribbon', id: 'r' }]);
    expect(note.measure?.ma).toBeCloseTo(1000.05, 6);
  });

  it('tell what a ground shift does to a pitch line: 1 mV is 1.2 cents', () => {
    const { measure, message, subjects } = first(bad('ground-shift'), 'ground-shift');
    expect((measure?.cents ?? 0) / (measure?.shiftMv ?? 1)).toBeCloseTo(1.2, 12);
    expect(message).toMatch(/off by 1\.4 cents/);
    expect(subjects.map(({ id }) => id)).toEqual(['a', 'b']);
  });

  it('lose on a negative voltage, too, and no module is asked for what it does not draw', () => {
    const layout = example({
      kinds: [kind('minus', { draws: { '-12': 300 }, headers: [powerHeader()] })],
      modules: [['a', 'minus', 40]],
      ribbons: [lead('l', 'p1', 'a')],
    });
    const tight = {
      ...layout,
      kit: { ...layout.kit, voltages: layout.kit.voltages.map((v) => ({ ...v, dropMv: 5 })) },
    };
    expect(only(tight, 'low-voltage').map(({ key }) => key)).toEqual(['low-voltage/module:a/-12']);
    expect(first(tight, 'low-voltage').headline).toMatch(/^minus gets −11\.98 V of −12 V$/);
  });
});

describe('words', () => {
  it('say which lead of two carries how much', () => {
    // Both leads are alike, so they share by the link between them; together they bring 80 mA.
    const note = first(bad('double-feed'), 'double-feed');
    const [, one, two] = /l1 ([\d.]+) mA and l2 ([\d.]+) mA/.exec(note.message) ?? expect.fail(note.message);
    expect(Number(one) + Number(two)).toBeCloseTo(80, 0);
  });

  it('say where a voltage ends', () => {
    expect(first(bad('missing-voltage'), 'missing-voltage').message).toContain(
      'Supply does not give −12 V. It draws 10 mA on −12 V.',
    );
    const wide = powerHeader({ bus: 'power16' });
    const short = example({
      kinds: [kind('deep', { draws: { '+12': 10, '+5': 30 }, headers: [wide] })],
      ribbonKinds: [
        {
          ...ribbonKind('narrow', [0, 300], { bus: 'power16', lay: 'loose' }),
          connectors: [{ atMm: 0 }, { atMm: 300, ways: 10 }],
        },
      ],
      supplies: [
        {
          ...SUPPLY,
          ratings: { '+12': 100, '+5': 100 },
          boards: [{ ...BOARD, headers: [{ id: 'p1', bus: POWER16.id, pin1: 'down' }] }],
        },
      ],
      modules: [['a', 'deep', 40]],
      ribbons: [ribbon('n', 'narrow', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
    });
    expect(first(short, 'missing-voltage').message).toContain(
      'n does not bring +5 V from end to end. It draws 30 mA on +5 V.',
    );
  });
});

/** Three voices in a line, fed at the end; each draws as much. */
const row = (groundShiftMv: number) =>
  example({
    kinds: [kind('own', { draws: { '+12': 100 }, headers: [shoreHeader(), powerHeader({ xMm: 12.7 })] })],
    limits: { groundShiftMv },
    modules: [
      ['a', 'own', 50],
      ['b', 'own', 45],
      ['c', 'own', 40],
    ],
    ribbons: [ribbon('link', 'stiff3', along('a', 'b', 'c')), lead('l', 'p1', 'a')],
  });

describe('feeding an island elsewhere', () => {
  it('is best in the middle of a line', () => {
    const take = derive(row(1.8));
    const island = take.supplyNet.islands[0] ?? expect.fail('no island');
    const choices = feedChoices(take, island) ?? expect.fail('no choice');
    expect(choices.others.map(({ header }) => header.owner.id)).toEqual(['b', 'c']);
    expect(choices.worstMv).toBeCloseTo(worstLossMv(take, new Set(['a', 'b', 'c'])), 12);
    const [best, other] = choices.others;
    expect(best?.worstMv).toBeLessThan(choices.worstMv);
    // The line reads the same from both ends.
    expect(other?.worstMv).toBeCloseTo(choices.worstMv, 9);
  });

  it('is offered with what is gained, and mends', () => {
    const note = first(row(1.8), 'ground-shift');
    const [mend] = mendsOf(derive(row(1.8)), note);
    expect(mend?.label).toBe('Seat l on own (b), not on own (a)');
    expect(mend?.why).toMatch(
      /^Estimated, the module that loses most then loses [\d.]+ mV and not [\d.]+ mV\.$/,
    );
    const after = applyEdit(row(1.8), mend?.edit ?? expect.fail('no mend'));
    expect(after.ok && only(after.value, 'ground-shift')).toEqual([]);
  });

  it('is not offered where another pair of the group would still be too far apart', () => {
    expect(mendsOf(derive(row(1.5)), first(row(1.5), 'ground-shift'))).toEqual([]);
  });

  it('asks for one lead, and finds no other header where there is none', () => {
    const take = derive(bad('double-feed'));
    expect(take.supplyNet.islands.map((island) => feedChoices(take, island))).toEqual([undefined]);
    const lone = derive(bad('low-voltage'));
    expect(lone.supplyNet.islands.map((island) => feedChoices(lone, island)?.others)).toEqual([[]]);
  });
});

describe('an overloaded board', () => {
  it('gives a lead to another board of its supply', () => {
    const layout = example({
      supplies: [
        {
          ...SUPPLY,
          boards: [
            { ...BOARD, limits: { '+12': 100 } },
            { ...BOARD, id: 'board2', name: 'Board 2', xMm: 340 },
          ],
        },
      ],
      modules: [
        ['a', 'plain', 50],
        ['b', 'plain', 62],
      ],
      ribbons: [lead('l', 'p1', 'a'), lead('m', 'p2', 'b')],
    });
    const mends = mendsOf(derive(layout), first(layout, 'board-overload'));
    expect(mends.map(({ label }) => label)).toEqual([
      'Seat l on header p1 of Board 2',
      'Seat m on header p1 of Board 2',
    ]);
  });
});

describe('how many more', () => {
  const kinds = new Map(demoLayout().kit.modules.map((each): [string, ModuleKind] => [each.id, each]));
  const cobble = kinds.get('cobble') ?? expect.fail('no Cobble');

  it('fit until the supply is full: the Cobbles of the demo are told by −12 V', () => {
    const take = derive(demoLayout());
    // 800 mA less 590 mA is room for 8 times 25 mA; of +12 V there would be room for 19 times 35 mA.
    const { most, breaks } = howManyMore(take, 'cobble-6', cobble);
    expect(most).toBe(8);
    expect(breaks.map(({ check, subjects }) => [check, subjects[0]?.id])).toEqual([['overload', 'supply']]);
    // With a fifth kept free there is room for 640 mA: twice 25 mA more.
    expect(howManyMore(take, 'cobble-6', cobble, 'reminder')).toMatchObject({ most: 2 });
  });

  it('are without end for a kind that draws nothing or where nothing is fed', () => {
    const take = derive(demoLayout());
    const still = { ...cobble, draws: { '+12': null } };
    expect(howManyMore(take, 'cobble-6', still)).toEqual({ breaks: [] });
    expect(howManyMore(take, 'nobody', cobble)).toEqual({ breaks: [] });
    expect(MOST).toBeGreaterThan(100);
  });

  it('leave the take as it was', () => {
    const take = derive(demoLayout());
    const before = checkTake(take);
    howManyMore(take, 'cobble-6', cobble);
    expect(checkTake(take)).toEqual(before);
  });
});

describe('the demo', () => {
  it('loses little: less than 25 mV anywhere, and no load is near its limit', () => {
    const layout = demoLayout();
    const [take] = layout.takes;
    const whole = deriveTake(layout.kit, take ?? expect.fail('no take'));
    const worst = worstLossMv(whole, new Set(whole.take.modules.map(({ id }) => id)));
    expect(worst).toBeGreaterThan(10);
    expect(worst).toBeLessThan(25);
    for (const check of ['overload', 'low-headroom', 'contact-overload', 'low-voltage', 'ground-shift'])
      expect(only({ ...layout, takes: [take ?? expect.fail('no take')] }, check)).toEqual([]);
  });
});
