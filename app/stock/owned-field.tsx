import { useEffect, useState } from 'react';
import { isCount } from '../kinds/typed.ts';

interface Props {
  readonly name: string;
  readonly owned: number | undefined;
  readonly onOwned: (owned: number | undefined) => void;
}

const textOf = (owned: number | undefined): string => (owned === undefined ? '' : String(owned));

/** How many I own: typed, and kept when the field is left or Enter is pressed; what is no count goes back. */
export function OwnedField({ name, owned, onOwned }: Props) {
  const [text, setText] = useState(textOf(owned));
  useEffect(() => setText(textOf(owned)), [owned]);
  const commit = (): void => {
    const value = text.trim() === '' ? undefined : Number(text);
    if (value !== undefined && !isCount(value)) setText(textOf(owned));
    else if (value !== owned) onOwned(value);
  };
  return (
    <label className="owned">
      <small>
        own<span className="unseen"> of {name}</span>
      </small>
      <input
        className="field"
        inputMode="numeric"
        size={3}
        placeholder="–"
        value={text}
        onChange={({ target }) => setText(target.value)}
        onBlur={commit}
        onKeyDown={({ key }) => {
          if (key === 'Enter') commit();
        }}
      />
    </label>
  );
}
