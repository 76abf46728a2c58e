import { verdictOf } from '../../checks/verdict.ts';
import { figure, lineName, list, namesOf, targetInFull } from '../../checks/words.ts';
import { type Markup, markup } from '../markup.ts';
import { bodyMm } from '../page-size.ts';
import { LEADING, printed } from '../paginate.ts';
import type { PageMaker, SheetFacts } from '../sheet-page.ts';
import { linesOf } from '../text-lines.ts';
import { stripeWords } from '../words.ts';

interface Part {
  readonly heading: string;
  readonly lines: readonly string[];
}

/** What each supply gives, as its owner typed it. */
const suppliesPart = ({ take }: SheetFacts): Part => ({
  heading: 'Supply',
  lines: take.take.supplies.map(({ name, ratings }) => {
    const gives = Object.entries(ratings).filter(([, ma]) => ma > 0);
    return `${name}: ${gives.map(([line, ma]) => `${lineName(line)} ${figure(ma, 0)} mA`).join(', ') || 'nothing entered'}`;
  }),
});

/** From board to module, lead by lead. */
function feedsPart({ take }: SheetFacts): Part {
  const lines = take.supplyNet.islands.flatMap(({ feeds, modules }) =>
    feeds.map(({ seat, harness }) => {
      const boards = list(harness.boardSeats.map(({ on }) => targetInFull(on)));
      const { owner } = seat.on.header;
      const others = modules.filter((module) => module !== owner);
      const and = others.length > 0 ? `, and through it ${namesOf(others)}` : '';
      return `${list(harness.ribbons.map(({ name }) => name))}: ${boards} → ${owner.name} (${stripeWords(seat.ribbon, seat.connector, seat.on.header)})${and}`;
    }),
  );
  return { heading: 'What feeds what', lines };
}

/** Who is host of whom. */
function linksPart({ take }: SheetFacts): Part {
  const lines = take.linkGroups.flatMap(({ links, ribbons }) =>
    links.flatMap(({ bus, hosts, members }) => {
      if (hosts.length === 0 || members.length === 0) return [];
      const names = (those: typeof hosts): string => namesOf(those.map(({ module }) => module));
      return [`${namesOf(ribbons)} (${bus.bus.name}): host ${names(hosts)} ← ${names(members)}`];
    }),
  );
  return { heading: 'Who is host', lines };
}

/** Of what is known to be wrong, the worst. */
const MOST_TOLD = 3;

/** What is known to be wrong comes first; then what goes wrong on the way. */
function lookPart({ notes }: SheetFacts): Part {
  const open = notes.filter(({ level, accepted }) => level !== 'reminder' && !accepted);
  const told = open.slice(0, MOST_TOLD).map(({ headline }) => `– ${headline}`);
  return {
    heading: 'Look at first',
    lines: [
      ...(open.length > 0 ? [`${verdictOf(notes).text}:`, ...told] : []),
      'Smell or heat: unplug, wait, look.',
      'Every stripe at pin 1, every plug down all the way at both ends, no pin free.',
      'One module dead: its lead first. A voltage missing: unplug boards half by half.',
      'A group dead: its power lead, then its ribbon, then its host.',
    ],
  };
}

/** Letters are as large as they can be, mm: it is read on a dark stage. */
const SIZES = [6.5, 6, 5.5, 5, 4.5, 4, 3.5, 3] as const;

const HEADING_SHARE = 1.15;

interface Set {
  readonly sizeMm: number;
  readonly heightMm: number;
  readonly parts: readonly { readonly heading: string; readonly lines: readonly (readonly string[])[] }[];
}

function setIn(parts: readonly Part[], sizeMm: number, widthMm: number): Set {
  const letters = { sizeMm, bold: true };
  const set = parts.map(({ heading, lines }) => ({
    heading,
    lines: lines.map((each) => linesOf(each, widthMm, letters)),
  }));
  const heightMm = set.reduce(
    (sum, { lines }) =>
      sum +
      sizeMm * (HEADING_SHARE * LEADING + 1) +
      lines.reduce((all, each) => all + sizeMm * (each.length * LEADING + 0.35), 0),
    0,
  );
  return { sizeMm, heightMm, parts: set };
}

/** Leaves out the last of what is told of the longest part, until the smallest letters fit. */
function shortened(parts: readonly Part[]): Part[] {
  const longest = parts.reduce((a, b) => (b.lines.length > a.lines.length ? b : a));
  const kept = longest.lines.filter((each) => !each.startsWith('and more'));
  const left = kept.slice(0, Math.max(1, Math.floor(kept.length * 0.8)));
  return parts.map((part) =>
    part === longest ? { ...part, lines: [...left, 'and more: see the table of feeds'] } : part,
  );
}

function fitted(parts: readonly Part[], widthMm: number, heightMm: number): Set {
  for (const size of SIZES) {
    const set = setIn(parts, size, widthMm);
    if (set.heightMm <= heightMm) return set;
  }
  const most = Math.max(...parts.map(({ lines }) => lines.length));
  if (most > 2) return fitted(shortened(parts), widthMm, heightMm);
  const smallest = setIn(parts, SIZES.at(-1) as number, widthMm);
  const mostLines = Math.floor(heightMm / (smallest.sizeMm * LEADING) / (parts.length * 4));
  return {
    ...smallest,
    parts: smallest.parts.map(({ heading, lines }) => ({
      heading,
      lines: lines.map((each) => each.slice(0, mostLines)),
    })),
  };
}

const partMarkup = ({ heading, lines }: Set['parts'][number], sizeMm: number): Markup =>
  markup`<h2 style="font-size:${sizeMm * HEADING_SHARE}mm;line-height:${LEADING};margin-top:${sizeMm * 0.7}mm;margin-bottom:${sizeMm * 0.3}mm">${heading}</h2>${lines.map(
    (each) => markup`<p style="margin-bottom:${sizeMm * 0.35}mm">${printed(each)}</p>`,
  )}`;

/** One page with what must be known on the way, in letters that can be read in the dark. */
export const gigCard: PageMaker = (facts) => {
  const { widthMm, heightMm } = bodyMm(facts.options.paper);
  const parts = [suppliesPart, feedsPart, linksPart, lookPart]
    .map((part) => part(facts))
    .filter(({ lines }) => lines.length > 0);
  const set = fitted(parts, widthMm, heightMm);
  const body = markup`<div class="gig" style="font-size:${set.sizeMm}mm;line-height:${LEADING};font-weight:700">${set.parts.map((part) => partMarkup(part, set.sizeMm))}</div>`;
  return [{ id: 'gig-card', title: 'Gig card', side: 'rear', body }];
};
