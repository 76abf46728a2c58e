import { feeds } from './pages/feeds.ts';
import { front } from './pages/front.ts';
import { gigCard } from './pages/gig-card.ts';
import { labels } from './pages/labels.ts';
import { rear } from './pages/rear.ts';
import { section } from './pages/section.ts';
import type { PageMaker, SheetPageId } from './sheet-page.ts';

/** Who makes which pages, in the order in which they are printed. */
export const PAGE_MAKERS: readonly (readonly [id: SheetPageId, maker: PageMaker])[] = [
  ['front', front],
  ['rear', rear],
  ['section', section],
  ['feeds', feeds],
  ['labels', labels],
  ['gig-card', gigCard],
];
