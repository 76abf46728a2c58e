import { PAPERS, type Paper } from './sheet-page.ts';

/** Kept white at every edge: printers do not reach it, mm. */
export const MARGIN_MM = 10;

/** Heights of what stands above and below each page's body, mm. */
export const HEAD_MM = 13;
export const FOOT_MM = 9;

interface SizeMm {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A sheet of paper as it lies. */
export function pageMm(paper: Paper, lies = false): SizeMm {
  const { widthMm, heightMm } = PAPERS[paper];
  return lies ? { widthMm: heightMm, heightMm: widthMm } : { widthMm, heightMm };
}

/** What a page's body has of it. */
export function bodyMm(paper: Paper, lies = false): SizeMm {
  const { widthMm, heightMm } = pageMm(paper, lies);
  return { widthMm: widthMm - 2 * MARGIN_MM, heightMm: heightMm - 2 * MARGIN_MM - HEAD_MM - FOOT_MM };
}
