import { openOffers } from '../../src/stock.ts';
import { useMyStock, useOffers } from './use-my-stock.ts';

/** How many kinds of the layout ask for a decision. */
export function KeptMark() {
  const { state } = useMyStock();
  const stock = state.is === 'open' ? state.stock : null;
  const offers = useOffers(stock);
  const open = stock ? openOffers(stock, offers).length : 0;
  return open > 0 ? (
    <>
      <span className="unseen">, </span>
      <small className="page-mark">
        {open}
        <span className="unseen"> to decide</span>
      </small>
    </>
  ) : null;
}
