import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import type { StockPageId } from '../store/session.ts';

interface StockPage {
  readonly id: StockPageId;
  readonly label: string;
  /** Stands behind the label. */
  readonly Mark?: LazyExoticComponent<ComponentType>;
  readonly Page: LazyExoticComponent<ComponentType>;
}

/** All there is to the stock, in the order in which it is set up; each page is loaded when it is first opened. */
export const STOCK_PAGES: readonly StockPage[] = [
  {
    id: 'modules',
    label: 'Modules',
    Page: lazy(async () => ({ default: (await import('./modules-page.tsx')).ModulesPage })),
  },
  {
    id: 'ribbons',
    label: 'Ribbons',
    Page: lazy(async () => ({ default: (await import('./ribbons-page.tsx')).RibbonsPage })),
  },
  {
    id: 'buses',
    label: 'Buses and voltages',
    Page: lazy(async () => ({ default: (await import('./buses-page.tsx')).BusesPage })),
  },
  {
    id: 'limits',
    label: 'Limits',
    Page: lazy(async () => ({ default: (await import('./limits-page.tsx')).LimitsPage })),
  },
  {
    id: 'kept',
    label: 'My stock',
    Mark: lazy(async () => ({ default: (await import('./kept-mark.tsx')).KeptMark })),
    Page: lazy(async () => ({ default: (await import('./kept-page.tsx')).KeptPage })),
  },
  {
    id: 'table',
    label: 'From a table',
    Page: lazy(async () => ({ default: (await import('./table-page.tsx')).TablePage })),
  },
  {
    id: 'counts',
    label: 'Counts',
    Page: lazy(async () => ({ default: (await import('./counts-page.tsx')).CountsPage })),
  },
];
