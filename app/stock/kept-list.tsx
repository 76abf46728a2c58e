import type { ReactNode } from 'react';
import type { KindSort, Offer } from '../../src/stock.ts';
import { Icon } from '../panels/icon.tsx';
import { kindFacts, ownedOf } from './kind-words.ts';
import { OwnedField } from './owned-field.tsx';

const GROUPS: readonly (readonly [sort: KindSort, title: string])[] = [
  ['module', 'Modules'],
  ['ribbon', 'Ribbons and leads'],
  ['bus', 'Buses'],
];

/** The same row whatever is said of the kind, so that its field keeps the keys. */
const rowKey = ({ sort, kept, here }: Offer): string => `${sort} ${(kept ?? here)?.id}`;

interface GroupsProps {
  readonly offers: readonly Offer[];
  readonly row: (offer: Offer) => ReactNode;
}

/** Kinds one below the other, under the name of their sort. */
function Groups({ offers, row }: GroupsProps) {
  return GROUPS.map(([sort, title]) => {
    const group = offers.filter((offer) => offer.sort === sort);
    if (group.length === 0) return null;
    return (
      <section key={sort} className="stock-group">
        <h4>{title}</h4>
        <ul>
          {group.map((offer) => (
            <li key={rowKey(offer)}>{row(offer)}</li>
          ))}
        </ul>
      </section>
    );
  });
}

interface HereProps {
  readonly offers: readonly Offer[];
  readonly onKeep: (offers: readonly Offer[]) => void;
}

/** Kinds of the layout of which my stock has none. */
export const HereOnly = ({ offers, onKeep }: HereProps) => (
  <section className="stock-part">
    <header>
      <h3>In this layout only</h3>
      <button type="button" className="plain" onClick={() => onKeep(offers)}>
        Keep all {offers.length} in my stock
      </button>
    </header>
    <Groups
      offers={offers}
      row={(offer) => (
        <>
          <b>{offer.name}</b>
          <small>{offer.here && kindFacts(offer.here)}</small>
          <span className="row-deeds">
            <button type="button" className="plain" onClick={() => onKeep([offer])}>
              Keep<span className="unseen"> {offer.name} in my stock</span>
            </button>
          </span>
        </>
      )}
    />
  </section>
);

interface KeptProps {
  readonly offers: readonly Offer[];
  readonly onOwned: (offer: Offer, owned: number | undefined) => void;
  readonly onTake: (offer: Offer) => void;
  readonly onRemove: (offer: Offer) => void;
}

/** What my stock has: how many of it I own, and whether the layout has it. */
export const KeptList = ({ offers, onOwned, onTake, onRemove }: KeptProps) => (
  <section className="stock-part">
    <header>
      <h3>In my stock</h3>
    </header>
    <Groups
      offers={offers}
      row={(offer) =>
        offer.kept && (
          <>
            <b>{offer.kept.name}</b>
            <small>{kindFacts(offer.kept)}</small>
            {offer.sort !== 'bus' && (
              <OwnedField
                name={offer.kept.name}
                owned={ownedOf(offer.kept)}
                onOwned={(owned) => onOwned(offer, owned)}
              />
            )}
            <span className="row-deeds">
              {offer.standing === 'stock' ? (
                <button type="button" className="plain" onClick={() => onTake(offer)}>
                  Put in this layout<span className="unseen">: {offer.name}</span>
                </button>
              ) : (
                <small>in this layout</small>
              )}
              <button
                type="button"
                className="quiet icon"
                aria-label={`Take ${offer.kept.name} out of my stock`}
                title="Take it out of my stock"
                onClick={() => onRemove(offer)}
              >
                <Icon name="close" />
              </button>
            </span>
          </>
        )
      }
    />
  </section>
);
