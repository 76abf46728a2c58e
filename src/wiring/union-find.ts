/** Disjoint sets over 0 … size − 1, by path halving and union by size. */
export class UnionFind {
  readonly #parent: Int32Array;
  readonly #size: Int32Array;

  constructor(size: number) {
    this.#parent = new Int32Array(size);
    for (let i = 0; i < size; i++) this.#parent[i] = i;
    this.#size = new Int32Array(size).fill(1);
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
