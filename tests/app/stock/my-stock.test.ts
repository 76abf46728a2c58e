import { describe, expect, it } from 'vitest';
import { bringBack, writeBundle } from '../../../app/keep/bundle.ts';
import { firstRecord } from '../../../app/keep/kept-layout.ts';
import { keepMade } from '../../../app/stock/keep-made.ts';
import { createStockKeeper, type StockKeeper, stockKeeperOf } from '../../../app/stock/my-stock.ts';
import { isStockRecord, STOCK_ID } from '../../../app/stock/stock-record.ts';
import { demoLayout, emptyLayout } from '../../../src/index.ts';
import { allOf, type StockDeed } from '../../../src/stock.ts';
import { fakeAir, fakeClock, fakeShelf } from '../fakes.ts';
import { Browser, settled } from '../keep/browser.ts';

const { kit } = demoLayout();
const KEEP_ALL: StockDeed = { do: 'keep', from: kit, kinds: allOf(kit) };
const keepOne = (id: string): StockDeed => ({ do: 'keep', from: kit, kinds: [{ sort: 'module', id }] });

function browser() {
  const shelf = fakeShelf();
  const air = fakeAir();
  const tab = (): StockKeeper => createStockKeeper({ shelf, channel: air(), clock: fakeClock() });
  return { shelf, tab };
}

function modulesIn(keeper: StockKeeper): string[] {
  const state = keeper.store.getState();
  return state.is === 'open' ? state.stock.layout.kit.modules.map(({ name }) => name) : [state.is];
}

describe('my stock in the browser', () => {
  it('is empty where nothing was ever kept, and writes nothing before there is something', async () => {
    const { shelf, tab } = browser();
    const one = tab();
    await one.refresh();
    expect(modulesIn(one)).toEqual([]);
    expect(shelf.items.size).toBe(0);
  });

  it('is there again, and seen by the other tab', async () => {
    const { shelf, tab } = browser();
    const [one, other] = [tab(), tab()];
    await one.change(KEEP_ALL);
    await settled();
    expect(modulesIn(other)).toEqual(kit.modules.map(({ name }) => name));
    const later = tab();
    await later.refresh();
    expect(modulesIn(later)).toEqual(modulesIn(one));
    expect(shelf.persistAsked).toBe(1);
    const writes = shelf.writes;
    await one.change(KEEP_ALL);
    expect(shelf.writes, 'nothing new, nothing written').toBe(writes);
  });

  it('loses nothing of two tabs that change it without hearing of each other', async () => {
    const { shelf } = browser();
    const deaf = { post: () => {}, listen: () => () => {} };
    const tab = () => createStockKeeper({ shelf, channel: deaf, clock: fakeClock() });
    const [one, other] = [tab(), tab()];
    await Promise.all([one.refresh(), other.refresh()]);
    await Promise.all([
      one.change(keepOne('gull')),
      other.change(keepOne('kelp')),
      one.change(keepOne('cobble')),
    ]);
    await other.refresh();
    expect(modulesIn(other).sort()).toEqual(['Cobble', 'Gull', 'Kelp']);
    const record = shelf.items.get(STOCK_ID);
    expect(isStockRecord(record) && record.revision).toBe(3);
  });

  it('tells a fault and keeps what is shown; the next try may do it', async () => {
    const { shelf, tab } = browser();
    const one = tab();
    await one.change(keepOne('gull'));
    shelf.fault = 'full';
    expect(await one.change(keepOne('kelp'))).toEqual({ ok: false, error: 'storage is full' });
    expect(modulesIn(one)).toEqual(['Gull']);
    shelf.fault = 'blocked';
    const other = tab();
    await other.refresh();
    expect(other.store.getState()).toEqual({ is: 'fault', why: 'storage is blocked' });
    shelf.fault = null;
    await one.change(keepOne('kelp'));
    expect(modulesIn(one)).toEqual(['Gull', 'Kelp']);
  });

  it.each([
    ['something else', { id: STOCK_ID, title: 'x' }, /no stock that this program can read/],
    [
      'a newer program’s',
      {
        id: STOCK_ID,
        is: 'stock',
        text: '{"format":"ribbonwright","version":9}',
        earlier: {},
        left: [],
        revision: 4,
      },
      /made by a newer program/,
    ],
    [
      'a damaged one',
      { id: STOCK_ID, is: 'stock', text: '{"format"', earlier: {}, left: [], revision: 4 },
      /not a layout/,
    ],
  ])('never writes over %s', async (_, found, why) => {
    const { shelf, tab } = browser();
    shelf.items.set(STOCK_ID, found);
    const one = tab();
    const done = await one.change(KEEP_ALL);
    expect(done.ok ? '' : done.error).toMatch(why);
    expect(shelf.items.get(STOCK_ID)).toEqual(found);
    expect(one.store.getState()).toMatchObject({ is: 'fault', why: expect.stringMatching(why) });
  });

  it('keeps keys that this program does not know, in the record and in its text', async () => {
    const { shelf, tab } = browser();
    const one = tab();
    await one.change(keepOne('gull'));
    const record = shelf.items.get(STOCK_ID) as { readonly text: string };
    const layout = JSON.parse(record.text);
    const text = JSON.stringify({ ...layout, later: 1, kit: { ...layout.kit, later: 2 } });
    shelf.items.set(STOCK_ID, { ...record, text, later: 3 });
    await one.change(keepOne('kelp'));
    const after = shelf.items.get(STOCK_ID) as { readonly text: string };
    expect(after).toMatchObject({ later: 3 });
    expect(JSON.parse(after.text)).toMatchObject({ later: 1, kit: { later: 2 } });
  });

  it('is no layout to those that are listed, and no file of layouts takes its place', async () => {
    const shared = new Browser();
    const tab = await shared.open();
    const { editor } = tab.driver;
    expect(await keepMade(editor, [{ sort: 'module', id: 'cobble' }])).toBe(true);
    expect(shared.all.map(({ id }) => id)).not.toContain(STOCK_ID);
    const before = shared.shelf.items.get(STOCK_ID);
    const rival = firstRecord({ ...emptyLayout(), id: STOCK_ID, title: 'Rival' }, STOCK_ID, 5);
    expect(await bringBack(editor, writeBundle([rival]))).toBe('1 layout brought back.');
    expect(shared.shelf.items.get(STOCK_ID)).toEqual(before);
    expect(shared.all.map(({ title }) => title)).toContain('Rival');
  });

  it('takes in what is made, but nothing in the place of another', async () => {
    const shared = new Browser();
    const tab = await shared.open();
    const { editor } = tab.driver;
    const keeper = stockKeeperOf(editor);
    await keepMade(editor, [{ sort: 'module', id: 'cobble' }]);
    const [cobble] = editor.layouts.layout().kit.modules.filter(({ id }) => id === 'cobble');
    if (!cobble) throw new Error('no Cobble');
    editor.layouts.run({ type: 'change-module-kind', kind: { ...cobble, widthHp: 6 } });
    await keepMade(editor, [
      { sort: 'module', id: 'cobble' },
      { sort: 'module', id: 'gull' },
    ]);
    const state = keeper.store.getState();
    const kept = state.is === 'open' ? state.stock.layout.kit.modules : [];
    expect(kept.map(({ name, widthHp }) => `${name} ${widthHp}`)).toEqual(['Cobble 5', 'Gull 8']);
  });
});
