import type { Grid } from './grid.ts';

/** What a grid of resistances does when currents flow into its nodes. */
export interface Flow {
  /** Potential of each node, mV; NaN where no end is reached. */
  readonly mv: readonly number[];
  /** Current in each branch, `from` to `to`, mA; 0 where no end is reached. */
  readonly ma: readonly number[];
}

/** Two ends of a reduced grid that still feel each other, as if one conductance joined them. */
interface Tie {
  readonly a: number;
  readonly b: number;
  readonly siemens: number;
}

/** The neighbours of a node in a mesh, each once, and the conductance to each. */
interface Around {
  readonly neighbours: number[];
  readonly siemens: number[];
}

/** Nodes by how many neighbours they have, the fewest first; an entry may be out of date, and is then passed over. */
class FewestFirst {
  readonly #byDegree: number[][] = [];
  #lowest = 0;

  put(node: number, degree: number): void {
    const known = this.#byDegree[degree];
    if (known) known.push(node);
    else {
      while (this.#byDegree.length < degree) this.#byDegree.push([]);
      this.#byDegree[degree] = [node];
    }
    if (degree < this.#lowest) this.#lowest = degree;
  }

  take(degreeOf: (node: number) => number): number | undefined {
    for (; this.#lowest < this.#byDegree.length; this.#lowest++) {
      const nodes = this.#byDegree[this.#lowest] as number[];
      for (let node = nodes.pop(); node !== undefined; node = nodes.pop())
        if (degreeOf(node) === this.#lowest) return node;
    }
    return undefined;
  }
}

/**
 * A grid with every node taken out but its ends, whose potentials are given from outside, now or later. The
 * potentials of all nodes follow from theirs.
 *
 * Twigs go first, exactly: the current of a node with one branch is the current in that branch. In what is left, the
 * loops, a node with conductances g to its neighbours is taken out by the conductances g_i·g_j / Σg between these,
 * the node with the fewest neighbours first. That is an LDLᵀ factorisation in minimum-degree order, written so that
 * only positive numbers are added and nothing cancels.
 */
export class Reduction {
  readonly #grid: Grid;
  readonly #ends: readonly number[];
  /** Into each node; in the end what has come together at the ends. */
  readonly #injected: number[];
  readonly #ma: number[];
  /** Twigs in the order in which they went, and the branch by which each hung. */
  readonly #twigs: number[] = [];
  readonly #hungBy: number[] = [];
  /** Nodes of loops in the order in which they went, and the neighbours that each had then. */
  readonly #loops: number[] = [];
  readonly #around: Around[] = [];
  readonly #inLoop: number[] = [];
  readonly ties: readonly Tie[];

  /**
   * @param ends - nodes that stay
   * @param injected - current into each node from outside, mA; must be 0 where no end is reached
   */
  constructor(grid: Grid, ends: readonly number[], injected: readonly number[]) {
    this.#grid = grid;
    this.#ends = ends;
    this.#injected = [...injected];
    this.#ma = grid.from.map(() => 0);
    const isEnd: boolean[] = [];
    for (const end of ends) isEnd[end] = true;
    const gone = this.#takeTwigs(isEnd);
    this.ties = this.#takeLoops(isEnd, gone);
  }

  /** Current that comes together at an end, mA: what flows out of the grid there. */
  currentAt(end: number): number {
    return this.#injected[end] as number;
  }

  #takeTwigs(isEnd: readonly boolean[]): readonly boolean[] {
    const { size, from, to } = this.#grid;
    const injected = this.#injected;
    const degree = new Array<number>(size).fill(0);
    // The exclusive or of a node's branches: of the last one, that branch.
    const branches = new Array<number>(size).fill(0);
    for (let branch = 0; branch < from.length; branch++) {
      const [a, b] = [from[branch] as number, to[branch] as number];
      degree[a] = (degree[a] as number) + 1;
      degree[b] = (degree[b] as number) + 1;
      branches[a] = (branches[a] as number) ^ branch;
      branches[b] = (branches[b] as number) ^ branch;
    }
    const waiting: number[] = [];
    for (let node = 0; node < size; node++) if (degree[node] === 1 && !isEnd[node]) waiting.push(node);
    const gone: boolean[] = [];
    for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
      if (degree[node] !== 1) continue;
      const branch = branches[node] as number;
      const start = from[branch] as number;
      const other = start === node ? (to[branch] as number) : start;
      const ma = injected[node] as number;
      injected[other] = (injected[other] as number) + ma;
      this.#ma[branch] = start === node ? ma : -ma;
      this.#twigs.push(node);
      this.#hungBy.push(branch);
      gone[branch] = true;
      degree[node] = 0;
      degree[other] = (degree[other] as number) - 1;
      branches[other] = (branches[other] as number) ^ branch;
      if (degree[other] === 1 && !isEnd[other]) waiting.push(other);
    }
    return gone;
  }

  #takeLoops(isEnd: readonly boolean[], gone: readonly boolean[]): readonly Tie[] {
    const { size, from } = this.#grid;
    if (this.#twigs.length === from.length) return [];
    const ties = new Map<number, Tie>();
    const tie = (one: number, other: number, siemens: number): void => {
      const [a, b] = one < other ? [one, other] : [other, one];
      const key = a * size + b;
      ties.set(key, { a, b, siemens: (ties.get(key)?.siemens ?? 0) + siemens });
    };
    const mesh = this.#meshLeft(isEnd, gone, tie);
    const injected = this.#injected;
    const waiting = new FewestFirst();
    const degreeOf = (node: number): number => mesh[node]?.neighbours.length ?? -1;
    for (let node = 0; node < size; node++) if (mesh[node]) waiting.put(node, degreeOf(node));
    // The place of each neighbour in the list of the node that is being looked at; −1 otherwise.
    const place = new Array<number>(size).fill(-1);
    for (let node = waiting.take(degreeOf); node !== undefined; node = waiting.take(degreeOf)) {
      const own = mesh[node] as Around;
      mesh[node] = undefined;
      const { neighbours, siemens } = own;
      let sum = 0;
      for (const g of siemens) sum += g;
      for (let i = 0; i < neighbours.length; i++) {
        const a = neighbours[i] as number;
        const g = siemens[i] as number;
        injected[a] = (injected[a] as number) + ((injected[node] as number) * g) / sum;
        const around = mesh[a];
        if (around) {
          joinAll(around, a, node, own, g / sum, place);
          waiting.put(a, around.neighbours.length);
          continue;
        }
        for (let j = 0; j < i; j++) {
          const b = neighbours[j] as number;
          if (isEnd[b]) tie(a, b, (g * (siemens[j] as number)) / sum);
        }
      }
      this.#loops.push(node);
      this.#around.push(own);
    }
    return [...ties.values()];
  }

  /** The branches that are no twigs, where an end is reached, by node; ends know of none. */
  #meshLeft(
    isEnd: readonly boolean[],
    gone: readonly boolean[],
    tie: (a: number, b: number, siemens: number) => void,
  ): (Around | undefined)[] {
    const { from, to, ohm, size } = this.#grid;
    const mesh = new Array<Around | undefined>(size).fill(undefined);
    const reached = new Set(this.#ends.map((end) => this.#grid.pieceOf(end)));
    const join = (a: number, b: number, siemens: number): void => {
      const around = mesh[a] ?? { neighbours: [], siemens: [] };
      mesh[a] = around;
      const known = around.neighbours.indexOf(b);
      if (known >= 0) around.siemens[known] = (around.siemens[known] as number) + siemens;
      else {
        around.neighbours.push(b);
        around.siemens.push(siemens);
      }
    };
    for (let branch = 0; branch < from.length; branch++) {
      if (gone[branch]) continue;
      const [a, b] = [from[branch] as number, to[branch] as number];
      if (a === b || !reached.has(this.#grid.pieceOf(a))) continue;
      this.#inLoop.push(branch);
      const siemens = 1 / (ohm[branch] as number);
      if (isEnd[a] && isEnd[b]) tie(a, b, siemens);
      if (!isEnd[a]) join(a, b, siemens);
      if (!isEnd[b]) join(b, a, siemens);
    }
    return mesh;
  }

  /**
   * What all nodes and branches do when the ends are at these potentials.
   * @param mvAt - potential of each end, in their order
   */
  flow(mvAt: readonly number[]): Flow {
    const { size, from, to, ohm } = this.#grid;
    const injected = this.#injected;
    const mv = new Array<number>(size).fill(Number.NaN);
    this.#ends.forEach((end, i) => {
      mv[end] = mvAt[i] as number;
    });
    for (let i = this.#loops.length - 1; i >= 0; i--) {
      const node = this.#loops[i] as number;
      const { neighbours, siemens } = this.#around[i] as Around;
      // From one neighbour on: where no current flows all potentials are the very same.
      const start = mv[neighbours[0] as number] as number;
      let sum = 0;
      let ma = injected[node] as number;
      for (let k = 0; k < neighbours.length; k++) {
        const g = siemens[k] as number;
        sum += g;
        ma += g * ((mv[neighbours[k] as number] as number) - start);
      }
      mv[node] = start + ma / sum;
    }
    for (let i = this.#twigs.length - 1; i >= 0; i--) {
      const node = this.#twigs[i] as number;
      const branch = this.#hungBy[i] as number;
      const start = from[branch] as number;
      const other = start === node ? (to[branch] as number) : start;
      mv[node] = (mv[other] as number) + (injected[node] as number) * (ohm[branch] as number);
    }
    const ma = this.#inLoop.length > 0 ? [...this.#ma] : this.#ma;
    for (const branch of this.#inLoop)
      ma[branch] =
        ((mv[from[branch] as number] as number) - (mv[to[branch] as number] as number)) /
        (ohm[branch] as number);
    return { mv, ma };
  }
}

/**
 * Joins a node to all other neighbours of one that goes.
 * @param share - the part of their conductances that the way through that one is worth
 */
function joinAll(
  around: Around,
  node: number,
  goes: number,
  { neighbours, siemens }: Around,
  share: number,
  place: number[],
): void {
  const mine = around.neighbours;
  const own = around.siemens;
  for (let i = 0; i < mine.length; i++) place[mine[i] as number] = i;
  const at = place[goes] as number;
  for (let j = 0; j < neighbours.length; j++) {
    const other = neighbours[j] as number;
    if (other === node) continue;
    const more = share * (siemens[j] as number);
    const known = place[other] as number;
    if (known >= 0) own[known] = (own[known] as number) + more;
    else {
      mine.push(other);
      own.push(more);
    }
  }
  for (let i = 0; i < mine.length; i++) place[mine[i] as number] = -1;
  place[goes] = -1;
  const [lastNode, lastSiemens] = [mine.pop() as number, own.pop() as number];
  if (at < mine.length) {
    mine[at] = lastNode;
    own[at] = lastSiemens;
  }
}
