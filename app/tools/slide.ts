import type { Module, Row } from '../../src/index.ts';

/** A place on the rails: index of the row from the top, HP from its left end seen from the front. */
export interface RailPlace {
  readonly row: number;
  readonly atHp: number;
}

export interface Slider {
  readonly id: string;
  readonly widthHp: number;
  readonly from: RailPlace;
}

/** Modules that move as one, each keeping its distance to the one in hand. */
export interface Slide {
  readonly rows: readonly Row[];
  readonly inHand: Slider;
  /** With the one in hand. */
  readonly all: readonly Slider[];
}

export interface Move {
  readonly module: string;
  readonly row: string;
  readonly atHp: number;
}

export const snapTo = (hp: number, step: number): number => Math.round(hp / step) * step;

/** Edits keep thousandths of an HP; sums of floats would leave crumbs. */
const tidy = (hp: number): number => Math.round(hp * 1000) / 1000;

const clamp = (value: number, least: number, most: number): number => Math.max(least, Math.min(value, most));

function rowShift({ rows, inHand, all }: Slide, row: number): number {
  const indices = all.map(({ from }) => from.row);
  return clamp(row - inHand.from.row, -Math.min(...indices), rows.length - 1 - Math.max(...indices));
}

/** The least and most that all may move along without leaving the rails. */
function roomAlong({ rows, all }: Slide, rowsDown: number): [number, number] {
  const left = Math.max(...all.map(({ from }) => -from.atHp));
  const right = all.map(({ from, widthHp }) => {
    const row = rows[from.row + rowsDown] as Row;
    return row.widthHp - widthHp - from.atHp;
  });
  return [left, Math.max(left, Math.min(...right))];
}

/** Where all of them come to stand when the one in hand is brought to a place, kept on the rails. */
export function slideTo(slide: Slide, to: RailPlace): Move[] {
  const rowsDown = rowShift(slide, to.row);
  const along = clamp(to.atHp - slide.inHand.from.atHp, ...roomAlong(slide, rowsDown));
  return slide.all.map(({ id, from }) => ({
    module: id,
    row: (slide.rows[from.row + rowsDown] as Row).id,
    atHp: tidy(from.atHp + along),
  }));
}

export function sliderOf(module: Module, widthHp: number, rows: readonly Row[]): Slider {
  const row = rows.findIndex(({ id }) => id === module.row);
  return { id: module.id, widthHp, from: { row, atHp: module.atHp } };
}
