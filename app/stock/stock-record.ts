import { fail, type Layout, ok, type Result } from '../../src/index.ts';
import { emptyStock, type MyStock } from '../../src/stock.ts';

/** The id of the stock's record, which lies on the shelf beside the layouts. */
export const STOCK_ID = 'my-stock';

/** The stock as the browser keeps it. Its text is opened like any file. */
export interface StockRecord {
  readonly id: typeof STOCK_ID;
  readonly is: 'stock';
  /** A layout with nothing in its case, as JSON. */
  readonly text: string;
  readonly earlier: MyStock['earlier'];
  readonly left: MyStock['left'];
  /** In ms since 1970. */
  readonly changed: number;
  /** Rises with each writing. */
  readonly revision: number;
}

const isTexts = (value: unknown): value is readonly string[] =>
  Array.isArray(value) && value.every((each) => typeof each === 'string');

/** Whether what was found on the shelf can be told as the stock; what is in its text is another question. */
export function isStockRecord(found: unknown): found is StockRecord {
  if (typeof found !== 'object' || found === null) return false;
  const { is, text, earlier, left, revision } = found as Partial<Record<string, unknown>>;
  return (
    is === 'stock' &&
    typeof text === 'string' &&
    Number.isFinite(revision) &&
    isTexts(left) &&
    typeof earlier === 'object' &&
    earlier !== null &&
    Object.values(earlier).every(isTexts)
  );
}

type Open = (text: string) => Result<Layout, string>;

/** The stock in what stands on the shelf; nothing there is an empty stock. What cannot be opened stays where it is. */
export function openStock(found: unknown, open: Open): Result<MyStock, string> {
  if (found === undefined) return ok(emptyStock());
  if (!isStockRecord(found)) return fail('what is kept there is no stock that this program can read');
  const layout = open(found.text);
  if (!layout.ok) return layout;
  return ok({ layout: layout.value, earlier: found.earlier, left: found.left });
}

/** More than this is no stock that somebody has by hand. */
const MOST_CHARACTERS = 8_000_000;

/** The record for a stock, with all that another version of the program wrote into the one before. */
export function stockRecord(before: unknown, stock: MyStock, now: number): Result<StockRecord, string> {
  const text = JSON.stringify(stock.layout);
  if (text.length > MOST_CHARACTERS) return fail('Your stock is as large as this browser can keep');
  const old = isStockRecord(before) ? before : undefined;
  const { earlier, left } = stock;
  return ok({
    ...old,
    id: STOCK_ID,
    is: 'stock',
    text,
    earlier,
    left,
    changed: now,
    revision: (old?.revision ?? 0) + 1,
  });
}
