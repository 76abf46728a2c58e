import { type Edges, measuredFrom, type PanelPlace, type PanelSize } from '../../src/index.ts';
import { figure } from '../panels/figures.ts';

const ACROSS_WORDS: Readonly<Record<Edges['across'], string>> = {
  'rear-left': 'the left edge seen from the rear',
  'front-left': 'the left edge seen from the front',
};

export const UP_WORDS: Readonly<Record<Edges['up'], string>> = {
  bottom: 'the lower edge',
  top: 'the upper edge',
};

/** A place as one would say it over the telephone. */
export function placeWords(edges: Edges, size: PanelSize, place: PanelPlace): string {
  const { xMm, yMm } = measuredFrom(edges, size, place);
  return `${figure(xMm, 2)} mm from ${ACROSS_WORDS[edges.across]}, ${figure(yMm, 2)} mm from ${UP_WORDS[edges.up]}`;
}
