import { changePage } from './pages/change-page.ts';
import { continuityPage } from './pages/continuity-page.ts';
import { cutsPage } from './pages/cuts-page.ts';
import { faultFindingPage } from './pages/fault-finding-page.ts';
import { feeds } from './pages/feeds.ts';
import { front } from './pages/front.ts';
import { gigCard } from './pages/gig-card.ts';
import { labels } from './pages/labels.ts';
import { orderPage } from './pages/order-page.ts';
import { partsPage } from './pages/parts-page.ts';
import { powerUpPage } from './pages/power-up-page.ts';
import { rear } from './pages/rear.ts';
import { section } from './pages/section.ts';
import { stripsPage } from './pages/strips-page.ts';
import type { PageMaker, SheetPageId } from './sheet-page.ts';

/** Who makes which pages, in the order in which they are printed. */
export const PAGE_MAKERS: readonly (readonly [id: SheetPageId, maker: PageMaker])[] = [
  ['front', front],
  ['rear', rear],
  ['section', section],
  ['feeds', feeds],
  ['parts', partsPage],
  ['cuts', cutsPage],
  ['strips', stripsPage],
  ['continuity', continuityPage],
  ['order', orderPage],
  ['power-up', powerUpPage],
  ['fault-finding', faultFindingPage],
  ['labels', labels],
  ['change', changePage],
  ['gig-card', gigCard],
];
