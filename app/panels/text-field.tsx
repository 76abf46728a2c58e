import { type KeyboardEvent, useEffect, useRef, useState } from 'react';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onCommit: (value: string) => void;
  readonly className?: string;
  /** Where the text is a figure. */
  readonly decimal?: boolean;
  /** What stands there while nothing is typed. */
  readonly placeholder?: string | undefined;
  readonly autoFocus?: boolean;
  readonly onLeave?: () => void;
}

/** Text edited in place: Enter or leaving keeps it, Escape puts back what was there. */
export function TextField({
  label,
  value,
  onCommit,
  className = '',
  decimal = false,
  placeholder,
  autoFocus = false,
  onLeave,
}: Props) {
  const [draft, setDraft] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (autoFocus) input.current?.select();
  }, [autoFocus]);

  const leave = (): void => {
    if (draft !== null && draft !== value) onCommit(draft);
    setDraft(null);
    onLeave?.();
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') event.currentTarget.blur();
    if (event.key !== 'Escape') return;
    if (draft !== null || onLeave) event.stopPropagation();
    setDraft(null);
    onLeave?.();
  };

  return (
    <input
      className={`field ${className}`}
      aria-label={label}
      title={label}
      value={draft ?? value}
      placeholder={placeholder}
      inputMode={decimal ? 'decimal' : 'text'}
      spellCheck={false}
      autoComplete="off"
      ref={input}
      onChange={(event) => setDraft(event.currentTarget.value)}
      onBlur={leave}
      onKeyDown={onKeyDown}
    />
  );
}
