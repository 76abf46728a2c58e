import '../style/stock-own.css';
import { useState } from 'react';
import {
  keepInStock,
  type MyStock,
  type Offer,
  openOffers,
  type StockDeed,
  takeFromStock,
} from '../../src/stock.ts';
import { perform } from '../actions/action.ts';
import { startFromStock } from '../actions/new-from-stock.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { bringIntoStock, countDeed, saveStock } from './kept-deeds.ts';
import { HereOnly, KeptList } from './kept-list.tsx';
import { counted } from './kind-words.ts';
import type { StockKeeper } from './my-stock.ts';
import { OfferCard, type OfferDeeds } from './offer-card.tsx';
import { Said } from './said.tsx';
import { useMyStock, useOffers } from './use-my-stock.ts';

const names = (offers: readonly Offer[]): string =>
  offers.length === 1 ? `${offers[0]?.name} is` : `${counted(offers.length, 'kind')} are`;

interface Props {
  readonly stock: MyStock;
  readonly keeper: StockKeeper;
}

function KeptStock({ stock, keeper }: Props) {
  const editor = useEditor();
  const kit = useLayout((layout) => layout.kit);
  const offers = useOffers(stock);
  const [said, setSaid] = useState('');
  const [removed, setRemoved] = useState<StockDeed | null>(null);

  const change = async (deed: StockDeed, words: string): Promise<boolean> => {
    const done = await keeper.change(deed);
    setSaid(done.ok ? words : `Not done: ${done.error}.`);
    if (done.ok) setRemoved(null);
    return done.ok;
  };
  const take = (some: readonly Offer[], words: string): void => {
    const edit = takeFromStock(stock, kit, some);
    if (!edit) return;
    perform(editor, edit);
    setSaid(`${names(some)} ${words}. One undo takes it back.`);
  };
  const keep = (some: readonly Offer[], how: 'instead' | 'beside' = 'instead'): void =>
    void change(keepInStock(stock, kit, some, how), `${names(some)} in my stock.`);
  const remove = async ({ sort, kept, name }: Offer): Promise<void> => {
    if (!kept) return;
    const back: StockDeed = { do: 'keep', from: stock.layout.kit, kinds: [{ sort, id: kept.id }] };
    const isDone = await change({ do: 'remove', sort, id: kept.id }, `${name} is out of my stock.`);
    if (isDone) setRemoved(back);
  };
  const count = (offer: Offer, owned: number | undefined): void => {
    const deed = countDeed(stock, offer, owned);
    const words = owned === undefined ? 'not counted' : `${owned} owned`;
    if (deed) void change(deed, `${offer.name}: ${words}.`);
  };
  const deeds: OfferDeeds = {
    take: (offer) => take([offer], 'as in my stock'),
    keep: (offer, how) => keep([offer], how),
    leave: ({ key, name }) => void change({ do: 'leave', key }, `${name} is left as it is.`),
  };

  const toDecide = openOffers(stock, offers);
  const kept = offers.filter((offer) => offer.kept);
  const hereOnly = offers.filter(({ standing }) => standing === 'here');
  const fromStock = toDecide.filter(({ standing }) => standing === 'newer' || standing === 'counts');
  return (
    <>
      <div className="stock-deeds">
        <button
          type="button"
          className="do"
          aria-disabled={kept.length === 0}
          onClick={() => kept.length > 0 && void startFromStock(editor, stock)}
        >
          New case from my stock
        </button>
        <button type="button" className="plain" onClick={async () => setSaid(await saveStock(editor, stock))}>
          Save as a file…
        </button>
        <button
          type="button"
          className="plain"
          onClick={async () => setSaid(await bringIntoStock(editor, keeper))}
        >
          Bring back a file…
        </button>
      </div>
      <div className="said-line">
        <Said words={said} />
        {removed && (
          <button type="button" className="plain" onClick={() => void change(removed, 'It is back.')}>
            Put it back
          </button>
        )}
      </div>

      {toDecide.length > 0 && (
        <section className="stock-part">
          <header>
            <h3>To decide</h3>
            {fromStock.length > 1 && (
              <button type="button" className="plain" onClick={() => take(fromStock, 'as in my stock')}>
                Take all {fromStock.length} from my stock
              </button>
            )}
          </header>
          <ul className="offers">
            {toDecide.map((offer) => (
              <OfferCard key={offer.key} offer={offer} deeds={deeds} />
            ))}
          </ul>
        </section>
      )}
      {stock.left.length > 0 && (
        <button
          type="button"
          className="quiet look-again"
          onClick={() => void change({ do: 'look again' }, 'All that was left is offered again.')}
        >
          Offer again what I left
        </button>
      )}
      {kept.length === 0 && (
        <p className="none">
          Nothing is kept here yet. Kinds that you make come here by themselves; those of a layout when you
          say so.
        </p>
      )}
      {hereOnly.length > 0 && <HereOnly offers={hereOnly} onKeep={keep} />}
      {kept.length > 0 && (
        <KeptList
          offers={kept}
          onOwned={count}
          onTake={(offer) => take([offer], 'in this layout')}
          onRemove={(offer) => void remove(offer)}
        />
      )}
      <p className="aside">
        My stock is kept by this browser, on this device, for all layouts; a layout carries copies of what it
        uses. The browser may clear it: save what matters as a file. What comes from a file or a bandmate’s
        layout never replaces anything here by itself.
      </p>
    </>
  );
}

/** My stock across all layouts, and how the kinds of this one stand to it. */
export function KeptPage() {
  const { keeper, state } = useMyStock();
  if (state.is === 'opening') return <p className="none">Looking…</p>;
  if (state.is === 'fault')
    return <p className="none">My stock cannot be shown: {state.why}. What is kept stays as it is.</p>;
  return <KeptStock keeper={keeper} stock={state.stock} />;
}
