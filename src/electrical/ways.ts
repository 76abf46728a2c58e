import type { PlacedBoard, PlacedModule } from '../geometry/place.ts';
import type { Supply } from '../layout/layout.ts';
import { remember } from '../layout/remember.ts';
import type { Joint, LaidRibbon } from '../wiring/laid-ribbon.ts';
import { gives } from '../wiring/supply-net.ts';
import { UnionFind } from '../wiring/union-find.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { lineNumber, networkOf } from './network.ts';

/** Something on the way of a supply line that can be open: an output, a board's lead, a seat, ribbon between seats. */
export type Link =
  | { readonly type: 'supply'; readonly supply: Supply }
  | { readonly type: 'board-lead'; readonly board: PlacedBoard }
  | { readonly type: 'seat'; readonly joint: Joint }
  /** Between two connectors next to each other among those in use. */
  | { readonly type: 'span'; readonly ribbon: LaidRibbon; readonly from: number; readonly to: number };

/** A stretch of nodes in the order in which they were walked. */
export interface Stretch {
  readonly first: number;
  readonly last: number;
}

/** What one line loses where a link is open: all that hangs on it and on nothing else. */
export interface Cut extends Stretch {
  readonly link: Link;
  readonly line: string;
  /** The node on the supply's side, by its place in the walk. */
  readonly above: number;
}

export const holds = ({ first, last }: Stretch, place: number): boolean => first <= place && place <= last;

/**
 * The ways of all supply lines of a take, walked once from the supplies, depth first. What hangs on a link alone is a
 * stretch of that walk (a bridge of the graph and what lies behind it); a link with a way round it cuts nothing off.
 */
export interface Ways {
  readonly take: WholeTake;
  /** So many places were walked. */
  readonly size: number;
  /** In the order of the links: supplies, boards, seats, ribbons. */
  readonly cuts: readonly Cut[];
  readonly cutsOf: ReadonlyMap<Link, readonly Cut[]>;
  /** Place of a line at a module; nothing where no supply brings it. */
  atModule(module: PlacedModule, line: string): number | undefined;
  /** On a board that something is seated on. */
  atBoard(board: PlacedBoard, line: string): number | undefined;
  atRibbon(ribbon: LaidRibbon, connector: number, line: string): number | undefined;
  /** A number that all places have in common that hang together without the supplies. */
  pieceOf(place: number): number;
}

interface Edge {
  readonly from: number;
  readonly to: number;
  readonly link: Link;
  readonly line: string;
}

/** Edges by node, each node's in one stretch. */
function around(
  size: number,
  edges: readonly Edge[],
): { readonly start: readonly number[]; readonly list: readonly number[] } {
  const start = new Array<number>(size + 1).fill(0);
  for (const { from, to } of edges) {
    start[from + 1] = (start[from + 1] as number) + 1;
    start[to + 1] = (start[to + 1] as number) + 1;
  }
  for (let i = 0; i < size; i++) start[i + 1] = (start[i + 1] as number) + (start[i] as number);
  const next = [...start];
  const list = new Array<number>(2 * edges.length);
  edges.forEach(({ from, to }, edge) => {
    for (const node of [from, to]) {
      list[next[node] as number] = edge;
      next[node] = (next[node] as number) + 1;
    }
  });
  return { start, list };
}

interface Walk {
  /** Place of each node, −1 where it was not reached. */
  readonly placeOf: readonly number[];
  readonly size: number;
  /** For each edge that alone leads to what lies behind it, the node behind; −1 for others. */
  readonly behind: readonly number[];
  /** Last place of what was walked from each node on. */
  readonly last: readonly number[];
}

/** Tarjan's walk for bridges, without recursion. */
function walkFrom(root: number, size: number, edges: readonly Edge[]): Walk {
  const { start, list } = around(size, edges);
  const placeOf = new Array<number>(size).fill(-1);
  const low = new Array<number>(size).fill(0);
  const last = new Array<number>(size).fill(-1);
  const cameBy = new Array<number>(size).fill(-1);
  const next = start.slice(0, size);
  const behind = new Array<number>(edges.length).fill(-1);
  let places = 0;
  const enter = (node: number, by: number): void => {
    placeOf[node] = places;
    low[node] = places++;
    cameBy[node] = by;
  };
  enter(root, -1);
  const path = [root];
  for (let node = root; path.length > 0; node = path[path.length - 1] as number) {
    const at = next[node] as number;
    if (at < (start[node + 1] as number)) {
      next[node] = at + 1;
      const edge = list[at] as number;
      if (edge === cameBy[node]) continue;
      const { from, to } = edges[edge] as Edge;
      const other = from === node ? to : from;
      if ((placeOf[other] as number) < 0) {
        enter(other, edge);
        path.push(other);
      } else low[node] = Math.min(low[node] as number, placeOf[other] as number);
      continue;
    }
    path.pop();
    last[node] = places - 1;
    const parent = path[path.length - 1];
    if (parent === undefined) break;
    low[parent] = Math.min(low[parent] as number, low[node] as number);
    if ((low[node] as number) === placeOf[node]) behind[cameBy[node] as number] = node;
  }
  return { placeOf, size: places, behind, last };
}

function trace(take: WholeTake): Ways {
  const { kit, places } = take;
  const { supplies } = take.take;
  const lines = kit.supplyLines;
  const network = networkOf(take);
  const portOf = new Map(
    network.ports.map(({ board, line, node }) => [board.index * lines.length + line, node]),
  );
  const root = network.grid.size;
  const ofSupply = (supply: number, line: number): number => root + 1 + supply * lines.length + line;
  const edges: Edge[] = [];
  supplies.forEach((supply, index) => {
    const link: Link = { type: 'supply', supply };
    lines.forEach((line, i) => {
      if (gives(supply, line)) edges.push({ from: root, to: ofSupply(index, i), link, line });
    });
  });
  for (const board of places.boards) {
    const link: Link = { type: 'board-lead', board };
    lines.forEach((line, i) => {
      const node = portOf.get(board.index * lines.length + i);
      if (node !== undefined) edges.push({ from: ofSupply(board.supplyIndex, i), to: node, link, line });
    });
  }
  const { from, to } = network.grid;
  const addBranches = (link: Link, branches: readonly number[]): void =>
    branches.forEach((branch, i) => {
      if (branch < 0) return;
      edges.push({ from: from[branch] as number, to: to[branch] as number, link, line: lines[i] as string });
    });
  for (const { joint, branches } of network.seats) addBranches({ type: 'seat', joint }, branches);
  for (const { ribbon, spans } of network.ribbons)
    for (const span of spans)
      addBranches({ type: 'span', ribbon, from: span.from, to: span.to }, span.branches);

  const size = root + 1 + supplies.length * lines.length;
  const walk = walkFrom(root, size, edges);
  const { placeOf } = walk;
  const cuts = edges.flatMap(({ from, to, link, line }, edge): Cut[] => {
    const node = walk.behind[edge] as number;
    if (node < 0) return [];
    const above = placeOf[node === from ? to : from] as number;
    return [{ link, line, above, first: placeOf[node] as number, last: walk.last[node] as number }];
  });
  const cutsOf = new Map<Link, Cut[]>();
  for (const cut of cuts) cutsOf.set(cut.link, [...(cutsOf.get(cut.link) ?? []), cut]);
  const pieces = new UnionFind(walk.size);
  for (const { from, to } of edges) {
    const [a, b] = [placeOf[from] as number, placeOf[to] as number];
    if (from !== root && a >= 0 && b >= 0) pieces.join(a, b);
  }
  const placeAt = (node: number | undefined): number | undefined => {
    const place = node === undefined ? -1 : (placeOf[node] as number);
    return place < 0 ? undefined : place;
  };
  return {
    take,
    size: walk.size,
    cuts,
    cutsOf,
    atModule: (module, line) => placeAt(network.nodeOf(module, lineNumber(kit, line))),
    atBoard: (board, line) => placeAt(portOf.get(board.index * lines.length + lineNumber(kit, line))),
    atRibbon: (ribbon, connector, line) => placeAt(network.nodeAt(ribbon, connector, line)),
    pieceOf: (place) => pieces.find(place),
  };
}

/** Near-linear in the seats drawn; worked out once for a take. */
export const supplyWays = remember(trace);
