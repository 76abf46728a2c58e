import { lazy, memo, Suspense, useEffect, useRef } from 'react';
import { perform } from '../actions/action.ts';
import { useEditor, useSession } from '../hooks.ts';
import { LevelMark } from './icon.tsx';
import { useNote } from './use-notes.ts';

/** Loaded with the first note: what mends it is looked for when it is shown. */
const Mends = lazy(async () => ({ default: (await import('./mends.tsx')).Mends }));

interface Props {
  readonly id: string;
  /** A running gesture has made it go. */
  readonly gone?: boolean;
  /** Says no more than its headline until it is touched. */
  readonly brief?: boolean;
}

/** A finding, told as a colleague would: what, where, how much, what would happen, and one tap to mend it. */
export const NoteCard = memo(function NoteCard({ id, gone = false, brief = false }: Props) {
  const editor = useEditor();
  const note = useNote(id);
  const isFocused = useSession(({ focus }) => focus === id);
  const card = useRef<HTMLElement>(null);
  useEffect(() => {
    if (isFocused) card.current?.scrollIntoView({ block: 'nearest' });
  }, [isFocused]);
  if (!note) return null;
  const { level, headline, detail, remedy, take, key, facts, accepted } = note;
  const inFull = !brief || isFocused;
  const touch = async () => (await import('../store/focus-note.ts')).focusNote(editor, note);
  const putAway = () => perform(editor, { type: 'accept-finding', take, key, facts });
  return (
    <article
      ref={card}
      className={['note', level, isFocused && 'focused', gone && 'gone', brief && 'brief']
        .filter(Boolean)
        .join(' ')}
    >
      <LevelMark level={level} />
      <h2>
        <button type="button" aria-pressed={isFocused} onClick={touch}>
          {headline}
        </button>
      </h2>
      {inFull && <p className="detail">{detail}</p>}
      {inFull && (
        <div className="deeds">
          <Suspense fallback={<p>{remedy}</p>}>
            <Mends note={note} inFull={isFocused}>
              {level !== 'damage' && !accepted && (
                <button type="button" className="put-away" onClick={putAway}>
                  Put away
                </button>
              )}
              {accepted && (
                <button
                  type="button"
                  className="put-away"
                  onClick={() => perform(editor, { type: 'bring-back', take, key })}
                >
                  Bring back
                </button>
              )}
            </Mends>
          </Suspense>
        </div>
      )}
    </article>
  );
});
