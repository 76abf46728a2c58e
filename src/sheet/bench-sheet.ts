import { checkTake } from '../checks/run.ts';
import { powerOf } from '../electrical/power.ts';
import type { Layout } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import { Markup, markup } from './markup.ts';
import { PAGE_MAKERS } from './page-makers.ts';
import { revisionOf } from './revision.ts';
import type { SheetFacts, SheetOptions, SheetPage } from './sheet-page.ts';
import { sheetStyle } from './sheet-style.ts';

/** On every page: it may be the only one that lies on the bench. */
const CAUTION =
  'Switch off, unplug and wait before wiring. Check stripe and seating at every header before power. This sheet knows only the data entered; figures are estimates.';
const CAUTION_MAINS =
  'Extra-low-voltage wiring only: mains wiring, inlets, fuses and protective earth are for a qualified person. Follow the makers’ instructions.';

const SIDES = { front: 'SEEN FROM THE FRONT', rear: 'SEEN FROM THE REAR' } as const;

/** Told where left and right mean nothing, so that no page leaves it open. */
const NO_SIDE = 'ANY SIDE';

/** What a document of a take is called where names must be short. */
const nameOf = ({ layout, take }: SheetFacts): string => `${layout.title || 'Untitled'}, ${take.take.name}`;

function sectionOf(page: SheetPage, number: number, of: number, facts: SheetFacts): Markup {
  const code = revisionOf(facts.take);
  return markup`<section class="page ${page.lies ? 'wide' : 'tall'}" data-page="${page.id}" aria-label="Page ${number}, ${page.title}">
<header><h1>${page.title}</h1><p class="code">Revision <b>${code}</b> · page ${number} of ${of}</p><p><bdi>${nameOf(facts)}</bdi></p><p class="side">${page.side ? SIDES[page.side] : NO_SIDE}</p></header>
<div class="body">${page.body}</div>
<footer>${CAUTION}<br>${CAUTION_MAINS}</footer>
</section>
`;
}

/** What pages are made from, worked out once. */
export function factsOf(layout: Layout, takeId: string, options: SheetOptions): SheetFacts {
  const chosen = layout.takes.find(({ id }) => id === takeId) ?? layout.takes[0];
  if (!chosen) throw new Error('the layout has no take');
  const take = deriveTake(layout.kit, chosen);
  return { layout, take, notes: checkTake(take), power: powerOf(take), options };
}

/** All pages that are asked for and have something to tell. */
export const pagesOf = (facts: SheetFacts): SheetPage[] =>
  PAGE_MAKERS.flatMap(([id, make]) => (facts.options.pages?.has(id) === false ? [] : make(facts)));

/** The bench sheet of a take: one HTML document without scripts that needs nothing else. */
export function benchSheet(layout: Layout, takeId: string, options: SheetOptions): string {
  const facts = factsOf(layout, takeId, options);
  const pages = pagesOf(facts);
  return markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width">
<title>Bench sheet: ${nameOf(facts)}</title>
<style>${new Markup(sheetStyle(options.paper))}</style>
</head>
<body>
<main>
${pages.map((page, i) => sectionOf(page, i + 1, pages.length, facts))}</main>
</body>
</html>
`.text;
}
