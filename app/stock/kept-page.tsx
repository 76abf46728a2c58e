import '../style/stock-own.css';
import { type ReactNode, useState } from 'react';
import {
  allOf,
  type KindSort,
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
import { Icon } from '../panels/icon.tsx';
import { counted, kindFacts, ownedOf } from './kind-words.ts';
import type { StockKeeper } from './my-stock.ts';
import { OfferCard, type OfferDeeds } from './offer-card.tsx';
import { OwnedField } from './owned-field.tsx';
import { Said } from './said.tsx';
import { useMyStock, useOffers } from './use-my-stock.ts';

const GROUPS: readonly (readonly [sort: KindSort, title: string])[] = [
  ['module', 'Modules'],
  ['ribbon', 'Ribbons and leads'],
  ['bus', 'Buses'],
];

/** The same row whatever is said of the kind, so that its field keeps the keys. */
const rowKey = ({ sort, kept, here }: Offer): string => `${sort} ${(kept ?? here)?.id}`;

const ofSort = (offers: readonly Offer[], sort: KindSort): readonly Offer[] =>
  offers.filter((offer) => offer.sort === sort);

const names = (offers: readonly Offer[]): string =>
  offers.length === 1 ? (offers[0]?.name ?? '') : counted(offers.length, 'kind');

/** Kinds one below the other, under the name of their sort. */
function Groups({
  offers,
  row,
}: {
  readonly offers: readonly Offer[];
  readonly row: (offer: Offer) => ReactNode;
}) {
  return GROUPS.map(([sort, title]) => {
    const group = ofSort(offers, sort);
    if (group.length === 0) return null;
    return (
      <section key={sort} className="stock-group">
        <h4>{title}</h4>
        <ul>{group.map(row)}</ul>
      </section>
    );
  });
}

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
    setSaid(`${words} One undo takes it back.`);
  };
  const keep = (some: readonly Offer[], how: 'instead' | 'beside' = 'instead'): void => {
    const verb = some.length === 1 ? 'is' : 'are';
    void change(keepInStock(stock, kit, some, how), `${names(some)} ${verb} in my stock.`);
  };
  const remove = async ({ sort, kept, name }: Offer): Promise<void> => {
    if (!kept) return;
    const back: StockDeed = { do: 'keep', from: stock.layout.kit, kinds: [{ sort, id: kept.id }] };
    const isDone = await change({ do: 'remove', sort, id: kept.id }, `${name} is out of my stock.`);
    if (isDone) setRemoved(back);
  };
  const deeds: OfferDeeds = {
    take: (offer) => take([offer], `${offer.name} is as in my stock.`),
    keep: (offer, how) => keep([offer], how),
    leave: ({ key, name }) => void change({ do: 'leave', key }, `${name} is left as it is.`),
  };
  const save = async (): Promise<void> => {
    const [{ writeLayout }, files] = await Promise.all([
      import('../../src/document.ts'),
      editor.platform.files(),
    ]);
    const saved = await files.save(stock.layout.title, writeLayout(stock.layout));
    if (!saved.ok) setSaid(saved.error);
  };
  const bringBack = async (): Promise<void> => {
    const [{ openLayout, describeFailure }, files] = await Promise.all([
      import('../../src/document.ts'),
      editor.platform.files(),
    ]);
    const picked = await files.pick();
    if (!picked.ok) return setSaid(picked.error);
    if (picked.value === null) return;
    const opened = openLayout(picked.value);
    if (!opened.ok) return setSaid(`Not brought back: ${describeFailure(opened.error)}.`);
    const from = opened.value.kit;
    const done = await keeper.change({ do: 'keep', from, kinds: allOf(from) });
    if (!done.ok) return setSaid(`Not brought back: ${done.error}.`);
    const { before, after } = done.value;
    const came = allOf(after.layout.kit).length - allOf(before.layout.kit).length;
    setSaid(`${counted(came, 'kind')} came into my stock; nothing that was there has changed.`);
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
          onClick={() => kept.length > 0 && startFromStock(editor, stock)}
        >
          New case from my stock
        </button>
        <button type="button" className="plain" onClick={() => void save()}>
          Save as a file…
        </button>
        <button type="button" className="plain" onClick={() => void bringBack()}>
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
              <button
                type="button"
                className="plain"
                onClick={() => take(fromStock, `${names(fromStock)} are as in my stock.`)}
              >
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
      {hereOnly.length > 0 && (
        <section className="stock-part">
          <header>
            <h3>In this layout only</h3>
            <button type="button" className="plain" onClick={() => keep(hereOnly)}>
              Keep all {hereOnly.length} in my stock
            </button>
          </header>
          <Groups
            offers={hereOnly}
            row={(offer) => (
              <li key={rowKey(offer)}>
                <b>{offer.name}</b>
                <small>{offer.here && kindFacts(offer.here)}</small>
                <span className="row-deeds">
                  <button type="button" className="plain" onClick={() => keep([offer])}>
                    Keep<span className="unseen"> {offer.name} in my stock</span>
                  </button>
                </span>
              </li>
            )}
          />
        </section>
      )}

      {kept.length > 0 && (
        <section className="stock-part">
          <header>
            <h3>In my stock</h3>
          </header>
          <Groups
            offers={kept}
            row={(offer) => (
              <li key={rowKey(offer)}>
                <b>{offer.kept?.name}</b>
                <small>{offer.kept && kindFacts(offer.kept)}</small>
                {offer.kept && offer.sort !== 'bus' && (
                  <OwnedField
                    name={offer.kept.name}
                    owned={ownedOf(offer.kept)}
                    onOwned={(owned) => void setOwned(offer, owned)}
                  />
                )}
                <span className="row-deeds">
                  {offer.standing === 'stock' ? (
                    <button
                      type="button"
                      className="plain"
                      onClick={() => take([offer], `${offer.name} is in this layout.`)}
                    >
                      Put in this layout<span className="unseen">: {offer.name}</span>
                    </button>
                  ) : (
                    <small>in this layout</small>
                  )}
                  <button
                    type="button"
                    className="quiet icon"
                    aria-label={`Take ${offer.kept?.name} out of my stock`}
                    title="Take it out of my stock"
                    onClick={() => void remove(offer)}
                  >
                    <Icon name="close" />
                  </button>
                </span>
              </li>
            )}
          />
        </section>
      )}
      <p className="aside">
        My stock is kept by this browser, on this device, for all layouts; a layout carries copies of what it
        uses. The browser may clear it: save what matters as a file. What comes from a file or a bandmate’s
        layout never replaces anything here by itself.
      </p>
    </>
  );

  async function setOwned({ sort, kept: kind }: Offer, owned: number | undefined): Promise<void> {
    if (!kind || sort === 'bus') return;
    const { owned: _, ...rest } = kind as typeof kind & { owned?: number };
    const counts = { ...rest, ...(owned !== undefined && { owned }) };
    const swap = <T extends { readonly id: string }>(list: readonly T[]): readonly T[] =>
      list.map((each) => (each.id === kind.id ? (counts as unknown as T) : each));
    const { modules, ribbons } = stock.layout.kit;
    const from = {
      ...stock.layout.kit,
      ...(sort === 'module' ? { modules: swap(modules) } : { ribbons: swap(ribbons) }),
    };
    const words = `${kind.name}: ${owned === undefined ? 'not counted' : `${owned} owned`}.`;
    await change({ do: 'keep', from, kinds: [{ sort, id: kind.id, instead: kind.id }] }, words);
  }
}

/** My stock across all layouts, and how the kinds of this one stand to it. */
export function KeptPage() {
  const { keeper, state } = useMyStock();
  if (state.is === 'opening') return <p className="none">Looking…</p>;
  if (state.is === 'fault')
    return <p className="none">My stock cannot be shown: {state.why}. What is kept stays as it is.</p>;
  return <KeptStock keeper={keeper} stock={state.stock} />;
}
