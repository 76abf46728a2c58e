import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkTake } from '../../src/checks/run.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout, Ribbon, Take } from '../../src/layout/layout.ts';
import { type Berth, berthOn, isTaken } from '../../src/wiring/berth.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import type { DerivedTake } from '../../src/wiring/derived-take.ts';
import { layLoose } from '../../src/wiring/lay-loose.ts';
import { pullRibbon } from '../../src/wiring/pull-ribbon.ts';
import { lengthMmOf, shortestLead } from '../../src/wiring/shortest-lead.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { runs } from '../support/runs.ts';

/** The demo's first take with some ribbons only, and so many of each kind of ribbon owned. */
function demo(keep: readonly string[], owned?: (kind: string) => number | undefined): DerivedTake {
  const layout = demoLayout();
  const take = layout.takes[0] as Take;
  const kit = {
    ...layout.kit,
    ribbons: layout.kit.ribbons.map((kind) => {
      const { owned: _, ...rest } = kind;
      const n = owned ? owned(kind.id) : kind.owned;
      return n === undefined ? rest : { ...rest, owned: n };
    }),
  };
  return deriveTake(kit, { ...take, ribbons: take.ribbons.filter(({ id }) => keep.includes(id)) });
}

function berth({ places }: DerivedTake, owner: string, id: string): Berth {
  const header = (places.moduleById.get(owner) ?? places.boardById.get(owner))?.headers.find(
    (one) => one.id === id,
  );
  if (!header) throw new Error('no header');
  return berthOn(header);
}

const chosen = (take: DerivedTake, from: Berth, to: Berth) => {
  const lead = shortestLead(take, from, to);
  return lead.ok ? [lead.value.laying.facts.kind.id, lead.value.inStock] : lead.error;
};

describe('the lead between two places', () => {
  it('is the shortest with the right ends, whichever place comes first', () => {
    const take = demo([]);
    const board = berth(take, 'board-1', '6');
    expect(chosen(take, berth(take, 'foghorn', 'power'), board)).toEqual(['lead-16-150', true]);
    expect(chosen(take, board, berth(take, 'foghorn', 'power'))).toEqual(['lead-16-150', true]);
    expect(chosen(take, berth(take, 'boulder-2', 'power'), board)).toEqual(['lead-10-250', true]);
  });

  it('is one that is owned and not in use before a shorter one that is not', () => {
    const owned = (kind: string) => (kind === 'lead-16-150' ? 2 : 9);
    const left = (keep: readonly string[]) => {
      const take = demo(keep, owned);
      return chosen(take, berth(take, 'foghorn', 'power'), berth(take, 'board-1', '6'));
    };
    expect(left([])).toEqual(['lead-16-150', true]);
    expect(left(['l4', 'l8'])).toEqual(['lead-16-250', true]);
    const none = demo([], () => 0);
    expect(chosen(none, berth(none, 'foghorn', 'power'), berth(none, 'board-1', '6'))).toEqual([
      'lead-16-150',
      false,
    ]);
  });

  it('says how much is needed where none reaches, and where none has the ends', () => {
    const take = demo([]);
    expect(chosen(take, berth(take, 'harbour', 'power'), berth(take, 'board-2', '8'))).toMatchObject({
      why: 'too-short',
      longestMm: 600,
    });
    expect(chosen(take, berth(take, 'jetty-a', 'shore'), berth(take, 'board-2', '8'))).toEqual({
      why: 'no-kind',
    });
  });

  it('a link hangs from a socket too', () => {
    const take = demo(['t1']);
    const t1 = take.wiring.ribbonById.get('t1');
    if (!t1) throw new Error('no ribbon');
    const socket: Berth = {
      ...berth(take, 'jetty-a', 'tide'),
      on: { type: 'connector', ribbon: t1, connector: 0 },
    };
    expect(chosen(take, berth(take, 'jetty-c', 'tide'), socket)).toEqual(['tide-link', true]);
  });
});

describe('a loose ribbon from socket to socket of one ribbon', () => {
  it('is a ring that comes back to its seat, and bridges nothing', () => {
    const { kit: usual, takes } = demoLayout();
    const plug = { type: 'plug' } as const;
    const twoPlugs = { id: 'two-plugs', name: 'Two plugs', bus: 'tide', lay: 'loose' } as const;
    const ring = {
      ...twoPlugs,
      connectors: [
        { atMm: 0, ...plug },
        { atMm: 300, ...plug },
      ],
    };
    const kit = { ...usual, ribbons: [...usual.ribbons, ring] };
    const [first] = takes as [Take];
    const [t1] = first.ribbons
      .filter(({ id }) => id === 't1')
      .map((ribbon) => ({ ...ribbon, seats: ribbon.seats.slice(0, 1) }));
    const take = deriveTake(kit, { ...first, ribbons: t1 ? [t1] : [] });
    const ribbon = take.wiring.ribbonById.get('t1');
    if (!t1 || !ribbon) throw new Error('no ribbon');
    const free = ribbon.facts.connectors
      .map((_, connector) => connector)
      .filter((connector) => t1.seats.every((seat) => seat.connector !== connector));
    const sockets = free.slice(0, 2).map(
      (connector): Berth => ({
        ...berth(take, 'jetty-a', 'tide'),
        on: { type: 'connector', ribbon, connector },
      }),
    );
    const laid = layLoose(take, 'two-plugs', sockets);
    expect(laid).toMatchObject({ ok: true, value: { gaps: [] } });
    expect(sockets).toHaveLength(2);
  });
});

describe('the ribbon pulled from a start', () => {
  it('is owned, lands most, and has no more connectors than it needs', () => {
    const pulled = (owned?: (kind: string) => number | undefined) => {
      const take = demo([], owned);
      const to = berth(take, 'cobble-2', 'shore').xMm;
      return pullRibbon(take, berth(take, 'jetty-a', 'shore'), to)?.laying.facts.kind.id;
    };
    expect(pulled()).toBe('shore-3');
    expect(pulled((kind) => (kind === 'shore-3' || kind.includes('bend') ? 0 : 1))).toBe('shore-4');
  });
});

describe('for any layout', () => {
  it('a loose ribbon that is shown to reach has no note that it is short, and the other way round', () => {
    const pick = fc.nat({ max: 9999 });
    let compared = 0;
    fc.assert(
      fc.property(arbitraryLayout, pick, pick, pick, (layout: Layout, kindPick, a, b) => {
        const take = layout.takes[0] as Take;
        const before = deriveTake(layout.kit, take);
        const kinds = layout.kit.ribbons.filter(({ lay }) => lay === 'loose');
        const free = [...before.places.modules, ...before.places.boards]
          .flatMap(({ headers }) => headers.map(berthOn))
          .concat(
            before.wiring.ribbons.flatMap((ribbon) =>
              ribbon.uses.flatMap((_, connector): Berth[] => {
                const [first] = before.places.modules.flatMap(({ headers }) => headers);
                return first ? [{ ...berthOn(first), on: { type: 'connector', ribbon, connector } }] : [];
              }),
            ),
          )
          .filter(({ on }) => !isTaken(before, on));
        const kind = kinds[kindPick % Math.max(1, kinds.length)];
        const [from, to] = [free[a % Math.max(1, free.length)], free[b % Math.max(1, free.length)]];
        if (!kind || !from || !to) return;
        const laid = layLoose(before, kind.id, [from, to]);
        if (!laid.ok) return;
        compared++;
        const { seats, gaps } = laid.value;
        const edited = applyEdit(layout, {
          type: 'add-ribbon',
          take: take.id,
          kind: kind.id,
          prefix: 'R',
          seats,
        });
        if (!edited.ok) throw new Error(edited.error.message);
        const after = edited.value.takes[0] as Take;
        const { id } = after.ribbons[after.ribbons.length - 1] as Ribbon;
        const derived = deriveTake(edited.value.kit, after);
        const mine = derived.wiring.ribbonById.get(id);
        const notes = checkTake(derived).filter(
          ({ check, subjects }) =>
            check === 'lead-short' && subjects.some((one) => one.type === 'ribbon' && one.id === id),
        );
        const pairs = derived.neighbours.filter(({ ribbons }) => mine && ribbons.includes(mine));
        const sums = (lengths: readonly number[]) => lengths.map((each) => each.toFixed(6)).sort();
        expect(sums(gaps.map(({ pair }) => pair.lengthMm))).toEqual(
          sums(pairs.map(({ lengthMm }) => lengthMm)),
        );
        expect(notes.length).toBe(gaps.filter(({ missingMm }) => missingMm !== undefined).length);
      }),
      runs(600),
    );
    expect(compared).toBeGreaterThan(20);
  });

  it('no lead that reaches is shorter than the one that is taken, but for the stock', () => {
    const take = demo([]);
    const boards = take.places.boards.flatMap(({ headers }) => headers.map(berthOn));
    for (const header of take.places.modules.flatMap(({ headers }) => headers)) {
      for (const board of boards.slice(0, 3)) {
        const lead = shortestLead(take, berthOn(header), board);
        if (!lead.ok) continue;
        const { facts } = lead.value.laying;
        const shorter = [...take.kit.ribbons.values()].filter(
          (other) =>
            !other.flat && lengthMmOf(other) < lengthMmOf(facts) && other.ways.join() === facts.ways.join(),
        );
        for (const other of shorter) {
          const laid = layLoose(take, other.kind.id, [berthOn(header), board]);
          expect(laid.ok && laid.value.gaps.every(({ flaws }) => flaws.length === 0)).toBe(false);
        }
      }
    }
  });
});
