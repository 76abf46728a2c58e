import type { LaidRibbon } from '../../wiring/laid-ribbon.ts';
import { type Markup, markup } from '../markup.ts';
import { bodyMm } from '../page-size.ts';
import { type Block, LEADING, printed, SMALL_MM, stack } from '../paginate.ts';
import { harnessRevision } from '../revision.ts';
import type { PageMaker, SheetFacts, SheetPage } from '../sheet-page.ts';
import { linesOf } from '../text-lines.ts';
import { connectorsAlong, isUsed, jointOf, pluggedWords, stripeWords } from '../words.ts';

/** The name of a ribbon on its label, mm. */
const NAME_MM = 3.6;

/** Inside of a half of a label, left and right together, mm. */
const PAD_MM = 5;

const LEAST_MM = 14;

/** No block is cut: a name longer than a page would be. */
const MOST_LINES = 40;

interface Label {
  readonly name: readonly string[];
  readonly words: readonly string[];
  readonly heightMm: number;
}

/** What stands on the flag at one end of a ribbon. */
function labelOf(ribbon: LaidRibbon, connector: number, code: string, halfMm: number): Label {
  const room = halfMm - PAD_MM;
  const joint = jointOf(ribbon, connector);
  const header = joint?.on.type === 'header' ? joint.on.header : undefined;
  const name = linesOf(`${ribbon.name} · ${connector + 1}`, room, { sizeMm: NAME_MM, bold: true }).slice(
    0,
    MOST_LINES,
  );
  const words = [
    `→ ${pluggedWords(ribbon, connector)}`,
    `${stripeWords(ribbon, connector, header)} · ${code}`,
  ]
    .flatMap((each) => linesOf(each, room, { sizeMm: SMALL_MM }))
    .slice(0, MOST_LINES);
  const heightMm = Math.max(LEAST_MM, 3.4 + (name.length * NAME_MM + words.length * SMALL_MM) * LEADING);
  return { name, words, heightMm };
}

function labelMarkup({ name, words }: Label): Markup {
  const half = markup`<div><b style="font-size:${NAME_MM}mm;line-height:${LEADING}">${printed(name)}</b><span style="font-size:${SMALL_MM}mm;line-height:${LEADING}">${printed(words)}</span></div>`;
  return markup`<div class="label">${half}${half}</div>`;
}

/** Two labels beside one another. */
function pair(a: Label, b: Label | undefined): Block {
  const heightMm = Math.round(Math.max(a.heightMm, b?.heightMm ?? 0) * 100) / 100;
  return {
    heightMm,
    body: markup`<div class="labels" style="height:${heightMm}mm">${labelMarkup(a)}${b && labelMarkup(b)}</div>`,
  };
}

function labelsOf({ take }: SheetFacts, halfMm: number): Label[] {
  const codes = new Map(
    take.harnesses.flatMap((harness) =>
      harness.ribbons.map((ribbon) => [ribbon, harnessRevision(harness)] as const),
    ),
  );
  return take.wiring.ribbons.filter(isUsed).flatMap((ribbon) => {
    const along = connectorsAlong(ribbon);
    const ends = along.length > 1 ? [along[0] as number, along.at(-1) as number] : along;
    return ends.map((connector) => labelOf(ribbon, connector, codes.get(ribbon) ?? '', halfMm));
  });
}

const SAYS_MM = 12;

/** Flags for both ends of every ribbon: cut out, folded round the ribbon in the middle, glued back to back. */
export const labels: PageMaker = (facts) => {
  const { widthMm, heightMm } = bodyMm(facts.options.paper);
  const all = labelsOf(facts, widthMm / 4);
  const blocks = all.flatMap((label, i) => (i % 2 === 0 ? [pair(label, all[i + 1])] : []));
  return stack(blocks, heightMm - SAYS_MM).map(
    (page): SheetPage => ({
      id: 'labels',
      title: 'Labels for both ends',
      side: 'rear',
      body: markup`<p style="height:${SAYS_MM}mm">Cut along the dashed lines, fold round the ribbon at the dotted line, stick back to back.<br>The code is that of the harness: it changes when the harness does.</p>${page}`,
    }),
  );
};
