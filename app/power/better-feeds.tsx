import { useMemo, useRef } from 'react';
import { type BetterFeed, searchBetterFeeds, type WholeTake } from '../../src/index.ts';
import { perform } from '../actions/action.ts';
import { useEditor } from '../hooks.ts';
import { millivolts } from './power-words.ts';
import { useSearch } from './use-search.ts';

/** Offered at once; the next come as these are taken. */
const MOST_OFFERED = 4;

/** Modules that would better be fed than those that are, each one tap and one undo. */
export function BetterFeeds({ take }: { readonly take: WholeTake }) {
  const editor = useEditor();
  const section = useRef<HTMLElement>(null);
  const found = useSearch(useMemo(() => () => searchBetterFeeds(take), [take]));
  const carryOut = ({ mend, to }: BetterFeed): void => {
    editor.session.setState({ spoken: `${to} is fed now.` });
    perform(editor, mend.edit);
    // The button goes with what it offered.
    section.current?.focus({ preventScroll: true });
  };
  return (
    <section ref={section} className="better-feeds" aria-label="Where to feed" tabIndex={-1}>
      <h3>Where to feed</h3>
      {found === null && <p className="aside">Trying other modules…</p>}
      {found?.length === 0 && (
        <p className="aside">No group would gain 1 mV or more by its lead on another of its modules.</p>
      )}
      {found?.slice(0, MOST_OFFERED).map((feed) => (
        <div key={`${feed.from} ${feed.to}`} className="remedy">
          <button type="button" className="mend" onClick={() => carryOut(feed)}>
            Feed {feed.to} instead of {feed.from}
          </button>
          <p className="aside">
            Worst loss of the group {millivolts(feed.nowMv)} → {millivolts(feed.thenMv)} mV.
          </p>
        </div>
      ))}
      {found && found.length > MOST_OFFERED && (
        <p className="aside">and {found.length - MOST_OFFERED} more, after these</p>
      )}
    </section>
  );
}
