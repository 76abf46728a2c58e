import { useDeferredValue, useId, useMemo, useState } from 'react';
import { checks, effectOf, type Layout } from '../../src/index.ts';
import {
  type ChangedBy,
  type Chosen,
  changedBy,
  differingKeys,
  differingParts,
  merge,
  type Part,
  partWords,
} from '../../src/share.ts';
import { counted } from '../kinds/loss.ts';
import { EffectLines } from '../stock/effect-lines.tsx';
import type { Kin } from './find-kin.ts';

const MOST_TOLD = 200;

interface Row {
  readonly part: Part;
  readonly words: string;
  /** `undefined`: what both come from is not known. */
  readonly by: ChangedBy | undefined;
}

interface Group {
  readonly name: string;
  readonly rows: readonly Row[];
}

/** Differences of the whole, then take by take. */
function grouped(rows: readonly Row[], { takes }: Layout): readonly Group[] {
  const of = (take: string | undefined): readonly Row[] => rows.filter(({ part }) => part.take === take);
  return [
    { name: 'Kit and takes', rows: of(undefined) },
    ...takes.map(({ id, name }) => ({ name, rows: of(id) })),
  ].filter((group) => group.rows.length > 0);
}

const BY: Readonly<Record<ChangedBy, string>> = {
  mine: 'changed by you',
  theirs: 'changed by them',
  both: 'changed by both',
};

function rowsOf({ layout: mine, before }: Kin, theirs: Layout): readonly Row[] {
  const parts = differingParts(mine, theirs);
  const words = partWords(mine, theirs, parts);
  const since = before && ([differingKeys(before, mine), differingKeys(before, theirs)] as const);
  return parts.map((part) => ({
    part,
    words: words.get(part.key) ?? '',
    by: since && changedBy(part, ...since),
  }));
}

interface Props {
  readonly kin: Kin;
  readonly theirs: Layout;
  readonly onTake: (merged: Layout, count: number) => void;
}

/** What differs, part by part: mine stays, or theirs comes in its place. What comes of it is told before it is done. */
export function Differences({ kin, theirs, onTake }: Props) {
  const { layout: mine, isOpen, before } = kin;
  const rows = useMemo(() => rowsOf(kin, theirs), [kin, theirs]);
  const first = useMemo(() => {
    const wanted = new Set(rows.flatMap(({ part, by }) => (by === 'theirs' ? [part.key] : [])));
    return merge(mine, theirs, wanted, 'theirs');
  }, [rows, mine, theirs]);
  const [merged, setMerged] = useState(first);
  const [said, setSaid] = useState('');
  const id = useId();
  const which = isOpen ? 'the layout that you have open' : `“${mine.title}” in My layouts`;
  if (rows.length === 0) return <p className="differences">It says the same as {which}.</p>;

  const choose = (wanted: Chosen, toward: 'mine' | 'theirs'): void => {
    const next = merge(mine, theirs, wanted, toward);
    setMerged(next);
    const along = rows.flatMap(({ part, words }) => (next.along.includes(part.key) ? [words] : []));
    const rest = along.length - 3;
    setSaid(
      along.length > 0
        ? `${toward === 'theirs' ? 'Theirs comes along' : 'Yours stays'} here as well, as it must: ${along.slice(0, 3).join(' ')}${rest > 0 ? ` And ${rest} more.` : ''}`
        : '',
    );
  };
  const toggle = (key: string): void => {
    const wanted = new Set(merged.chosen);
    const toward = wanted.delete(key) ? 'mine' : 'theirs';
    if (toward === 'theirs') wanted.add(key);
    choose(wanted, toward);
  };
  const count = merged.chosen.size;

  return (
    <section className="differences" aria-label="What differs">
      <h3>Against {which}</h3>
      <p className="aside">
        Tick what you want of theirs; what is not ticked stays as yours.
        {before && ' What only they have changed is ticked already, as far as your earlier states tell.'}
      </p>
      <p className="deeds">
        <button
          type="button"
          className="second"
          onClick={() => choose(differingKeys(mine, theirs), 'theirs')}
        >
          All theirs
        </button>
        <button type="button" className="second" onClick={() => choose(new Set(), 'mine')}>
          All mine
        </button>
      </p>
      {grouped(rows.slice(0, MOST_TOLD), theirs).map((group) => (
        <fieldset key={group.name}>
          <legend>{group.name}</legend>
          <ul>
            {group.rows.map(({ part: { key }, words, by }, i) => (
              <li key={key}>
                <label className="tick">
                  <input
                    type="checkbox"
                    checked={merged.chosen.has(key)}
                    aria-describedby={by && `${id}${group.name}${i}`}
                    onChange={() => toggle(key)}
                  />
                  <span>{words}</span>
                </label>
                {by && <small id={`${id}${group.name}${i}`}>{BY[by]}</small>}
              </li>
            ))}
          </ul>
        </fieldset>
      ))}
      {rows.length > MOST_TOLD && (
        <p className="aside">
          And {counted(rows.length - MOST_TOLD, 'more difference')}, which stay as yours or come with “All
          theirs”.
        </p>
      )}
      <p role="status" className="said">
        {said}
      </p>
      {count > 0 && <WouldBe mine={mine} merged={merged.layout} />}
      <button
        type="button"
        className="second"
        aria-disabled={count === 0}
        onClick={() => count > 0 && onTake(merged.layout, count)}
      >
        {count === 0 ? 'Nothing of theirs is ticked' : `Put ${counted(count, 'change')} into mine`}
      </button>
    </section>
  );
}

/** What would come of it, judged when the hand pauses. */
function WouldBe({ mine, merged }: { readonly mine: Layout; readonly merged: Layout }) {
  const shown = useDeferredValue(merged);
  const effect = useMemo(() => effectOf(mine, shown, checks), [mine, shown]);
  return (
    <div className="would-be">
      <EffectLines effect={effect} />
    </div>
  );
}
