import { figure, list, mm } from '../../checks/words.ts';
import { piecesOf, toMake } from '../cut-list.ts';
import { type PartLine, partsListOf } from '../parts.ts';
import type { PageMaker } from '../sheet-page.ts';
import { NOTHING_TO_CUT } from './cuts-page.ts';
import { pagesWith, sentences, type WideTable } from './table.ts';

const UNKNOWN = 'not known';

const COLUMNS = [
  { head: 'Part', share: 62 },
  { head: 'Needed', share: 17, align: 'right' },
  { head: 'Owned', share: 21, align: 'right' },
  { head: 'To buy', share: 17, align: 'right' },
  { head: 'Owned and long enough instead', share: 36 },
  { head: 'Each', share: 16, align: 'right' },
  { head: 'Cost', share: 17, align: 'right' },
] as const;

const money = (amount: number | undefined): string => (amount === undefined ? UNKNOWN : amount.toFixed(2));

const instead = ({ substitutes }: PartLine): string =>
  substitutes.map(({ count, name, longerByMm }) => `${count} × ${name}, ${mm(longerByMm)} longer`).join('; ');

const SORTS: readonly (readonly [sorts: readonly PartLine['sort'][], heading: string])[] = [
  [['module'], 'Modules'],
  [['flat ribbon', 'lead'], 'Ribbons and leads'],
  [['supply', 'board'], 'Supplies and boards'],
];

/** What is needed, what of it is owned, and what the rest costs. */
export const partsPage: PageMaker = ({ take, options }) => {
  const { lines, materials, cost, unpriced, uncounted } = partsListOf(take);
  if (lines.length === 0) return [];
  const tables = SORTS.flatMap(([sorts, title]): WideTable[] => {
    const own = lines.filter(({ sort }) => sorts.includes(sort));
    if (own.length === 0) return [];
    const rows = own.map((line) => [
      line.name,
      String(line.needed),
      line.owned === undefined ? 'not counted' : String(line.owned),
      line.toBuy === undefined ? UNKNOWN : String(line.toBuy),
      instead(line),
      line.toBuy === 0 ? '' : money(line.price),
      line.toBuy === 0 ? '' : money(line.cost),
    ]);
    const isOwned = sorts.includes('lead') && toMake(piecesOf(take)).length === 0;
    return [{ heading: title, columns: COLUMNS, rows, ...(isOwned && { says: NOTHING_TO_CUT }) }];
  });
  const sums = [
    `To be bought, as far as prices are known: ${money(cost)}.`,
    unpriced.length > 0 && `To be bought and without a price: ${list(unpriced, 30)}.`,
    uncounted.length > 0 && `Nobody has counted what is owned of: ${list(uncounted, 30)}. It is in no sum.`,
  ].filter((sentence) => sentence !== false);
  const made: WideTable = {
    heading: 'If the ribbons that are not owned are made',
    says: 'Lengths as the cut list calls them, without waste. A connector that was pressed on once is spent: have spares.',
    columns: [
      { head: 'Material', share: 110 },
      { head: 'Amount', share: 30, align: 'right' },
    ],
    rows: materials.map(({ name, amount, unit }) => [
      name,
      unit === 'mm' ? `${figure(amount / 1000, 3)} m` : String(amount),
    ]),
  };
  return pagesWith({ id: 'parts', title: 'Parts list' }, [...tables, sentences('Cost', sums), made], options);
};
