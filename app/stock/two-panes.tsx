import { type ReactNode, useEffect, useRef } from 'react';
import { Icon } from '../panels/icon.tsx';

interface Props {
  readonly list: ReactNode;
  /** What is chosen from the list; on a narrow screen it stands in the list's place. */
  readonly detail: ReactNode;
  /** Tells what is chosen apart; its head takes the keys when another one is. */
  readonly chosen: string | null;
  readonly onBack: () => void;
}

/** A list, and beside it what was chosen from it. */
export function TwoPanes({ list, detail, chosen, onBack }: Props) {
  const pane = useRef<HTMLDivElement>(null);
  const root = useRef<HTMLDivElement>(null);
  const before = useRef(chosen);
  useEffect(() => {
    if (before.current === chosen) return;
    before.current = chosen;
    const target =
      chosen === null
        ? root.current?.querySelector<HTMLElement>('.list-pane button')
        : pane.current?.querySelector<HTMLElement>('.field, button');
    target?.focus();
    pane.current?.scrollTo({ top: 0 });
  }, [chosen]);
  // What had the keys may have gone with what it changed.
  useEffect(() => {
    if (document.activeElement === document.body)
      pane.current?.querySelector<HTMLElement>('.detail .field, .back')?.focus();
  });
  return (
    <div className={`stock-form two-panes${chosen === null ? '' : ' chosen'}`} ref={root}>
      <div className="list-pane">{list}</div>
      <div className="detail-pane" ref={pane}>
        {chosen !== null && (
          <button type="button" className="quiet back" onClick={onBack}>
            <Icon name="chevron" />
            The list
          </button>
        )}
        {detail}
      </div>
    </div>
  );
}
