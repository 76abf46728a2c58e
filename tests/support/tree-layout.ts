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

const HEADERS = ['in', 'out', 'more'] as const;
const BOARDS = 2;

const draw = fc.constantFrom({ '+12': 40, '-12': 20 }, { '+12': 60 }, { '-12': 15 }, {});
const lead = fc.constantFrom(undefined, { lengthMm: 300, awg: 18 });

/** Takes in which each module is fed in one way alone: from a board or from a module before it, by a ribbon for one to three. */
export const treeLayout: fc.Arbitrary<Layout> = fc
  .record({
    groups: fc.array(fc.record({ size: fc.integer({ min: 1, max: 3 }), from: fc.nat(), at: fc.nat() }), {
      minLength: 2,
      maxLength: 9,
    }),
    draws: fc.array(draw, { minLength: 4, maxLength: 4 }),
    leads: fc.array(lead, { minLength: BOARDS, maxLength: BOARDS }),
  })
  .map(({ groups, draws, leads }) => {
    const free: ((connector: number) => Seat)[] = leads.flatMap((_, board) =>
      ['p1', 'p2', 'p3', 'p4'].map(
        (header) => (connector: number) => onBoard(connector, header, `b${board}`),
      ),
    );
    const modules: [string, string, number][] = [];
    const ribbons = groups.map(({ size, from, at }, i): Ribbon => {
      const [start] = free.splice(from % free.length, 1);
      const group = Array.from({ length: size }, (_, k) => `m${modules.length + k}`);
      const seats: ((connector: number) => Seat)[] = group.map(
        (id) => (connector) => onModule(connector, id, 'in'),
      );
      if (start) seats.splice(at % (size + 1), 0, start);
      for (const id of group) {
        modules.push([id, `k${modules.length % draws.length}`, 8 * modules.length]);
        for (const header of ['out', 'more']) free.push((connector) => onModule(connector, id, header));
      }
      return { id: `r${i}`, kind: `r${size + 1}`, seats: seats.map((seat, connector) => seat(connector)) };
    });
    return example({
      kinds: draws.map((each, i) =>
        kind(`k${i}`, {
          draws: each as Record<string, number>,
          headers: HEADERS.map((id) => powerHeader({ id })),
        }),
      ),
      ribbonKinds: [2, 3, 4].map((n) =>
        ribbonKind(
          `r${n}`,
          Array.from({ length: n }, (_, i) => 170 * i),
          { bus: 'power', lay: 'loose' },
        ),
      ),
      supplies: [
        {
          id: 's',
          name: 'Supply',
          ratings: { '+12': 5000, '-12': 5000 },
          boards: leads.map((each, i) => ({
            ...BOARD,
            id: `b${i}`,
            headers: ['p1', 'p2', 'p3', 'p4'].map((id, k) => ({
              id,
              bus: 'power',
              pin1: 'down' as const,
              dxMm: 12 * k,
            })),
            ...(each && { lead: each }),
          })),
        },
      ],
      modules,
      ribbons,
    });
  });
