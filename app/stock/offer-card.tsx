import type { Offer } from '../../src/stock.ts';
import { SORT_WORDS } from './kind-words.ts';

const STANDING: Readonly<Partial<Record<Offer['standing'], string>>> = {
  newer: 'Newer in my stock',
  other: 'This layout has another',
  counts: 'Counts or notes differ',
};

/** What can be done about one. */
export interface OfferDeeds {
  take(offer: Offer): void;
  keep(offer: Offer, how: 'instead' | 'beside'): void;
  leave(offer: Offer): void;
}

/** A kind that the layout has otherwise than my stock: what differs, and either way to settle it. */
export function OfferCard({ offer, deeds }: { readonly offer: Offer; readonly deeds: OfferDeeds }) {
  const { name, sort, standing, differences } = offer;
  const of = <span className="unseen"> of {name}</span>;
  const take = (
    <button type="button" className="plain" onClick={() => deeds.take(offer)}>
      Take my stock’s{of}
    </button>
  );
  const keep = (
    <button type="button" className="plain" onClick={() => deeds.keep(offer, 'instead')}>
      Put this layout’s into my stock{of}
    </button>
  );
  return (
    <li className="offer">
      <p className="offer-head">
        <b>{name}</b>
        <small>
          {SORT_WORDS[sort]} · {STANDING[standing]}
        </small>
      </p>
      <ul className="differences">
        {differences.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <div className="offer-deeds">
        {standing === 'newer' ? take : keep}
        {standing === 'newer' ? keep : take}
        {standing === 'other' && sort !== 'bus' && (
          <button type="button" className="plain" onClick={() => deeds.keep(offer, 'beside')}>
            Keep both{of}
          </button>
        )}
        <button type="button" className="quiet" onClick={() => deeds.leave(offer)}>
          Leave it{of}
        </button>
      </div>
    </li>
  );
}
