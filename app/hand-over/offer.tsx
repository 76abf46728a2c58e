import '../style/hand-over.css';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { checkTake, deriveTake, type Layout, type Level, verdictOf } from '../../src/index.ts';
import { compareLayouts, type Difference } from '../../src/share.ts';
import { answerOffer } from '../actions/open-link.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { LevelMark } from '../panels/icon.tsx';
import { findKin, type Kin } from './find-kin.ts';
import { SmallDrawing } from './small-drawing.tsx';
import { useModal } from './use-modal.ts';

const MOST_TOLD = 60;

const plural = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** Rows and modules of the first take, and how many takes there are. */
function sizeWords({ takes: [first, ...others] }: Layout): string {
  const rows = plural(first?.rows.length ?? 0, 'row');
  const modules = plural(first?.modules.length ?? 0, 'module');
  return `${rows}, ${modules}, ${plural(others.length + 1, 'take')}`;
}

interface TakeVerdict {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  readonly worst: Level | null;
}

function verdictsOf({ kit, takes }: Layout): readonly TakeVerdict[] {
  return takes.map((take) => {
    const { damage, faults, state, text } = verdictOf(checkTake(deriveTake(kit, take)));
    const worst = damage > 0 ? 'damage' : faults > 0 ? 'fault' : state === 'incomplete' ? 'reminder' : null;
    return { id: take.id, name: take.name, text, worst };
  });
}

/** A layout that came with a link: what it is, how it stands, how it differs from mine; to keep or to leave. */
export function Offer({ layout }: { readonly layout: Layout }) {
  const editor = useEditor();
  const ref = useModal();
  const kin = useKin(layout);
  const verdicts = useMemo(() => verdictsOf(layout), [layout]);
  const answer = (isKept: boolean): void => void answerOffer(editor, isKept);
  const [first] = layout.takes;

  return (
    <dialog
      ref={ref}
      className="hand-over offer"
      aria-labelledby="offer-title"
      onCancel={(event) => {
        event.preventDefault();
        answer(false);
      }}
    >
      <header>
        <h2 id="offer-title">A layout came with this link</h2>
      </header>
      <div className="body">
        <div className="ways">
          <p className="name">{layout.title || 'Without a title'}</p>
          <p className="aside">{sizeWords(layout)}</p>
          <ul className="verdicts">
            {verdicts.map(({ id, name, text, worst }) => (
              <li key={id}>
                {worst ? <LevelMark level={worst} /> : <span className="no-mark" />}
                <span>
                  <b>{name}:</b> {text}
                </span>
              </li>
            ))}
          </ul>
        </div>
        {first && <SmallDrawing kit={layout.kit} take={first} />}
        {kin && <Differences kin={kin} theirs={layout} />}
      </div>
      <footer>
        <p className="aside">Nothing of yours is overwritten.</p>
        <button type="button" className="second" onClick={() => answer(false)}>
          Leave it
        </button>
        <button type="button" className="do" onClick={() => answer(true)}>
          Keep it as a layout of its own
        </button>
      </footer>
    </dialog>
  );
}

interface Group {
  readonly name: string;
  readonly differences: readonly Difference[];
}

/** Differences of the whole, then take by take. */
function grouped(differences: readonly Difference[], { takes }: Layout): readonly Group[] {
  const of = (take: string | undefined): readonly Difference[] =>
    differences.filter((one) => one.take === take);
  const groups = [
    { name: 'Kit and takes', differences: of(undefined) },
    ...takes.map(({ id, name }) => ({ name, differences: of(id) })),
  ];
  return groups.filter((group) => group.differences.length > 0);
}

/** Looked for among all that is kept, the layout that is open included. */
function useKin(theirs: Layout): Kin | null {
  const shelf = useStore(useEditor().keep, ({ keeper }) => keeper?.shelf);
  const mine = useLayout((present) => present);
  const [kin, setKin] = useState<Kin | null>(null);
  useEffect(() => {
    let isOver = false;
    void findKin(mine, shelf, theirs).then((found) => {
      if (!isOver) setKin(found);
    });
    return () => {
      isOver = true;
    };
  }, [mine, shelf, theirs]);
  return kin;
}

interface DifferencesProps {
  readonly kin: Kin;
  readonly theirs: Layout;
}

function Differences({ kin: { layout: mine, isOpen }, theirs }: DifferencesProps) {
  const found = useMemo(() => compareLayouts(mine, theirs), [mine, theirs]);
  const which = isOpen ? 'the layout that you have open' : `“${mine.title}” in My layouts`;
  if (found.length === 0) return <p className="differences">It says the same as {which}.</p>;
  const told = found.slice(0, MOST_TOLD);
  return (
    <section className="differences" aria-label="What differs">
      <h3>Against {which}</h3>
      {grouped(told, theirs).map(({ name, differences }) => (
        <div key={name}>
          <h4>{name}</h4>
          <ul>
            {differences.map(({ sort, change, id, words }) => (
              <li key={`${sort} ${change} ${id}`}>{words}</li>
            ))}
          </ul>
        </div>
      ))}
      {found.length > told.length && (
        <p className="aside">And {plural(found.length - told.length, 'more difference')}.</p>
      )}
    </section>
  );
}
