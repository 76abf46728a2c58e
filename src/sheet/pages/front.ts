import type { PageMaker } from '../sheet-page.ts';
import { drawingPages } from './drawing-page.ts';

export const front: PageMaker = (facts) =>
  drawingPages(facts, 'front', { title: 'Front view', says: 'ruler in HP from the front’s left end' });
