import { headerBodyMm, ribbonWidthMm } from '../geometry/connector.ts';
import { EPSILON } from '../geometry/exceeds.ts';
import type { PlacedBoard, PlacedHeader, PlacedModule } from '../geometry/place.ts';
import { type HeaderJoint, isHeaderJoint } from '../wiring/harness.ts';
import { atMmOf, type Joint, type LaidRibbon } from '../wiring/laid-ribbon.ts';
import { lengthMmOf } from '../wiring/shortest-lead.ts';
import { UnionFind } from '../wiring/union-find.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { stockedOf } from './stocked.ts';

/**
 * The order of work. The rack is built with its modules face down on the bench, boards in the case, and each module
 * carried into the case and screwed in from the front, after which nothing behind it can be reached.
 *
 * Steps there are for: making each ribbon that is not owned, testing each ribbon, mounting each board, seating each
 * flat ribbon on all of its headers at once (it is pressed on across them), seating each end of a loose one, putting
 * each plug into its socket, and screwing in each module. Seats that conduct nothing are no steps.
 *
 * What must come before what:
 * 1. making before testing, testing before seating and plugging;
 * 2. a board before what sits on it, and before the modules that stand over it;
 * 3. what sits on a board before the modules that stand over that board are screwed in;
 * 4. all that sits on a module, and every plug and socket of a ribbon that does, before the module is screwed in;
 * 5. flat ribbons before the plugs and sockets that join them;
 * 6. where two flat ribbons cross, the lower one (nearer to the panels) first; a loose end on a header that a flat
 *    ribbon lies over before that ribbon;
 * 7. on one module, flat ribbons before loose ends, unless another rule wants it otherwise.
 *
 * Only rule 6 can contradict itself; the steps that then wait for one another are told as a knot. Of steps that may
 * come next, boards come first, then what sits on them, then flat ribbons, the deepest first; then, group by group
 * of joined modules from the lowest row up, loose ends and screws.
 */
export type WorkStep =
  | { readonly type: 'make'; readonly ribbon: LaidRibbon }
  | { readonly type: 'test'; readonly ribbon: LaidRibbon }
  | { readonly type: 'mount-board'; readonly board: PlacedBoard }
  | { readonly type: 'seat-flat'; readonly ribbon: LaidRibbon; readonly seats: readonly HeaderJoint[] }
  | { readonly type: 'seat-loose'; readonly joint: HeaderJoint }
  | { readonly type: 'plug-in'; readonly joint: Joint }
  | { readonly type: 'screw-in'; readonly module: PlacedModule };

export interface OrderOfWork {
  readonly steps: readonly WorkStep[];
  /** Steps that wait for one another: whatever comes first of them, a later one is hard to reach. */
  readonly knots: readonly (readonly WorkStep[])[];
}

/** A stretch of a flat ribbon seen from the front, and how far behind the panel its ends lie, mm. */
interface Stretch {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
  readonly topMm: number;
  readonly leftZ: number;
  readonly rightZ: number;
}

interface Box {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
  readonly topMm: number;
}

const overlap = (a: Box, b: Box): boolean =>
  a.leftMm < b.rightMm - EPSILON &&
  b.leftMm < a.rightMm - EPSILON &&
  a.bottomMm < b.topMm - EPSILON &&
  b.bottomMm < a.topMm - EPSILON;

function zAt({ leftMm, rightMm, leftZ, rightZ }: Stretch, xMm: number): number {
  if (rightMm - leftMm <= EPSILON) return Math.max(leftZ, rightZ);
  const share = Math.min(1, Math.max(0, (xMm - leftMm) / (rightMm - leftMm)));
  return leftZ + share * (rightZ - leftZ);
}

const yOf = ({ row, yMm }: PlacedHeader): number => row.bottomMm + yMm;

const zOf = ({ zMm }: PlacedHeader): number => zMm ?? Number.POSITIVE_INFINITY;

function boxOf(header: PlacedHeader): Box {
  const { longMm, wideMm } = headerBodyMm(header.bus.pins, header.keyed);
  const [w, h] = header.axis === 'vertical' ? [wideMm, longMm] : [longMm, wideMm];
  const y = yOf(header);
  return {
    leftMm: header.xMm - w / 2,
    rightMm: header.xMm + w / 2,
    bottomMm: y - h / 2,
    topMm: y + h / 2,
  };
}

/** Where a flat ribbon lies: from seat to seat, and on beyond the outer ones by what hangs over there. */
export function stretchesOf(ribbon: LaidRibbon, along: readonly HeaderJoint[]): readonly Stretch[] {
  const seats = along.filter(({ on }) => on.header.owner.type === 'module');
  const [first] = seats;
  const last = seats[seats.length - 1];
  if (!first || !last) return [];
  const down = (ribbon.ribbon.stripe ?? 'down') === 'down';
  const run = last.on.header.xMm - first.on.header.xMm;
  const step = run === 0 ? (down ? -1 : 1) : Math.sign(run);
  const place = ({ on: { header } }: HeaderJoint) => ({ x: header.xMm, y: yOf(header), z: zOf(header) });
  const points = seats.map(place);
  const start = { ...place(first), x: first.on.header.xMm - step * atMmOf(ribbon, first.connector) };
  const beyond = lengthMmOf(ribbon.facts) - atMmOf(ribbon, last.connector);
  const end = { ...place(last), x: last.on.header.xMm + step * beyond };
  const all = [start, ...points, end];
  const half = ribbonWidthMm(ribbon.facts.conductors) / 2;
  return all.slice(1).map((to, i): Stretch => {
    const from = all[i] as (typeof all)[number];
    const [left, right] = from.x <= to.x ? [from, to] : [to, from];
    return {
      leftMm: left.x,
      rightMm: right.x,
      bottomMm: Math.min(left.y, right.y) - half,
      topMm: Math.max(left.y, right.y) + half,
      leftZ: left.z,
      rightZ: right.z,
    };
  });
}

/** Whether a flat ribbon lies over a header: behind it, seen from the panel. */
export const liesOver = (stretches: readonly Stretch[], header: PlacedHeader): boolean =>
  stretches.some(
    (stretch) => overlap(stretch, boxOf(header)) && zAt(stretch, header.xMm) > zOf(header) + EPSILON,
  );

/** Whether one flat ribbon lies lower than another somewhere where they cross. */
function liesUnder(a: readonly Stretch[], b: readonly Stretch[]): boolean {
  return a.some((one) =>
    b.some((other) => {
      if (!overlap(one, other)) return false;
      const ends = [Math.max(one.leftMm, other.leftMm), Math.min(one.rightMm, other.rightMm)];
      return ends.some((x) => zAt(one, x) < zAt(other, x) - EPSILON);
    }),
  );
}

/** Whether a module stands over a board: over its width, or over any of its headers. */
export function standsOver(
  { row, leftMm, rightMm }: PlacedModule,
  { board, headers, row: own }: PlacedBoard,
): boolean {
  if (row !== own) return false;
  const boxes = headers.map(boxOf);
  const left = Math.min(board.xMm, ...boxes.map((box) => box.leftMm));
  const right = Math.max(board.xMm + (board.widthMm ?? 0), ...boxes.map((box) => box.rightMm));
  return leftMm < right - EPSILON && rightMm > left + EPSILON;
}

/** Places to sort by, the weightiest first. */
type Rank = readonly number[];

interface Node {
  readonly step: WorkStep;
  readonly rank: Rank;
  readonly after: Set<Node>;
}

function compareRanks(a: Rank, b: Rank): number {
  for (let i = 0; i < Math.max(a.length, b.length); i++) {
    const difference = (a[i] ?? 0) - (b[i] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Where each module's group comes: modules that ribbons without a board join, lowest row first, then from the left. */
function groupRanks({ places: { modules }, harnesses }: WholeTake): (module: PlacedModule) => Rank {
  const sets = new UnionFind(modules.length);
  const moduleOf = ({ on }: HeaderJoint): number => (on.header.owner as PlacedModule).index;
  for (const { moduleSeats, boardSeats } of harnesses) {
    const [first, ...others] = moduleSeats;
    if (boardSeats.length > 0 || !first) continue;
    for (const other of others) sets.join(moduleOf(first), moduleOf(other));
  }
  const ranks = new Map<number, Rank>();
  for (const module of modules) {
    const root = sets.find(module.index);
    const rank = [-module.row.index, module.leftMm, module.index];
    const known = ranks.get(root);
    if (!known || compareRanks(rank, known) < 0) ranks.set(root, rank);
  }
  return ({ index }) => ranks.get(sets.find(index)) as Rank;
}

/** A flat ribbon, the headers of modules that it sits on, and where it lies. */
interface Flat {
  readonly node: Node;
  readonly headers: readonly PlacedHeader[];
  readonly stretches: readonly Stretch[];
}

/** The steps of a take, and which must come before which. */
class Plan {
  readonly nodes: Node[] = [];

  add(step: WorkStep, ...rank: number[]): Node {
    const node = { step, rank: [...rank, this.nodes.length], after: new Set<Node>() };
    this.nodes.push(node);
    return node;
  }

  /** Says that one step comes before another. */
  order(before: Node | undefined, then: Node | undefined): void {
    if (before && then && before !== then) then.after.add(before);
  }

  /** The same, unless the other way round is asked for already. */
  prefer(before: Node, then: Node): void {
    const seen = new Set<Node>();
    const waits = [before];
    for (let node = waits.pop(); node; node = waits.pop()) {
      if (node === then) return;
      if (seen.has(node)) continue;
      seen.add(node);
      waits.push(...node.after);
    }
    this.order(before, then);
  }
}

const z = (seats: readonly HeaderJoint[]): number =>
  Math.min(...seats.map(({ on: { header } }) => header.zMm ?? 0));

function planOf(take: WholeTake): Plan {
  const { places, wiring, seatsAlong } = take;
  const plan = new Plan();
  const groupOf = groupRanks(take);
  const stocked = stockedOf(take);
  const tests = new Map<LaidRibbon, Node>();
  for (const ribbon of wiring.ribbons) {
    const make =
      stocked.get(ribbon) === 'owned' ? undefined : plan.add({ type: 'make', ribbon }, 0, ribbon.index, 0);
    const test = plan.add({ type: 'test', ribbon }, 0, ribbon.index, 1);
    plan.order(make, test);
    tests.set(ribbon, test);
  }
  const boards = new Map(
    places.boards.map((board): [PlacedBoard, Node] => [
      board,
      plan.add({ type: 'mount-board', board }, 1, -board.row.index, board.board.xMm),
    ]),
  );
  const screws = new Map(
    places.modules.map((module): [PlacedModule, Node] => [
      module,
      plan.add({ type: 'screw-in', module }, 4, ...groupOf(module), 1, -module.row.index, module.leftMm),
    ]),
  );
  const over = new Map(
    places.boards.map((board) => [board, places.modules.filter((module) => standsOver(module, board))]),
  );
  for (const [board, modules] of over)
    for (const module of modules) plan.order(boards.get(board), screws.get(module));

  const seatOn = (seat: Node, { owner }: PlacedHeader): void => {
    if (owner.type === 'module') {
      plan.order(seat, screws.get(owner));
      return;
    }
    plan.order(boards.get(owner), seat);
    for (const module of over.get(owner) ?? []) plan.order(seat, screws.get(module));
  };

  const flats = new Map<LaidRibbon, Flat>();
  const loose: { readonly node: Node; readonly joint: HeaderJoint }[] = [];
  for (const ribbon of wiring.ribbons) {
    const seats = ribbon.uses.flat().filter((joint) => joint.ribbon === ribbon && joint.conducts);
    const onHeaders = seats.filter(isHeaderJoint);
    if (ribbon.facts.flat && onHeaders.length > 0) {
      const row = Math.max(...onHeaders.map(({ on }) => on.header.row.index));
      const node = plan.add({ type: 'seat-flat', ribbon, seats: onHeaders }, 3, z(onHeaders), -row);
      const headers = onHeaders.map(({ on }) => on.header).filter(({ owner }) => owner.type === 'module');
      flats.set(ribbon, { node, headers, stretches: stretchesOf(ribbon, seatsAlong.get(ribbon) ?? []) });
      plan.order(tests.get(ribbon), node);
      for (const { on } of onHeaders) seatOn(node, on.header);
    }
    if (ribbon.facts.flat) continue;
    for (const joint of onHeaders) {
      const { header } = joint.on;
      const { owner } = header;
      const step: WorkStep = { type: 'seat-loose', joint };
      const node =
        owner.type === 'board'
          ? plan.add(step, 2, -header.row.index, header.xMm)
          : plan.add(step, 4, ...groupOf(owner), 0, -header.row.index, owner.leftMm, zOf(header));
      plan.order(tests.get(ribbon), node);
      seatOn(node, header);
      loose.push({ node, joint });
    }
  }
  for (const [a, one] of flats)
    for (const [b, other] of flats)
      if (
        a !== b &&
        (liesUnder(one.stretches, other.stretches) ||
          one.headers.some((each) => liesOver(other.stretches, each)))
      )
        plan.order(one.node, other.node);
  for (const { node, joint } of loose)
    for (const { node: flat, stretches } of flats.values())
      if (joint.on.header.owner.type === 'module' && liesOver(stretches, joint.on.header))
        plan.order(node, flat);

  for (const joint of wiring.joints) {
    const { ribbon, on, conducts } = joint;
    if (!conducts || on.type !== 'connector') continue;
    const node = plan.add({ type: 'plug-in', joint }, 3.5, ribbon.index);
    for (const one of [ribbon, on.ribbon]) {
      plan.order(tests.get(one), node);
      plan.order(flats.get(one)?.node, node);
      for (const { on: under, conducts: holds } of one.uses.flat())
        if (holds && under.type === 'header' && under.header.owner.type === 'module')
          plan.order(node, screws.get(under.header.owner));
    }
  }
  for (const { node, joint } of loose) {
    const { owner } = joint.on.header;
    for (const { node: flat } of owner.type === 'module' ? flats.values() : [])
      if (flat.step.type === 'seat-flat' && flat.step.seats.some(({ on }) => on.header.owner === owner))
        plan.prefer(flat, node);
  }
  return plan;
}

/** Steps that wait for one another, among those that are left. */
function knotIn(left: ReadonlySet<Node>): Node[] {
  const path: Node[] = [];
  let [node] = left as Set<Node>;
  while (node && !path.includes(node)) {
    path.push(node);
    node = [...node.after].find((before) => left.has(before));
  }
  return node ? path.slice(path.indexOf(node)).reverse() : path;
}

/** Steps with nothing to wait for, the first in rank first. */
class Ready {
  readonly #nodes: Node[] = [];

  put(node: Node): void {
    const at = this.#nodes.findIndex(({ rank }) => compareRanks(node.rank, rank) > 0);
    this.#nodes.splice(at < 0 ? this.#nodes.length : at, 0, node);
  }

  take(): Node | undefined {
    return this.#nodes.pop();
  }
}

/** In which order a take is built. The same for the same take. */
export function orderOfWork(take: WholeTake): OrderOfWork {
  const { nodes } = planOf(take);
  const left = new Set(nodes);
  const waits = new Map(nodes.map((node) => [node, node.after.size]));
  const followers = new Map<Node, Node[]>(nodes.map((node) => [node, []]));
  for (const node of nodes) for (const before of node.after) followers.get(before)?.push(node);
  const ready = new Ready();
  for (const node of nodes) if (node.after.size === 0) ready.put(node);
  const steps: WorkStep[] = [];
  const knots: WorkStep[][] = [];
  while (left.size > 0) {
    let next = ready.take();
    if (!next) {
      const knot = knotIn(left);
      knots.push(knot.map(({ step }) => step));
      next = knot.reduce((first, node) => (compareRanks(node.rank, first.rank) < 0 ? node : first));
    }
    left.delete(next);
    steps.push(next.step);
    for (const follower of followers.get(next) ?? []) {
      const more = (waits.get(follower) as number) - 1;
      waits.set(follower, more);
      if (more === 0 && left.has(follower)) ready.put(follower);
    }
  }
  return { steps, knots };
}
