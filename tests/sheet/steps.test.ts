import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { headerBodyMm } from '../../src/geometry/connector.ts';
import type { PlacedHeader, PlacedModule } from '../../src/geometry/place.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Kit, ModuleKind, Ribbon, Take } from '../../src/layout/layout.ts';
import { liesOver, orderOfWork, standsOver, stretchesOf, type WorkStep } from '../../src/sheet/steps.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import type { WholeTake } from '../../src/wiring/whole-take.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { runs } from '../support/runs.ts';

const demo = demoLayout();

/** A step in few words. */
function words(step: WorkStep): string {
  switch (step.type) {
    case 'make':
    case 'test':
    case 'seat-flat':
      return `${step.type} ${step.ribbon.id}`;
    case 'mount-board':
      return `board ${step.board.id}`;
    case 'seat-loose':
      return `seat ${step.joint.ribbon.id} on ${step.joint.on.header.owner.id}`;
    case 'plug-in':
      return `plug ${step.joint.ribbon.id}`;
    case 'screw-in':
      return `screw ${step.module.id}`;
  }
}

/** What must hold at each step, walked through as it would be at the bench; what is found wrong. */
function troubles(take: WholeTake, steps: readonly WorkStep[]): string[] {
  const found: string[] = [];
  const done = new Set<string>();
  const screwed: PlacedModule[] = [];
  const flat: string[] = [];
  const overOf = new Map(
    take.wiring.ribbons.map((ribbon) => [ribbon.id, stretchesOf(ribbon, take.seatsAlong.get(ribbon) ?? [])]),
  );
  const needs = (what: string, step: WorkStep): void => {
    if (!done.has(what)) found.push(`${words(step)} before ${what}`);
  };
  const reach = (header: PlacedHeader, step: WorkStep): void => {
    const { owner } = header;
    if (owner.type === 'board') {
      needs(`board ${owner.id}`, step);
      for (const module of screwed)
        if (standsOver(module, owner)) found.push(`${words(step)} under ${module.id}`);
      return;
    }
    if (screwed.includes(owner)) found.push(`${words(step)} behind ${owner.id}, screwed in`);
    for (const id of flat)
      if (liesOver(overOf.get(id) ?? [], header)) found.push(`${words(step)} under ${id}`);
  };
  for (const step of steps) {
    if (step.type === 'seat-flat') {
      needs(`test ${step.ribbon.id}`, step);
      for (const { on } of step.seats) reach(on.header, step);
      flat.push(step.ribbon.id);
    } else if (step.type === 'seat-loose') {
      needs(`test ${step.joint.ribbon.id}`, step);
      reach(step.joint.on.header, step);
    } else if (step.type === 'plug-in') {
      const { ribbon, on } = step.joint;
      for (const one of on.type === 'connector' ? [ribbon, on.ribbon] : []) {
        needs(`test ${one.id}`, step);
        for (const use of one.uses.flat())
          if (
            use.conducts &&
            use.on.type === 'header' &&
            screwed.some(({ id }) => use.on.type === 'header' && id === use.on.header.owner.id)
          )
            found.push(`${words(step)} behind a panel`);
      }
    } else if (step.type === 'screw-in') {
      for (const board of take.places.boards)
        if (standsOver(step.module, board)) needs(`board ${board.id}`, step);
      screwed.push(step.module);
    } else if (step.type === 'test' && steps.some((other) => words(other) === `make ${step.ribbon.id}`))
      needs(`make ${step.ribbon.id}`, step);
    done.add(words(step));
  }
  return found;
}

/** Every step that there is to be, in few words, in any order. */
function expectedSteps(take: WholeTake): string[] {
  const conducting = take.wiring.joints.filter(({ conducts }) => conducts);
  const flats = new Set(
    conducting
      .filter(({ ribbon, on }) => ribbon.facts.flat && on.type === 'header')
      .map(({ ribbon }) => ribbon.id),
  );
  return [
    ...take.wiring.ribbons.map(({ id }) => `test ${id}`),
    ...take.places.boards.map(({ id }) => `board ${id}`),
    ...take.places.modules.map(({ id }) => `screw ${id}`),
    ...[...flats].map((id) => `seat-flat ${id}`),
    ...conducting.flatMap(({ ribbon, on }) => {
      if (on.type === 'connector') return [`plug ${ribbon.id}`];
      return ribbon.facts.flat ? [] : [`seat ${ribbon.id} on ${on.header.owner.id}`];
    }),
  ].sort();
}

const withoutMaking = (steps: readonly WorkStep[]): string[] =>
  steps
    .filter(({ type }) => type !== 'make')
    .map(words)
    .sort();

describe('the order of work', () => {
  it('of the demo goes from the boards to the links and on to leads and screws, and nothing is out of reach', () => {
    for (const take of demo.takes) {
      const whole = deriveTake(demo.kit, take);
      const { steps, knots } = orderOfWork(whole);
      expect(knots).toEqual([]);
      expect(troubles(whole, steps)).toEqual([]);
      expect(withoutMaking(steps)).toEqual(expectedSteps(whole));
    }
    const order = orderOfWork(deriveTake(demo.kit, demo.takes[0] as Take)).steps.map(words);
    const place = (what: string): number => {
      expect(order).toContain(what);
      return order.indexOf(what);
    };
    expect(place('board board-1')).toBeLessThan(place('seat l4 on board-1'));
    // Gull 1 and Foghorn stand over board 1.
    expect(place('seat l4 on board-1')).toBeLessThan(place('screw foghorn'));
    expect(place('seat-flat s1')).toBeLessThan(place('seat l2 on boulder-1'));
    expect(place('plug t2')).toBeLessThan(place('screw jetty-a'));
    expect(order.at(-1)).toMatch(/^screw/);
  });

  it('has a step for making what is not owned, before it is tested', () => {
    const ribbons = demo.kit.ribbons.map((kind) => (kind.id === 'shore-5' ? { ...kind, owned: 0 } : kind));
    const { steps } = orderOfWork(deriveTake({ ...demo.kit, ribbons }, demo.takes[0] as Take));
    expect(steps.map(words).filter((step) => step.endsWith(' s1'))).toEqual([
      'make s1',
      'test s1',
      'seat-flat s1',
    ]);
  });

  it('leaves nothing out of reach in any take, but for what it tells as a knot; twice the same', () => {
    const seen = { steps: 0, knots: 0 };
    const property = fc.property(arbitraryLayout, ({ kit, takes }) => {
      for (const take of takes) {
        const whole = deriveTake(kit, take);
        const { steps, knots } = orderOfWork(whole);
        expect(withoutMaking(steps)).toEqual(expectedSteps(whole));
        seen.steps += steps.length;
        seen.knots += knots.length;
        if (knots.length === 0) expect(troubles(whole, steps)).toEqual([]);
        for (const knot of knots) expect(knot.length).toBeGreaterThan(1);
        const again = orderOfWork(deriveTake(structuredClone(kit), structuredClone(take)));
        expect(again.steps.map(words)).toEqual(steps.map(words));
      }
    });
    fc.assert(property, runs(150));
    expect(seen.steps).toBeGreaterThan(500);
  });
});

/** Modules of 10 HP with two headers, one over the other, at depths by kind. */
function kitOf(depths: readonly (readonly [lowZ: number, highZ: number])[]): Kit {
  return {
    voltages: [],
    buses: [{ id: 'any', name: 'Any', pinout: Array.from({ length: 10 }, (_, i) => `s${i}`) }],
    modules: depths.map(
      ([low, high], i): ModuleKind => ({
        id: `m${i}`,
        name: `M${i}`,
        widthHp: 10,
        draws: {},
        headers: [
          { id: 'low', bus: 'any', role: 'member', xMm: 25, yMm: 40, zMm: low, pin1: 'down' },
          // Ribbons are 12.7 mm wide: 8 mm apart they lie over one another in part.
          { id: 'high', bus: 'any', role: 'member', xMm: 25, yMm: 48, zMm: high, pin1: 'down' },
        ],
      }),
    ),
    ribbons: [
      {
        id: 'flat',
        name: 'Flat',
        bus: 'any',
        lay: 'flat',
        connectors: [{ atMm: 0 }, { atMm: 50.8 }],
        owned: 9,
      },
      {
        id: 'lead',
        name: 'Lead',
        bus: 'any',
        lay: 'loose',
        connectors: [{ atMm: 0 }, { atMm: 300 }],
        owned: 9,
      },
    ],
  };
}

const over = (id: string, kind: string, header: string): Ribbon => ({
  id,
  kind,
  seats: [
    { connector: 0, on: { module: 'm1', header } },
    { connector: 1, on: { module: 'm0', header } },
  ],
});

function takeOf(kit: Kit, ribbons: readonly Ribbon[]): WholeTake {
  const modules = kit.modules.map(({ id }, i) => ({ id, kind: id, row: 'r', atHp: 10 * i }));
  const rows = [{ id: 'r', widthHp: 60, heightU: 3, depthMm: 60 }];
  return deriveTake(kit, { id: 't', name: 'T', rows, supplies: [], modules, ribbons });
}

describe('ribbons over one another', () => {
  it('are seated from the panel up, whichever is drawn first', () => {
    const kit = kitOf([
      [30, 20],
      [30, 20],
    ]);
    const { steps } = orderOfWork(takeOf(kit, [over('low', 'flat', 'low'), over('high', 'flat', 'high')]));
    const order = steps.map(words).filter((step) => step.startsWith('seat-flat'));
    expect(order).toEqual(['seat-flat high', 'seat-flat low']);
  });

  it('come after a lead under them, and before one on a header that they leave free', () => {
    const [deep, free] = [20, 40].map((z) => {
      const kit = kitOf([
        [30, z],
        [30, z],
      ]);
      const { steps, knots } = orderOfWork(
        takeOf(kit, [over('band', 'flat', 'low'), over('lead', 'lead', 'high')]),
      );
      expect(knots).toEqual([]);
      return steps.map(words).filter((step) => step.startsWith('seat'));
    });
    expect(deep).toEqual(['seat lead on m0', 'seat lead on m1', 'seat-flat band']);
    expect(free).toEqual(['seat-flat band', 'seat lead on m0', 'seat lead on m1']);
  });

  it('are told as a knot where each lies over the other', () => {
    const kit = kitOf([
      [20, 40],
      [40, 20],
      [20, 40],
    ]);
    const long = kit.ribbons.map((kind) => ({
      ...kind,
      connectors: [{ atMm: 0 }, { atMm: 50.8 }, { atMm: 101.6 }],
    }));
    const across = (id: string): Ribbon => ({
      id,
      kind: 'flat',
      seats: [2, 1, 0].map((m, connector) => ({ connector, on: { module: `m${m}`, header: id } })),
    });
    const take = takeOf({ ...kit, ribbons: long }, [across('low'), across('high')]);
    const { steps, knots } = orderOfWork(take);
    // The low one lies nearer to the panel at the outer modules, the high one at the middle one.
    expect(knots.map((knot) => knot.map(words).sort())).toEqual([['seat-flat high', 'seat-flat low']]);
    expect(steps).toHaveLength(2 + 2 + 3);
  });
});

it('a header has the outline by which the order reckons', () => {
  // Ten bare pins, five pairs on a grid of 2.54 mm: 12.7 × 5.08 mm.
  expect(headerBodyMm(10, false)).toEqual({ longMm: 12.7, wideMm: 5.08 });
});
