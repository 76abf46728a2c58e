import type { SheetPageId } from './sheet-page.ts';

/** What the pages are called where they are chosen. */
export const PAGE_NAMES: Readonly<Record<SheetPageId, string>> = {
  front: 'Front view',
  rear: 'Rear view',
  section: 'Section of each row',
  feeds: 'Feeds and budget',
  parts: 'Parts list',
  cuts: 'Cut list',
  strips: 'True-scale strips',
  continuity: 'Continuity tables',
  order: 'Order of work',
  'power-up': 'Powering up',
  'fault-finding': 'Fault finding',
  labels: 'Labels',
  change: 'Change sheet',
  'gig-card': 'Gig card',
};
