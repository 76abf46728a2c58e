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

/** The way back where the list is covered, else the first thing to be typed or pressed. */
function takeKeys(root: HTMLElement, isChosen: boolean): void {
  const back = root.querySelector<HTMLElement>('.back');
  const isCovered = back?.checkVisibility() === true;
  const first = isChosen ? '.detail .field, .detail button' : '.list-pane button';
  const target = isCovered ? back : root.querySelector<HTMLElement>(first);
  target?.focus();
}

/** A list, and beside it what was chosen from it. */
export function TwoPanes({ list, detail, chosen, onBack }: Props) {
  const root = useRef<HTMLDivElement>(null);
  const before = useRef(chosen);
  useEffect(() => {
    // What had the keys may have gone with what it changed.
    const isLost = document.activeElement === document.body;
    if (before.current === chosen && !isLost) return;
    const isOther = before.current !== chosen;
    before.current = chosen;
    if (root.current) takeKeys(root.current, chosen !== null);
    if (isOther) root.current?.querySelector('.detail-pane')?.scrollTo({ top: 0 });
  });
  return (
    <div className={`stock-form two-panes${chosen === null ? '' : ' chosen'}`} ref={root}>
      <div className="list-pane">{list}</div>
      <div className="detail-pane">
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
