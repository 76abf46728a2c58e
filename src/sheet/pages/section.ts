import type { PageMaker } from '../sheet-page.ts';
import { drawingPages } from './drawing-page.ts';

export const section: PageMaker = (facts) =>
  drawingPages(facts, 'section', {
    title: 'Section of each row',
    says: 'solid: to the circuit · dashed: to the plugs, as deep as the figure says · ? not known · leads are not drawn',
  });
