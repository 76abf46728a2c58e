import '../style/states-desk.css';
import { useEffect, useState } from 'react';
import { useEditor, useLayout } from '../hooks.ts';
import { Dialog } from '../panels/dialog.tsx';
import type { EarlierState } from '../store/keep.ts';
import { bringBackState } from './bring-back-state.ts';
import { openKept } from './open-kept.ts';
import { changeWords, whenWords } from './state-words.ts';
import { Thumbnail } from './thumbnail.tsx';
import { agoWords, faultWords } from './words.ts';

/** Width of a picture; narrow screens show its middle. */
const PICTURE_PX = 168;

interface Told extends EarlierState {
  readonly words: string;
}

/** Each state with what was done to it afterwards; newest first. */
async function told(id: string, states: readonly EarlierState[], nowText: string): Promise<readonly Told[]> {
  const layouts = await Promise.all(
    [...states.map(({ text }) => text), nowText].map((text) => openKept({ id, text })),
  );
  return states
    .map((state, i) => {
      const [before, after] = [layouts[i], layouts[i + 1]];
      return { ...state, words: before?.ok && after?.ok ? changeWords(before.value, after.value) : '' };
    })
    .reverse();
}

/** What a layout was before each stretch of work on it: to look at, and to bring one back. */
export function StatesDesk({
  of: { id, title },
}: {
  readonly of: { readonly id: string; readonly title: string };
}) {
  const editor = useEditor();
  const { session, keep, platform } = editor;
  const present = useLayout((layout) => layout);
  const [states, setStates] = useState<readonly Told[] | null>(null);
  const [said, setSaid] = useState('');
  const { side } = session.getState();
  const now = platform.clock.now();
  const close = (): void => session.setState({ statesOf: null });

  useEffect(() => {
    let isOver = false;
    const list = async (): Promise<void> => {
      const { states: kept, keeper } = keep.getState();
      const found = await kept?.of(id);
      if (found && !found.ok) setSaid(`Nothing can be shown: ${faultWords(found.error)}.`);
      const record = present.id === id ? null : await keeper?.shelf.read(id);
      const text = record?.ok ? (record.value as { readonly text?: unknown }).text : JSON.stringify(present);
      const all = await told(id, found?.ok ? found.value : [], String(text));
      if (!isOver) setStates(all);
    };
    void list();
    return () => {
      isOver = true;
    };
  }, [id, keep, present]);

  const bring = async (state: EarlierState): Promise<void> => {
    const done = await bringBackState(editor, id, state);
    if (!done.ok) {
      setSaid(`Not brought back: ${done.error}.`);
      return;
    }
    session.setState({
      statesOf: null,
      showsLayouts: false,
      banner: `“${title}” is as it was at ${whenWords(state.at, now)}. Undo takes that back.`,
    });
  };

  return (
    <Dialog
      name="states-desk"
      title={`Earlier states of “${title}”`}
      onKeyDown={(event) => event.stopPropagation()}
      onClose={close}
    >
      <p className="aside">
        What it was before each stretch of work on it, the last 20 at most, kept on this device. The browser
        may clear them like the layouts themselves; when room is short they go first.
      </p>
      <p role="status" className="said">
        {said}
      </p>
      <ol>
        {states?.map((state) => (
          <li key={`${state.at} ${state.text.length}`}>
            <div className="picture">
              <Thumbnail kept={{ id, text: state.text }} side={side} widthPx={PICTURE_PX} />
            </div>
            <div className="told">
              <p>
                <b>{whenWords(state.at, now)}</b> <span>{agoWords(state.at, now)}</span>
              </p>
              <p className="words">{state.words}</p>
              <button
                type="button"
                className="second"
                aria-label={`Bring it back as of ${whenWords(state.at, now)}`}
                onClick={() => void bring(state)}
              >
                Bring it back
              </button>
            </div>
          </li>
        ))}
      </ol>
      {states?.length === 0 && (
        <p className="none">
          Nothing yet. When you work on this layout again after a pause, or change much of it at once, what it
          was before is kept here.
        </p>
      )}
    </Dialog>
  );
}
