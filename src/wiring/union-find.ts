/** Disjoint sets over 0 … size − 1, by path halving and union by size. */
export class UnionFind {
  // Plain lists: a take makes hundreds of small sets, and a typed array costs more to make than such a set to use.
  readonly #parent: number[] = [];
  readonly #size: number[] = [];

  constructor(size: number) {
    for (let i = 0; i < size; i++) {
      this.#parent.push(i);
      this.#size.push(1);
    }
  }

  find(item: number): number {
    const parent = this.#parent;
    let at = item;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at] as number] as number;
      at = parent[at] as number;
    }
    return at;
  }

  join(a: number, b: number): void {
    let small = this.find(a);
    let large = this.find(b);
    if (small === large) return;
    if ((this.#size[small] as number) > (this.#size[large] as number)) [small, large] = [large, small];
    this.#parent[small] = large;
    this.#size[large] = (this.#size[large] as number) + (this.#size[small] as number);
  }
}
