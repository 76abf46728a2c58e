import { figure, list, mm } from '../../checks/words.ts';
import { roomOn } from '../cut-rows.ts';
import { type PartLine, partsListOf } from '../parts.ts';
import type { PageMaker } from '../sheet-page.ts';
import { pagedLots } from './paged.ts';
import { listLot, tableLot } from './table.ts';

const UNKNOWN = 'not known';

const COLUMNS = [
  { name: 'Part', widthMm: 62 },
  { name: 'Needed', widthMm: 17, align: 'end' },
  { name: 'Owned', widthMm: 21, align: 'end' },
  { name: 'To buy', widthMm: 17, align: 'end' },
  { name: 'Owned and long enough instead', widthMm: 36 },
  { name: 'Each', widthMm: 16, align: 'end' },
  { name: 'Cost', widthMm: 17, align: 'end' },
] as const;

const money = (amount: number | undefined): string => (amount === undefined ? UNKNOWN : amount.toFixed(2));

const instead = ({ substitutes }: PartLine): string =>
  substitutes.map(({ count, name, longerByMm }) => `${count} × ${name}, ${mm(longerByMm)} longer`).join('; ');

const SORTS: readonly (readonly [sorts: readonly PartLine['sort'][], title: string])[] = [
  [['module'], 'Modules'],
  [['flat ribbon', 'lead'], 'Ribbons and leads'],
  [['supply', 'board'], 'Supplies and boards'],
];

/** What is needed, what of it is owned, and what the rest costs. */
export const partsPage: PageMaker = ({ take, options }) => {
  const { lines, materials, cost, unpriced, uncounted } = partsListOf(take);
  if (lines.length === 0) return [];
  const { widthMm } = roomOn(options.paper);
  const tables = SORTS.flatMap(([sorts, title]) => {
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
    return [tableLot({ title, columns: COLUMNS, rows })];
  });
  const sums = [
    `To be bought, as far as prices are known: ${money(cost)}.`,
    unpriced.length > 0 && `To be bought and without a price: ${list(unpriced, 30)}.`,
    uncounted.length > 0 && `Nobody has counted what is owned of: ${list(uncounted, 30)}. It is in no sum.`,
  ].filter((sentence) => sentence !== false);
  const made = tableLot({
    title: 'If the ribbons that are not owned are made',
    words:
      'Lengths as the cut list calls them, without waste. A connector that was pressed on once is spent: have spares.',
    columns: [
      { name: 'Material', widthMm: 110 },
      { name: 'Amount', widthMm: 30, align: 'end' },
    ],
    rows: materials.map(({ name, amount, unit }) => [
      name,
      unit === 'mm' ? `${figure(amount / 1000, 3)} m` : String(amount),
    ]),
  });
  return pagedLots(
    { id: 'parts', title: 'Parts list' },
    [...tables, listLot('Cost', sums, widthMm), made],
    options,
  );
};
