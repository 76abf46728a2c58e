import fc from 'fast-check';
import {
  BOARD,
  example,
  kind,
  onBoard,
  onModule,
  powerHeader,
  ribbonKind,
} from '../../src/checks/example.ts';
import type { Layout, Ribbon, Seat } from '../../src/layout/layout.ts';

/** Headers of every module: two of its own supply, two that pass it by, joined inside. */
const HEADERS = ['own', 'more', 'past', 'out'] as const;
const MODULES = 6;
const BOARDS = 3;

const ends: readonly ((connector: number) => Seat)[] = [
  ...Array.from({ length: MODULES }, (_, i) => i).flatMap((i) =>
    HEADERS.map((header) => (connector: number) => onModule(connector, `m${i}`, header)),
  ),
  ...Array.from({ length: BOARDS }, (_, i) => i).flatMap((i) =>
    ['p1', 'p2', 'p3'].map((header) => (connector: number) => onBoard(connector, header, `b${i}`)),
  ),
];

const draw = fc.constantFrom(undefined, null, 0, 35, 120.5, 400);
const lead = fc.constantFrom(
  undefined,
  { lengthMm: 0, awg: 20 },
  { lengthMm: 300, awg: 18 },
  { lengthMm: 900, awg: 24 },
);
const ratings = fc.constantFrom({ '+12': 500, '-12': 500 }, { '+12': 500 }, { '-12': 80, '+5': 100 });

/** Takes wired for loops: loose ribbons of two to four connectors between any headers, boards with leads, two supplies. */
export const loopedLayout: fc.Arbitrary<Layout> = fc
  .record({
    order: fc.shuffledSubarray([...ends], { minLength: 8, maxLength: ends.length }),
    sizes: fc.array(fc.integer({ min: 2, max: 4 }), { minLength: 4, maxLength: 14 }),
    draws: fc.array(fc.record({ '+12': draw, '-12': draw, '+5': draw }), {
      minLength: MODULES,
      maxLength: MODULES,
    }),
    leads: fc.array(lead, { minLength: BOARDS, maxLength: BOARDS }),
    ratings: fc.tuple(ratings, ratings),
    awg: fc.constantFrom(undefined, 26, 30),
    contactMilliohm: fc.constantFrom(0.1, 20, 30),
  })
  .map(({ order, sizes, draws, leads, ratings, awg, contactMilliohm }) => {
    const left = [...order];
    const ribbons = sizes.flatMap((size, i): Ribbon[] => {
      const seats = left.splice(0, size).map((end, connector) => end(connector));
      return seats.length < 2 ? [] : [{ id: `r${i}`, kind: `r${size}`, seats }];
    });
    const boards = leads.map((each, i) => ({
      ...BOARD,
      id: `b${i}`,
      headers: ['p1', 'p2', 'p3'].map((id, k) => ({ id, bus: 'power', pin1: 'down' as const, dxMm: 12 * k })),
      ...(each && { lead: each }),
    }));
    return example({
      limits: { contactMilliohm },
      kinds: draws.map((each, i) =>
        kind(`k${i}`, {
          draws: Object.fromEntries(Object.entries(each).filter(([, ma]) => ma !== undefined)) as Record<
            string,
            number | null
          >,
          headers: HEADERS.map((id) =>
            powerHeader({ id, ...((id === 'past' || id === 'out') && { isolated: true, passes: true }) }),
          ),
        }),
      ),
      ribbonKinds: [2, 3, 4].map((n) =>
        ribbonKind(
          `r${n}`,
          Array.from({ length: n }, (_, i) => 170 * i),
          { bus: 'power', lay: 'loose', ...(awg !== undefined && { awg }) },
        ),
      ),
      supplies: [
        { id: 's0', name: 'First', ratings: ratings[0], boards: boards.slice(0, 2) },
        { id: 's1', name: 'Second', ratings: ratings[1], boards: boards.slice(2) },
      ],
      modules: draws.map((_, i) => [`m${i}`, `k${i}`, 10 * i] as const),
      ribbons,
    });
  });
