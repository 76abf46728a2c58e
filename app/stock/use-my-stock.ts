import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { type MyStock, type Offer, offersFor } from '../../src/stock.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { type StockKeeper, type StockState, stockKeeperOf } from './my-stock.ts';

/** My stock as it is kept, looked at anew when a page shows it. */
export function useMyStock(): { readonly keeper: StockKeeper; readonly state: StockState } {
  const keeper = stockKeeperOf(useEditor());
  const state = useStore(keeper.store);
  useEffect(() => void keeper.refresh(), [keeper]);
  return { keeper, state };
}

/** How the kinds of the layout stand to a stock. */
export function useOffers(stock: MyStock | null): readonly Offer[] {
  const kit = useLayout((layout) => layout.kit);
  return useMemo(() => (stock ? offersFor(stock, kit) : []), [stock, kit]);
}
