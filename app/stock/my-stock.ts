import { createStore, type StoreApi } from 'zustand/vanilla';
import { fail, ok, type Result } from '../../src/index.ts';
import { changeStock, type MyStock, type StockDeed } from '../../src/stock.ts';
import type { Editor } from '../editor.ts';
import { faultWords } from '../keep/words.ts';
import { browserChannel, type Channel } from '../platform/channel.ts';
import type { Clock } from '../platform/clock.ts';
import { browserShelf, type Shelf } from '../platform/storage.ts';
import { openStock, STOCK_ID, type StockRecord, stockRecord } from './stock-record.ts';

/** How it stands with my stock. */
export type StockState =
  | { readonly is: 'opening' }
  | { readonly is: 'open'; readonly stock: MyStock }
  /** Why it cannot be shown, as the end of a sentence; what is kept stays as it is. */
  | { readonly is: 'fault'; readonly why: string };

interface Changed {
  readonly before: MyStock;
  readonly after: MyStock;
}

interface Step extends Changed {
  /** `null`: there is nothing to write. */
  readonly record: StockRecord | null;
}

export interface StockKeeper {
  readonly store: StoreApi<StockState>;
  /** Looks at what is kept. */
  refresh(): Promise<void>;
  /** Does something to the stock as it is kept now, whoever changed it last; answers with the stock before and after. */
  change(deed: StockDeed): Promise<Result<Changed, string>>;
}

interface Doors {
  readonly shelf: Shelf;
  readonly channel: Channel;
  readonly clock: Clock;
}

/**
 * Keeps my stock. Tabs need no lock for it: a deed is carried out on what stands on the shelf, between the look and the
 * writing of one transaction, so that no tab can overwrite what another one did. A deed that takes a kind's place names
 * the kind as it was seen, and is refused where that has changed meanwhile.
 */
export function createStockKeeper({ shelf, channel, clock }: Doors): StockKeeper {
  const store = createStore<StockState>(() => ({ is: 'opening' }));
  const opener = async () => {
    const { openLayout, describeFailure } = await import('../../src/document.ts');
    return (text: string) => {
      const opened = openLayout(text);
      return opened.ok ? opened : fail(describeFailure(opened.error));
    };
  };

  const show = (stock: Result<MyStock, string>): void =>
    store.setState(stock.ok ? { is: 'open', stock: stock.value } : { is: 'fault', why: stock.error }, true);

  async function refresh(): Promise<void> {
    const open = await opener();
    const found = await shelf.read(STOCK_ID);
    show(found.ok ? openStock(found.value, open) : fail(faultWords(found.error)));
  }

  channel.listen(() => void refresh());

  return {
    store,
    refresh,
    async change(deed) {
      const open = await opener();
      let outcome = null as Result<Changed, string> | null;
      const done = await shelf.change(STOCK_ID, (found) => {
        const step = stepFrom(found, deed);
        outcome = step;
        return step.ok ? step.value.record : null;
      });
      if (!done.ok) return fail(faultWords(done.error));
      if (!outcome?.ok) {
        await refresh();
        return outcome ?? fail('the browser did not answer');
      }
      show(ok(outcome.value.after));
      channel.post({ says: 'stock' });
      void shelf.persist();
      return outcome;

      function stepFrom(found: unknown, asked: StockDeed): Result<Step, string> {
        const before = openStock(found, open);
        if (!before.ok) return before;
        const after = changeStock(before.value, asked);
        if (!after.ok) return after;
        const step = { before: before.value, after: after.value };
        if (step.before === step.after) return ok({ ...step, record: null });
        const record = stockRecord(found, step.after, clock.now());
        return record.ok ? ok({ ...step, record: record.value }) : record;
      }
    },
  };
}

const keepers = new WeakMap<Editor, StockKeeper>();

/** The keeper of my stock in this tab, made when it is first asked for. */
export function stockKeeperOf(editor: Editor): StockKeeper {
  const before = keepers.get(editor);
  if (before) return before;
  const keeper = createStockKeeper({
    shelf: editor.keep.getState().keeper?.shelf ?? browserShelf(),
    channel: browserChannel('ribbonwright-stock'),
    clock: editor.platform.clock,
  });
  keepers.set(editor, keeper);
  return keeper;
}
