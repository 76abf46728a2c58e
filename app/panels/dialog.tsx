import type { KeyboardEvent, ReactNode, RefObject } from 'react';
import '../style/dialog.css';
import { Icon } from './icon.tsx';
import { useModal } from './use-modal.ts';

interface Props {
  /** Class of its own, and the root of its ids. */
  readonly name: string;
  /** Further classes that say in which state it is. */
  readonly state?: string | undefined;
  /** In its head; without one it brings its own head, and `label` names it. */
  readonly title?: ReactNode;
  readonly label?: string;
  /** In the head beside the title. */
  readonly beside?: ReactNode;
  /** Whether the head has a button that closes it; Escape always does. */
  readonly closes?: boolean;
  /** What has the keys at first, and who gets them if what had them is gone: see `useModal`. */
  readonly first?: string;
  readonly fallback?: string;
  readonly ref?: RefObject<HTMLDialogElement | null>;
  /** Escape, if it is to do something else before it closes. */
  readonly onEscape?: () => void;
  readonly onClose: () => void;
  readonly onKeyDown?: (event: KeyboardEvent<HTMLDialogElement>) => void;
  readonly children: ReactNode;
}

/** A dialog over everything else: its frame, its head and the ways out of it. */
export function Dialog(props: Props) {
  const { name, state, title, label, beside, closes = true, first, fallback, onClose, children } = props;
  const { onEscape = onClose, onKeyDown } = props;
  const ref = useModal(first, fallback, props.ref);
  return (
    <dialog
      ref={ref}
      className={['dialog', name, state].filter(Boolean).join(' ')}
      aria-label={label}
      aria-labelledby={label === undefined ? `${name}-title` : undefined}
      onKeyDown={onKeyDown}
      onCancel={(event) => {
        event.preventDefault();
        onEscape();
      }}
    >
      {title !== undefined && (
        <div className="dialog-head">
          <h2 id={`${name}-title`}>{title}</h2>
          {beside}
          {closes && (
            <button
              type="button"
              className="quiet icon"
              aria-label="Close"
              title="Close (Esc)"
              onClick={onClose}
            >
              <Icon name="close" />
            </button>
          )}
        </div>
      )}
      {children}
    </dialog>
  );
}
