import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  along,
  example,
  kind,
  onBoard,
  onModule,
  powerHeader,
  ribbon,
  shoreHeader,
} from '../../src/checks/example.ts';
import type { Defect } from '../../src/electrical/defect.ts';
import {
  type Observation,
  probeOf,
  type Search,
  searchFault,
  type Test,
} from '../../src/electrical/next-test.ts';
import { readingsWith, voltsAt } from '../../src/electrical/readings.ts';
import { defectsOfSuspect, type Suspect, suspectsIn } from '../../src/electrical/suspect.ts';
import { supplyWays } from '../../src/electrical/ways.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { remember } from '../../src/layout/remember.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import type { WholeTake } from '../../src/wiring/whole-take.ts';
import { bigLayout } from '../support/big-take.ts';
import { loopedLayout } from '../support/looped-layout.ts';
import { runs } from '../support/runs.ts';
import { treeLayout } from '../support/tree-layout.ts';

const derive = remember(
  ({ kit, takes: [take] }: Layout): WholeTake => deriveTake(kit, take ?? expect.fail('no take')),
);

/** What a bench with this fault would answer, by the solver of currents and not by the search's own walk. */
function ask(take: WholeTake, fault: Suspect, test: Test): boolean {
  const defects = defectsOfSuspect(fault, take);
  if (test.type === 'look') {
    if (fault.type === 'inside') return fault.module !== test.module;
    return readingsWith(take, defects).modules.every(
      ({ module, isDead }) => module !== test.module || !isDead,
    );
  }
  const pulled: Defect[] =
    test.type === 'unplug'
      ? test.seats.map(({ ribbon, connector }) => ({ type: 'unplugged', ribbon: ribbon.id, connector }))
      : [];
  const probe = probeOf(test, take) ?? expect.fail('nowhere to measure');
  const [volts] = voltsAt(take, [...defects, ...pulled], [probe]);
  const nominal = take.kit.voltages.get(test.line)?.volts ?? 0;
  return volts !== undefined && Math.abs(volts) >= Math.abs(nominal) / 2;
}

interface Found {
  readonly search: Search;
  readonly atFirst: number;
  readonly steps: number;
}

/** Follows the search with a fault in hiding, from a first symptom on. */
function follow(take: WholeTake, fault: Suspect, symptom: Observation): Found {
  const seen = [symptom];
  let search = searchFault(take, seen);
  const atFirst = search.suspects.length;
  for (;;) {
    expect(hasSuspect(search, fault)).toBe(true);
    if (!search.next) return { search, atFirst, steps: seen.length - 1 };
    const before = search.suspects.length;
    seen.push({ test: search.next, isThere: ask(take, fault, search.next) });
    search = searchFault(take, seen);
    expect(search.suspects.length).toBeLessThan(before);
  }
}

/** What is first seen of a fault: of one module that something does not reach any more, nothing but that it is dead, or one line. */
function symptomOf(
  take: WholeTake,
  fault: Suspect,
  pick: number,
  isMeasured: boolean,
): Observation | undefined {
  if (fault.type === 'inside') {
    const { module } = fault;
    const isDrawn = readingsWith(take, []).modules.some((each) => each.module === module && !each.wasDead);
    return isDrawn ? { test: { type: 'look', module }, isThere: false } : undefined;
  }
  const dead = readingsWith(take, defectsOfSuspect(fault, take)).modules.filter(
    ({ isDead, wasDead }) => isDead && !wasDead,
  );
  const one = dead[pick % dead.length];
  if (!one) return undefined;
  const { module, readings } = one;
  const missing = readings.find(({ state }) => state === 'nothing' || state === 'shorted');
  if (!isMeasured || !missing) return { test: { type: 'look', module }, isThere: false };
  return { test: { type: 'measure', at: module, line: missing.line }, isThere: false };
}

const hidden = (layouts: fc.Arbitrary<Layout>) => fc.tuple(layouts, fc.nat(), fc.nat(), fc.boolean());

/** Follows faults in hiding through takes; gives by how much the most steps went over halving each time. */
function followMany(layouts: fc.Arbitrary<Layout>, times: number, least: number): number {
  let over = Number.NEGATIVE_INFINITY;
  let tried = 0;
  const property = fc.property(hidden(layouts), ([layout, which, pick, isMeasured]) => {
    const take = derive(layout);
    const all = suspectsIn(supplyWays(take));
    const fault = all[which % all.length];
    const symptom = fault && symptomOf(take, fault, pick, isMeasured);
    if (!fault || !symptom) return;
    tried++;
    const { atFirst, steps } = follow(take, fault, symptom);
    over = Math.max(over, steps - Math.ceil(Math.log2(atFirst)));
  });
  fc.assert(property, runs(times));
  expect(tried).toBeGreaterThan(least);
  return over;
}

/** So many more steps than halving would take are allowed for: one more unplugged seat does not always halve. */
const MORE_STEPS = 4;

describe('a single fault in hiding', () => {
  it.each([
    ['in the demo', fc.constant(demoLayout()), 60, 40],
    ['among forty modules in groups', fc.constant(bigLayout(40)), 24, 15],
    ['in random trees', treeLayout, 120, 60],
    ['in parallel ribbons, loops and two supplies', loopedLayout, 120, 40],
  ])('%s is never lost, and found in about as many steps as halving takes', (_, layouts, times, least) => {
    expect(followMany(layouts, times, least)).toBeLessThanOrEqual(MORE_STEPS);
  });

  it('leaves those suspects, and only those, that would have shown all that was seen', () => {
    let kept = 0;
    let dropped = 0;
    const layouts = fc.oneof(treeLayout, loopedLayout, fc.constant(demoLayout()));
    const property = fc.property(hidden(layouts), ([layout, which, pick, isMeasured]) => {
      const take = derive(layout);
      const all = suspectsIn(supplyWays(take));
      const fault = all[which % all.length];
      const symptom = fault && symptomOf(take, fault, pick, isMeasured);
      if (!fault || !symptom) return;
      const seen = [symptom];
      for (let i = 0; i < 2; i++) {
        const { next } = searchFault(take, seen);
        if (next) seen.push({ test: next, isThere: ask(take, fault, next) });
      }
      // With several seats apart at once a loop may be open that no one of them opens: such a suspect stays.
      const isPlain = seen.every(({ test }) => test.type !== 'unplug' || test.seats.length === 1);
      const search = searchFault(take, seen);
      for (let i = 0; i < 12; i++) {
        const other = all[(which + 7 * i) % all.length] as Suspect;
        const explains = seen.every(({ test, isThere }) => ask(take, other, test) === isThere);
        const isKept = hasSuspect(search, other);
        if (explains) expect(isKept).toBe(true);
        else if (isPlain) expect(isKept).toBe(false);
        if (isKept) kept++;
        else dropped++;
      }
    });
    fc.assert(property, runs(60));
    expect(kept).toBeGreaterThan(20);
    expect(dropped).toBeGreaterThan(20);
  });

  it('is searched for in the same way each time', () => {
    const take = derive(demoLayout());
    const again = derive(JSON.parse(JSON.stringify(demoLayout())) as Layout);
    const seen = (of: WholeTake): Observation[] => [
      { test: { type: 'look', module: of.places.modules[3] ?? expect.fail('no module') }, isThere: false },
    ];
    const words = ({ suspects, next }: Search) => [suspects.map(told), next && 'line' in next && next.line];
    expect(words(searchFault(take, seen(take)))).toEqual(words(searchFault(again, seen(again))));
  });
});

const hasSuspect = ({ suspects }: Search, one: Suspect): boolean => {
  const name = told(one).join(' ');
  return suspects.some((suspect) => told(suspect).join(' ') === name);
};

/** A suspect by ids alone. */
function told(suspect: Suspect): readonly unknown[] {
  if (suspect.type === 'inside') return ['inside', suspect.module.id];
  if (suspect.type === 'short') {
    const { place, lines } = suspect;
    const at =
      place.type === 'ribbon' ? place.ribbon.id : place.type === 'module' ? place.module.id : place.board.id;
    return ['short', place.type, at, ...lines];
  }
  const { link, line } = suspect;
  switch (link.type) {
    case 'supply':
      return [link.type, link.supply.id, line];
    case 'board-lead':
      return [link.type, link.board.id, line];
    case 'seat':
      return [link.type, link.joint.ribbon.id, link.joint.connector, line];
    case 'span':
      return [link.type, link.ribbon.id, link.from, line];
  }
}

/*
 * One supply, one board on a lead; lead L from its header to Cobble a, whose other header passes the supply on by
 * ribbon S to Cobbles b and c. What can end +12 V at c and leave it at b, by hand: the conductor of S between b and
 * c, its contact at c, and either of the two for all lines at once. Measuring at connector 3 of S, unplugged, tells
 * the first from the second; measuring −12 V at c tells one line from all.
 */
describe('by hand: +12 V arrives at b and not at c', () => {
  const layout = example({
    kinds: [
      kind('first', { draws: { '+12': 40, '-12': 20 }, headers: [powerHeader(), shoreHeader()] }),
      kind('next', { draws: { '+12': 40, '-12': 20 }, headers: [shoreHeader()] }),
    ],
    modules: [
      ['a', 'first', 40],
      ['b', 'next', 35],
      ['c', 'next', 30],
    ],
    ribbons: [
      ribbon('l', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')]),
      ribbon('s', 'stiff3', along('a', 'b', 'c')),
    ],
  });
  const take = derive(layout);
  const module = (id: string) => take.places.moduleById.get(id) ?? expect.fail('no module');
  const at = (id: string, line: string, isThere: boolean): Observation => ({
    test: { type: 'measure', at: module(id), line },
    isThere,
  });
  const seen = [at('c', '+12', false), at('b', '+12', true)];

  it('leaves the ribbon between them and its seat at c', () => {
    const { suspects } = searchFault(take, seen);
    expect(suspects.map(told)).toEqual([
      ['seat', 's', 2, '+12'],
      ['seat', 's', 2, null],
      ['span', 's', 1, '+12'],
      ['span', 's', 1, null],
    ]);
  });

  it('halves them, and halves them again', () => {
    const first = searchFault(take, seen).next;
    expect(first).toMatchObject({ type: 'measure', at: { id: 'c' }, line: '-12' });
    const then = searchFault(take, [...seen, at('c', '-12', true)]);
    expect(then.suspects.map(told)).toEqual([
      ['seat', 's', 2, '+12'],
      ['span', 's', 1, '+12'],
    ]);
    expect(then.next).toMatchObject({ type: 'unplug', seats: [{ connector: 2 }], line: '+12' });
    const test = then.next ?? expect.fail('no test');
    const last = searchFault(take, [...seen, at('c', '-12', true), { test, isThere: true }]);
    expect(last.suspects.map(told)).toEqual([['seat', 's', 2, '+12']]);
    expect(last.next).toBeUndefined();
  });

  it('goes another way where a test cannot be done', () => {
    const { next } = searchFault(take, seen);
    const other = searchFault(take, seen, [next ?? expect.fail('no test')]).next;
    expect(other).toBeDefined();
    expect(other).not.toEqual(next);
  });

  it('suspects a short, wherever it may be, only where a voltage is gone from everything', () => {
    const shorts = (list: readonly Observation[]) =>
      searchFault(take, list).suspects.flatMap((suspect) =>
        suspect.type === 'short' ? [told(suspect)] : [],
      );
    expect(shorts(seen)).toEqual([]);
    const gone = [at('a', '+12', false), at('a', '-12', true)];
    expect(shorts(gone)).toEqual(
      ['module a', 'module b', 'module c', 'ribbon l', 'ribbon s', 'board board'].map((place) => [
        'short',
        ...place.split(' '),
        '+12',
        'GND',
      ]),
    );
  });

  it('tells of what contradicts itself, and of what the drawing does not bring', () => {
    expect(searchFault(take, [at('b', '+12', false), at('b', '+12', true)]).suspects).toEqual([]);
    const bare = derive({ ...layout, takes: layout.takes.map((each) => ({ ...each, ribbons: [] })) });
    const a = bare.places.moduleById.get('a') ?? expect.fail('no module');
    const lost: Observation = { test: { type: 'measure', at: a, line: '+12' }, isThere: false };
    expect(searchFault(bare, [lost]).undrawn).toEqual([lost]);
  });
});
