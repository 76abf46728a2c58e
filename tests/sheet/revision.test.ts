import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Kit, Layout, Take } from '../../src/layout/layout.ts';
import { harnessRevision, revisionOf } from '../../src/sheet/revision.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { runs } from '../support/runs.ts';

/** A copy that shares nothing, changed by a test. */
function changed(change: (take: DeepWrite<Take>, kit: DeepWrite<Kit>) => void, from = demoLayout()): Layout {
  const layout = JSON.parse(JSON.stringify(from)) as DeepWrite<Layout>;
  change(layout.takes[0] as DeepWrite<Take>, layout.kit);
  return layout as Layout;
}

/** Gives all of some things what a patch says. */
function all<T extends object>(things: readonly T[], patch: object): void {
  for (const thing of things) Object.assign(thing, patch);
}

/** Half an HP to the right. */
function moveOn(take: DeepWrite<Take>, index: number): void {
  const module = take.modules[index];
  if (module) module.atHp += 0.5;
}

type DeepWrite<T> = T extends readonly (infer U)[]
  ? DeepWrite<U>[]
  : T extends object
    ? { -readonly [K in keyof T]: DeepWrite<T[K]> }
    : T;

const codeOf = ({ kit, takes }: Layout, take = 0): string => revisionOf(deriveTake(kit, takes[take] as Take));

const demo = codeOf(demoLayout());

describe('a revision code', () => {
  it('is short and made of signs that nobody takes for one another', () => {
    expect(demo).toMatch(/^[ACDEFHJKMNPRTUVWXY][34679]-[ACDEFHJKMNPRTUVWXY34679]{3}$/);
    expect(codeOf(demoLayout(), 1)).not.toBe(demo);
  });

  it.each<[string, Parameters<typeof changed>[0]]>([
    ['a kind is renamed', (_, kit) => Object.assign(kit.modules[0] ?? {}, { name: 'Other' })],
    ['a module is relabelled', (take) => Object.assign(take.modules[1] ?? {}, { label: 'Other' })],
    ['a ribbon is relabelled', (take) => Object.assign(take.ribbons[0] ?? {}, { label: 'Other' })],
    ['prices change', (_, kit) => all(kit.modules, { price: 7, owned: 9 })],
    ['colours and notes change', (_, kit) => all(kit.modules, { color: 'red', notes: 'x' })],
    [
      'a row and a board are renamed',
      (take) => {
        Object.assign(take.rows[0] ?? {}, { name: 'Other' });
        Object.assign(take.supplies[0]?.boards[0] ?? {}, { name: 'Other' });
      },
    ],
    [
      'something is pinned, locked, put on top',
      (take) => {
        Object.assign(take.modules[0] ?? {}, { pinned: true });
        Object.assign(take.ribbons[0] ?? {}, { locked: true, over: 3 });
      },
    ],
    [
      'what a kind draws is measured',
      (_, kit) => Object.assign(kit.modules[0] ?? {}, { draws: { '+12': 71 } }),
    ],
    ['modules are listed the other way round', (take) => void take.modules.reverse()],
    ['ribbons are listed the other way round', (take) => void take.ribbons.reverse()],
    [
      'kinds are listed the other way round',
      (_, kit) => {
        kit.modules.reverse();
        kit.ribbons.reverse();
        kit.buses.reverse();
      },
    ],
    [
      'seats are listed the other way round',
      (take) => {
        for (const { seats } of take.ribbons) seats.reverse();
      },
    ],
    [
      'headers of a kind are listed the other way round',
      (_, kit) => {
        for (const { headers } of kit.modules) headers.reverse();
      },
    ],
  ])('stays when %s', (_, change) => {
    expect(codeOf(changed(change))).toBe(demo);
  });

  it.each<[string, Parameters<typeof changed>[0]]>([
    ['a module moves by half an HP', (take) => moveOn(take, 0)],
    ['a ribbon is turned', (take) => Object.assign(take.ribbons[0] ?? {}, { stripe: 'up' })],
    ['a half-twist is made', (take) => Object.assign(take.ribbons[0] ?? {}, { twists: [1] })],
    ['a connector is taken off', (take) => void take.ribbons[0]?.seats.pop()],
    [
      'two pins change places',
      (_, kit) => {
        const pinout = kit.buses[0]?.pinout ?? [];
        pinout.push(pinout.shift() as string, pinout.shift() as string);
      },
    ],
    [
      'a ribbon’s connector moves',
      (_, kit) => {
        for (const kind of kit.ribbons) {
          const last = kind.connectors.at(-1);
          if (last) last.atMm += 5;
        }
      },
    ],
    [
      'pin 1 is found at the other end',
      (_, kit) =>
        all(
          kit.modules.flatMap(({ headers }) => headers),
          { pin1: 'up' },
        ),
    ],
    ['a module gets deeper', (_, kit) => all(kit.modules, { depthMm: 41 })],
    ['a row gets shallower', (take) => Object.assign(take.rows[0] ?? {}, { depthMm: 51 })],
    ['a board moves', (take) => all(take.supplies[0]?.boards ?? [], { xMm: 123 })],
    [
      'a module is taken out',
      (take) => {
        const { id } = take.modules.pop() ?? { id: '' };
        for (const ribbon of take.ribbons)
          ribbon.seats = ribbon.seats.filter(({ on }) => !('module' in on) || on.module !== id);
      },
    ],
  ])('changes when %s', (_, change) => {
    expect(codeOf(changed(change))).not.toBe(demo);
  });

  it('is the same for the same case, however its lists are sorted and whatever things are called', () => {
    fc.assert(
      fc.property(arbitraryLayout, fc.string({ maxLength: 5 }), (layout, name) => {
        const again = changed((take, kit) => {
          all(take.modules, { label: name });
          kit.modules.reverse();
          kit.ribbons.reverse();
          for (const kind of kit.modules) Object.assign(kind, { name, price: 3 });
          take.modules.reverse();
        }, layout);
        expect(codeOf(again)).toBe(codeOf(layout));
      }),
      runs(60),
    );
  });

  it('changes with every module that moves', () => {
    fc.assert(
      fc.property(arbitraryLayout, fc.nat(), (layout, pick) => {
        const { modules } = layout.takes[0] as Take;
        if (modules.length === 0) return;
        const moved = changed((take) => moveOn(take, pick % modules.length), layout);
        expect(codeOf(moved)).not.toBe(codeOf(layout));
      }),
      runs(60),
    );
  });
});

describe('the code of a harness', () => {
  const codes = (layout: Layout): Map<string, string> => {
    const { harnesses } = deriveTake(layout.kit, layout.takes[0] as Take);
    return new Map(
      harnesses.flatMap((each) => each.ribbons.map(({ id }) => [id, harnessRevision(each)] as const)),
    );
  };

  it('is one for all ribbons that are plugged into one another, and no other’s', () => {
    const { harnesses } = deriveTake(demoLayout().kit, demoLayout().takes[0] as Take);
    expect(new Set(harnesses.map(harnessRevision)).size).toBe(harnesses.length);
    const of = codes(demoLayout());
    expect(of.get('t1')).toBe(of.get('t2'));
  });

  it('changes for what is touched, and for nothing else', () => {
    const before = codes(demoLayout());
    const after = codes(changed((take) => void take.ribbons.find(({ id }) => id === 's1')?.seats.pop()));
    const touched = [...before].filter(([id, code]) => after.get(id) !== code).map(([id]) => id);
    expect(touched).toEqual(['s1']);
  });
});
