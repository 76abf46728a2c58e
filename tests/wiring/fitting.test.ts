import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkTake } from '../../src/checks/run.ts';
import type { PlacedHeader } from '../../src/geometry/place.ts';
import type { Layout, Ribbon, Take } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { fittingRibbons, stripeOver } from '../../src/wiring/fitting.ts';
import { seatOf } from '../../src/wiring/landing.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { runs } from '../support/runs.ts';

/** Whatever can be wrong with how a single ribbon lies and sits. */
const OF_ONE_RIBBON =
  `wrong-connector lines-differ double-seat loose-end wrong-axis looks-away crossed displaced off-pitch
  out-of-line short-ribbon tight-bend no-clearance crowded stripe-reversed key-against lead-short`.split(
    /\s+/,
  );

/** The take with one ribbon, and nothing else. */
function alone(kit: Layout['kit'], take: Take, ribbon: Ribbon): string[] {
  const derived = deriveTake(kit, { ...take, ribbons: [ribbon] });
  return checkTake(derived).flatMap(({ check, message }) =>
    OF_ONE_RIBBON.includes(check) ? [`${check}: ${message}`] : [],
  );
}

/** Pairs and threes of headers of one bus in one row, and pairs of any two. */
function* choices(headers: readonly PlacedHeader[]): Generator<readonly PlacedHeader[]> {
  for (const [i, a] of headers.entries()) {
    for (const b of headers.slice(i + 1)) {
      yield [a, b];
      const third = headers.find((c) => c !== a && c !== b && c.row === a.row && c.bus === a.bus);
      if (third && a.bus === b.bus) yield [b, third, a];
    }
  }
}

describe('a ribbon that fits headers', () => {
  it('has, laid over them, nothing wrong with it', () => {
    const laid = { flat: 0, bending: 0, loose: 0 };
    const property = fc.property(arbitraryLayout, ({ kit, takes }) => {
      for (const take of takes) {
        const derived = deriveTake(kit, take);
        const headers = [...derived.places.modules, ...derived.places.boards].flatMap(
          (owner) => owner.headers,
        );
        for (const chosen of choices(headers.slice(0, 12))) {
          for (const { kind, connectors } of fittingRibbons(derived, chosen)) {
            const facts = derived.kit.ribbons.get(kind) ?? expect.fail(kind);
            const stripe = facts.flat ? stripeOver(chosen) : undefined;
            const seats = chosen.map((header, i) => seatOf({ connector: connectors[i] ?? -1, header }));
            const ribbon: Ribbon = { id: 'new', kind, seats, ...(stripe && { stripe }) };
            expect(alone(kit, take, ribbon)).toEqual([]);
            laid[facts.bends ? 'bending' : facts.flat ? 'flat' : 'loose']++;
          }
        }
      }
    });
    fc.assert(property, runs(300));
    for (const [lay, times] of Object.entries(laid)) expect(times, lay).toBeGreaterThan(10);
  });
});
