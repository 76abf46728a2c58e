import { expect, test } from 'vitest';
import { demoLayout } from '../../src/layout/demo.ts';
import { indexKit } from '../../src/layout/kit-index.ts';
import type { RibbonKind } from '../../src/layout/layout.ts';
import { CUT_TOLERANCE_MM, cutOf, OVERHANG_MM, piecesOf, toMake } from '../../src/sheet/cut-list.ts';
import { deriveTake } from '../../src/wiring/derive.ts';

const demo = demoLayout();
const demoKit = indexKit(demo.kit);

function cut(id: string) {
  const facts = demoKit.ribbons.get(id) ?? expect.fail(id);
  return cutOf(facts, demoKit.limits);
}

/*
 * Worked by hand. A flat ribbon: from first to last centre, 3 mm at each end up to the body's edge (half of a body of
 * 6 mm), 5 mm to trim, up to the next 5 mm. A loose one: 14 mm at each end to fold back under the clip (common
 * practice, no source).
 */
test.each([
  // 4 × 25.4 = 101.6; + 3 + 3 + 5 = 112.6
  ['shore-5', 115, 3],
  // 156 + 11 = 167
  ['shore-bend-4', 170, 3],
  // 2 × 25.4 = 50.8; + 11 = 61.8
  ['shore-3', 65, 3],
  // 25.4 + 11 = 36.4
  ['shore-2', 40, 3],
  // 400 + 14 + 14 + 5 = 433
  ['lead-10-400', 435, 14],
  // 150 + 33 = 183
  ['lead-16-150', 185, 14],
])('a %s is cut %i mm long, its first centre %i mm from the end', (id, cutMm, endMm) => {
  expect(cut(id)).toMatchObject({ cutMm, endMm });
});

test('a length that is a step already is not rounded up once more', () => {
  // 89 + 3 + 3 + 5 = 100; and 89.1 + 11 = 100.1
  const lengths = [89, 89.1].map((atMm) => {
    const kind: RibbonKind = {
      id: 'r',
      name: 'R',
      bus: 'shore',
      lay: 'flat',
      connectors: [{ atMm: 0 }, { atMm }],
    };
    const kit = indexKit({ ...demo.kit, ribbons: [kind] });
    return cutOf(kit.ribbons.get('r') ?? expect.fail(), kit.limits).cutMm;
  });
  expect(lengths).toEqual([100, 105]);
});

test('all centres are measured from the first connector, so that errors do not add up', () => {
  const { connectors, spanMm } = cut('shore-5');
  // Four times 5 HP of 5.08 mm.
  expect(connectors.map(({ atMm }) => atMm)).toEqual([0, 25.4, 50.8, 25.4 * 3, 101.6]);
  expect(connectors.map(({ fromEndMm, atMm }) => Number((fromEndMm - atMm).toFixed(9)))).toEqual([
    3, 3, 3, 3, 3,
  ]);
  expect(spanMm).toBe(101.6);
});

test('a trimmed end stands out of its connector by at most 0.8 mm, and no piece is cut shorter than called', () => {
  // NASA workmanship on ribbon cable: the end must not protrude more than 0.8 mm beyond the connector's body.
  expect(OVERHANG_MM).toBe(0.8);
  // −0/+10 mm: common practice, no source.
  expect(CUT_TOLERANCE_MM).toBe(10);
});

test('the ends of a loose ribbon are folded, those of a flat one and all between are not', () => {
  expect(cut('lead-10-400').connectors.map(({ isFolded, ways }) => [isFolded, ways])).toEqual([
    [true, 16],
    [true, 10],
  ]);
  expect(cut('shore-bend-4').connectors.some(({ isFolded }) => isFolded)).toBe(false);
});

test('where faces and keys are, is told; sockets open to the panel and plugs to the rear unless the kind says', () => {
  expect(cut('tide-more').connectors.map(({ type, face, key }) => [type, face, key])).toEqual([
    ['socket', 'panel', 'none'],
    ['socket', 'panel', 'none'],
    ['plug', 'rear', 'none'],
  ]);
});

test('what is owned is used first; only what is beyond it is to be made', () => {
  const take = demo.takes[0] ?? expect.fail();
  const all = piecesOf(deriveTake(demo.kit, take));
  expect(all).toHaveLength(take.ribbons.length);
  expect(toMake(all)).toEqual([]);
  const ribbons = demo.kit.ribbons.map((kind) => (kind.id === 'lead-16-150' ? { ...kind, owned: 1 } : kind));
  const short = toMake(piecesOf(deriveTake({ ...demo.kit, ribbons }, take)));
  // L4, L5 and L8 are of that kind: the first is owned.
  expect(short.map(({ ribbon, stocked }) => [ribbon.name, stocked])).toEqual([
    ['L5', 'short'],
    ['L8', 'short'],
  ]);
});
