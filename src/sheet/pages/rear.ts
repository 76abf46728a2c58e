import type { PageMaker } from '../sheet-page.ts';
import { drawingPages } from './drawing-page.ts';

export const rear: PageMaker = (facts) =>
  drawingPages(facts, 'rear', {
    title: 'Rear view',
    says: 'as it is seen with the case turned round · ticked edge: stripe · arrow: pin 1 · black: seated · dashed: free',
  });
