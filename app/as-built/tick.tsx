import type { ReactNode } from 'react';

interface Props {
  readonly checked: boolean;
  /** Who ticked it and when. */
  readonly mark?: { readonly by?: string; readonly at?: string } | undefined;
  /** Its name where what stands beside it does not tell enough. */
  readonly name?: string;
  readonly onChange: (checked: boolean) => void;
  readonly children: ReactNode;
}

/** A box to tick, with the whole of its line to hit. */
export function Tick({ checked, mark, name, onChange, children }: Props) {
  const when = [mark?.by, mark?.at].filter(Boolean).join(', ');
  return (
    <label className="bench-tick">
      <input
        type="checkbox"
        aria-label={name}
        checked={checked}
        onChange={(event) => onChange(event.currentTarget.checked)}
      />
      <span>
        {children}
        {checked && when !== '' && <small>{when}</small>}
      </span>
    </label>
  );
}
