import { writeFileSync } from 'node:fs';
import { benchSheet } from '../sheet/bench-sheet.ts';
import { partsListOf } from '../sheet/parts.ts';
import { partsCsv } from '../sheet/parts-csv.ts';
import { PAPERS, type Paper, SHEET_PAGE_IDS, type SheetPageId } from '../sheet/sheet-page.ts';
import { deriveTake } from '../wiring/derive.ts';
import { onlyFile, parse, readLayout } from './arguments.ts';
import { type Command, pick, Refusal } from './command.ts';

function paperOf(text: string): Paper {
  if (Object.hasOwn(PAPERS, text)) return text as Paper;
  throw new Refusal(`--paper takes ${Object.keys(PAPERS).join(' or ')}, not ${JSON.stringify(text)}`);
}

const IDS = SHEET_PAGE_IDS.map((id) => ({ id }));

const pagesOf = (text: string): ReadonlySet<SheetPageId> =>
  new Set(text.split(',').map((id) => pick(IDS, id.trim(), 'page').id));

function barOf(text: string): number {
  const mm = Number(text);
  if (mm >= 80 && mm <= 120) return mm;
  throw new Refusal(
    `--bar takes what the printed bar of 100 mm measures, 80 to 120, not ${JSON.stringify(text)}`,
  );
}

function save(file: string, text: string): void {
  try {
    writeFileSync(file, text);
  } catch (reason) {
    throw new Refusal(`${file}: cannot be written (${(reason as NodeJS.ErrnoException).code})`);
  }
}

export const sheet: Command = {
  usage:
    'FILE [--take ID] [--out FILE.html] [--paper a4|letter] [--pages a,b,…] [--bar MM] [--every-piece] [--parts FILE.csv]',
  says: `the bench sheet, one self-contained HTML file to print; pages are ${SHEET_PAGE_IDS.join(', ')}`,
  run(args) {
    const { values, positionals } = parse(args, {
      take: { type: 'string' },
      out: { type: 'string' },
      paper: { type: 'string', default: 'a4' },
      pages: { type: 'string' },
      bar: { type: 'string' },
      'every-piece': { type: 'boolean', default: false },
      parts: { type: 'string' },
    });
    const paper = paperOf(values.paper);
    const pages = values.pages === undefined ? undefined : pagesOf(values.pages);
    const barMm = values.bar === undefined ? undefined : barOf(values.bar);
    const layout = readLayout(onlyFile(positionals));
    const take = values.take === undefined ? layout.takes[0] : pick(layout.takes, values.take, 'take');
    const html = benchSheet(layout, take?.id ?? '', {
      paper,
      ...(pages && { pages }),
      ...(barMm !== undefined && { barMm }),
      ...(values['every-piece'] && { everyPiece: true }),
    });
    if (values.parts !== undefined && take)
      save(values.parts, partsCsv(partsListOf(deriveTake(layout.kit, take))));
    if (values.out === undefined) return { text: html, exit: 0 };
    save(values.out, html);
    return { text: '', exit: 0 };
  },
};
