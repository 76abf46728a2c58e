import '../style/hand-over.css';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { checkTake, deriveTake, type Layout, type Level, verdictOf } from '../../src/index.ts';
import { answerOffer } from '../actions/open-link.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { counted } from '../kinds/loss.ts';
import { Dialog } from '../panels/dialog.tsx';
import { LevelMark } from '../panels/icon.tsx';
import type { Offered } from '../store/session.ts';
import { Differences } from './differences.tsx';
import { findKin, type Kin } from './find-kin.ts';
import { SmallDrawing } from './small-drawing.tsx';
import { takeOver } from './take-over-deed.ts';

const plural = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** Rows and modules of the first take, and how many takes there are. */
function sizeWords({ takes: [first, ...others] }: Layout): string {
  const rows = plural(first?.rows.length ?? 0, 'row');
  const modules = plural(first?.modules.length ?? 0, 'module');
  return `${rows}, ${modules}, ${plural(others.length + 1, 'take')}`;
}

const HEADINGS: Readonly<Record<Offered['by'], string>> = {
  link: 'A layout came with this link',
  file: 'The layout in this file comes from one of yours',
  here: 'What this layout has that yours has not',
};

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
export function Offer({ layout, by }: Offered) {
  const isHere = by === 'here';
  const editor = useEditor();
  const kin = useKin(layout);
  const verdicts = useMemo(() => verdictsOf(layout), [layout]);
  const [said, setSaid] = useState('');
  const answer = (isKept: boolean): void => void answerOffer(editor, isKept);
  const take = async (merged: Layout, count: number): Promise<void> => {
    if (!kin) return;
    const done = await takeOver(editor, kin, merged, layout.title);
    if (!done.ok) return setSaid(`Not done: ${done.error}.`);
    await answerOffer(editor, false);
    editor.session.setState({
      banner: `${counted(count, 'change')} of “${layout.title}” ${count === 1 ? 'is' : 'are'} in yours. Undo takes that back.`,
    });
  };
  const [first] = layout.takes;

  return (
    <Dialog name="hand-over" state="offer" title={HEADINGS[by]} closes={false} onClose={() => answer(false)}>
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
        {kin && (
          <Differences
            key={kin.layout.id}
            kin={kin}
            theirs={layout}
            onTake={(merged, count) => void take(merged, count)}
          />
        )}
        {kin === null && isHere && (
          <p className="differences">No other layout is kept here that it comes from.</p>
        )}
      </div>
      <footer>
        <p className="aside" role="status">
          {said || 'Nothing of yours is overwritten unless you put it there.'}
        </p>
        <button type="button" className="second" onClick={() => answer(false)}>
          {isHere ? 'Close' : 'Leave it'}
        </button>
        {!isHere && (
          <button type="button" className="do" onClick={() => answer(true)}>
            Keep it as a layout of its own
          </button>
        )}
      </footer>
    </Dialog>
  );
}

/** Looked for among all that is kept, the layout that is open included. */
function useKin(theirs: Layout): Kin | null {
  const { keep } = useEditor();
  const shelf = useStore(keep, ({ keeper }) => keeper?.shelf);
  const states = useStore(keep, (state) => state.states);
  const mine = useLayout((present) => present);
  const [kin, setKin] = useState<Kin | null>(null);
  useEffect(() => {
    let isOver = false;
    void findKin(mine, { shelf, states }, theirs).then((found) => {
      if (!isOver) setKin(found);
    });
    return () => {
      isOver = true;
    };
  }, [mine, shelf, states, theirs]);
  return kin;
}
