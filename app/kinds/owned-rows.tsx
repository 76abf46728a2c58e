import { TextRow } from './field.tsx';

interface Props {
  readonly owned: string;
  readonly price: string;
  readonly problems: { readonly owned: string | undefined; readonly price: string | undefined };
  readonly onChange: (part: { readonly owned?: string; readonly price?: string }) => void;
  readonly onLeave: (field: 'owned' | 'price') => void;
}

/** How many one has and what one costs; both may stay empty. */
export const OwnedRows = ({ owned, price, problems, onChange, onLeave }: Props) => (
  <div className="pair">
    <TextRow
      label="I own"
      decimal
      size={4}
      placeholder="–"
      value={owned}
      problem={problems.owned}
      onText={(text) => onChange({ owned: text })}
      onLeave={() => onLeave('owned')}
    />
    <TextRow
      label="One costs"
      decimal
      size={6}
      placeholder="–"
      value={price}
      problem={problems.price}
      onText={(text) => onChange({ price: text })}
      onLeave={() => onLeave('price')}
    />
  </div>
);
