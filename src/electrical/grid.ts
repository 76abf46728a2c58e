import { UnionFind } from '../wiring/union-find.ts';

/**
 * Less than this counts as this, Ω: far below anything that can be built, and far enough from zero to divide by.
 * What has no resistance at all is one node, and no branch.
 */
const LEAST_OHM = 1e-9;

/** Nodes, numbered from 0, and the resistances that join them. */
export class Grid {
  readonly size: number;
  readonly from: number[] = [];
  readonly to: number[] = [];
  readonly ohm: number[] = [];
  #sets?: UnionFind;

  constructor(size: number) {
    this.size = size;
  }

  /** Joins two nodes by a branch, and gives its number. */
  join(from: number, to: number, ohm: number): number {
    this.from.push(from);
    this.to.push(to);
    return this.ohm.push(Math.max(ohm, LEAST_OHM)) - 1;
  }

  /** A number that all nodes have in common that hang together. Asked once the grid is complete. */
  pieceOf(node: number): number {
    this.#sets ??= this.#joinAll();
    return this.#sets.find(node);
  }

  #joinAll(): UnionFind {
    const sets = new UnionFind(this.size);
    for (let branch = 0; branch < this.from.length; branch++)
      sets.join(this.from[branch] as number, this.to[branch] as number);
    return sets;
  }
}
