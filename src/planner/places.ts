import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedBoard } from '../geometry/place.ts';
import { hpToMm } from '../geometry/rack.ts';
import { heightUOf } from '../layout/defaults.ts';
import { type KitIndex, resolve } from '../layout/kit-index.ts';
import type { Module, Row } from '../layout/layout.ts';

/** A stretch of a row, HP. */
interface Stretch {
  readonly fromHp: number;
  readonly toHp: number;
}

/** Rows as they fill up. */
export class Places {
  readonly #kit: KitIndex;
  readonly #boards: readonly PlacedBoard[];
  readonly #taken = new Map<string, Stretch[]>();
  readonly placed: Module[] = [];

  constructor(kit: KitIndex, boards: readonly PlacedBoard[], standing: readonly Module[]) {
    this.#kit = kit;
    this.#boards = boards;
    for (const module of standing) this.put(module);
  }

  widthOf({ kind }: Module): number {
    return resolve(this.#kit.modules, kind).kind.widthHp;
  }

  put(module: Module): void {
    this.placed.push(module);
    const taken = this.#taken.get(module.row) ?? [];
    taken.push({ fromHp: module.atHp, toHp: module.atHp + this.widthOf(module) });
    this.#taken.set(module.row, taken);
  }

  /** Whether a module could stand there: on the rails, beside the others, with its plugs clear of floor and boards. */
  #fits({ kind: id }: Module, row: Row, atHp: number): boolean {
    const { kind } = resolve(this.#kit.modules, id);
    if (heightUOf(kind) !== row.heightU || exceeds(atHp + kind.widthHp, row.widthHp)) return false;
    const overlaps = (this.#taken.get(row.id) ?? []).some(
      ({ fromHp, toHp }) => exceeds(toHp, atHp) && exceeds(atHp + kind.widthHp, fromHp),
    );
    if (overlaps) return false;
    if (kind.depthMm === undefined) return true;
    const depthMm = kind.depthMm + (kind.depthIs === 'without-plugs' ? this.#kit.limits.plugMm : 0);
    if (exceeds(depthMm, row.depthMm)) return false;
    const [fromMm, toMm] = [hpToMm(atHp), hpToMm(atHp + kind.widthHp)];
    return this.#boards.every(({ board }) => {
      const width = board.widthMm ?? 0;
      if (
        board.row !== row.id ||
        width === 0 ||
        !exceeds(board.xMm + width, fromMm) ||
        !exceeds(toMm, board.xMm)
      )
        return true;
      return !exceeds(depthMm, row.depthMm - (board.riseMm ?? 0));
    });
  }

  /** Puts modules side by side at the first place from the left, or the nearest to one, in the first row that takes them all. */
  together(modules: readonly Module[], rows: readonly Row[], near?: Module): boolean {
    const inOrder = near
      ? [...rows].sort((a, b) => Number(b.id === near.row) - Number(a.id === near.row))
      : rows;
    const widths = modules.map((module) => this.widthOf(module));
    for (const row of inOrder) {
      const starts = Array.from({ length: Math.floor(row.widthHp) + 1 }, (_, hp) => hp);
      if (near?.row === row.id) starts.sort((a, b) => Math.abs(a - near.atHp) - Math.abs(b - near.atHp));
      for (const start of starts) {
        let atHp = start;
        const isFree = modules.every((module, i) => {
          const fits = this.#fits(module, row, atHp);
          atHp += widths[i] as number;
          return fits;
        });
        if (!isFree) continue;
        atHp = start;
        modules.forEach((module, i) => {
          this.put({ ...module, row: row.id, atHp });
          atHp += widths[i] as number;
        });
        return true;
      }
    }
    return false;
  }
}
