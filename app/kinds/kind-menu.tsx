import '../style/kind-menu.css';
import { type KeyboardEvent, useLayoutEffect, useRef } from 'react';
import { applyEdit } from '../../src/index.ts';
import { perform } from '../actions/action.ts';
import { changeKind, duplicateKind, type InStock, removalOf } from '../actions/kinds.ts';
import { useEditor, useLayout } from '../hooks.ts';

export interface MenuPlace extends InStock {
  readonly name: string;
  readonly opener: HTMLElement;
}

interface Props {
  readonly at: MenuPlace;
  readonly onClose: () => void;
}

/** What can be done to a kind in stock; why it cannot be removed stands with it. */
export function KindMenu({ at, onClose }: Props) {
  const editor = useEditor();
  const layout = useLayout((present) => present);
  const ref = useRef<HTMLDivElement>(null);
  const removal = applyEdit(layout, removalOf(at));
  const { opener, name: _, ...inStock } = at;

  useLayoutEffect(() => {
    const menu = ref.current;
    if (!menu) return;
    const { left, right, top } = opener.getBoundingClientRect();
    if (!menu.matches(':popover-open')) menu.showPopover();
    const { offsetWidth } = menu;
    menu.style.left = `${Math.max(8, Math.min((left + right) / 2 - offsetWidth / 2, innerWidth - offsetWidth - 8))}px`;
    menu.style.bottom = `${Math.max(8, innerHeight - top + 4)}px`;
    menu.querySelector('button')?.focus();
  }, [opener]);

  /** Closed first, so that what is opened next gives the focus back to the tile. */
  const leaveTo = (then: () => void) => (): void => {
    ref.current?.hidePopover();
    opener.focus();
    then();
    requestAnimationFrame(() => {
      if (!opener.isConnected) document.querySelector<HTMLElement>('.new-kind')?.focus();
    });
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>): void => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (!step) return;
    event.preventDefault();
    event.stopPropagation();
    const items = [...event.currentTarget.querySelectorAll('button')];
    const now = items.indexOf(document.activeElement as HTMLButtonElement);
    items[(now + step + items.length) % items.length]?.focus();
  };

  return (
    <div
      ref={ref}
      popover="auto"
      role="menu"
      aria-label={at.name}
      tabIndex={-1}
      className="sheet-pop kind-menu"
      onKeyDown={onKeyDown}
      onToggle={(event) => event.newState === 'closed' && onClose()}
    >
      <b>{at.name}</b>
      <button type="button" role="menuitem" onClick={leaveTo(() => changeKind(editor, at))}>
        Change…
      </button>
      {at.sort === 'module' && (
        <button
          type="button"
          role="menuitem"
          onClick={leaveTo(() => editor.session.setState({ kindDesk: { ...inStock, full: true } }))}
        >
          All facts…
        </button>
      )}
      <button
        type="button"
        role="menuitem"
        onClick={leaveTo(() => {
          const name = duplicateKind(editor, at);
          if (name) editor.session.setState({ spoken: `${name} is in stock.` });
        })}
      >
        Duplicate
      </button>
      <button
        type="button"
        role="menuitem"
        aria-disabled={!removal.ok}
        onClick={leaveTo(() => perform(editor, removalOf(at)))}
      >
        Remove
        {!removal.ok && <small>{removal.error.message}</small>}
      </button>
    </div>
  );
}
