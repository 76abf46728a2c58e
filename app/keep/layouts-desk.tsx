import '../style/layouts-desk.css';
import { type KeyboardEvent, useCallback, useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { Result } from '../../src/index.ts';
import { type Action, start } from '../actions/action.ts';
import { newLayout } from '../actions/new-layout.ts';
import { openDemo } from '../actions/open-demo.ts';
import { openFile } from '../actions/open-file.ts';
import { useEditor, useLayout, useSession } from '../hooks.ts';
import { Dialog } from '../panels/dialog.tsx';
import {
  deleteOne,
  duplicateOne,
  listKept,
  openOne,
  putBack,
  renameOne,
  saveAll,
  saveOne,
} from './desk-deeds.ts';
import type { KeptLayout } from './kept-layout.ts';
import { type Deeds, LayoutCard } from './layout-card.tsx';

/** The pictures beside and below each other, for the arrows. */
function step(event: KeyboardEvent<HTMLElement>): void {
  const { target, key, currentTarget } = event;
  if (!(target instanceof HTMLElement) || !target.classList.contains('open')) return;
  const all = [...currentTarget.querySelectorAll<HTMLElement>('.open')];
  const top = all[0]?.getBoundingClientRect().top;
  const across = all.filter((one) => one.getBoundingClientRect().top === top).length;
  const by = { ArrowRight: 1, ArrowLeft: -1, ArrowDown: across, ArrowUp: -across }[key];
  if (by === undefined) return;
  event.preventDefault();
  all[all.indexOf(target) + by]?.focus();
}

/** All layouts that this browser keeps: to take one, to name, copy and delete them, to bring them in and to take them away. */
export function LayoutsDesk() {
  const editor = useEditor();
  const { session, keep, platform } = editor;
  const keeper = useStore(keep, (state) => state.keeper);
  const persisted = useStore(keep, (state) => state.persisted);
  const here = useLayout(({ id }) => id);
  const banner = useSession((state) => state.banner);
  const [kept, setKept] = useState<readonly KeptLayout[] | null>(null);
  const [said, setSaid] = useState('');
  const [deleted, setDeleted] = useState<KeptLayout | null>(null);
  const [side, setSide] = useState(session.getState().side);
  const ref = useRef<HTMLDialogElement>(null);
  const undoRef = useRef<HTMLButtonElement>(null);
  /** Id of the one whose picture takes the keys once it is there; empty: the one on the screen. */
  const wanted = useRef<string | null>('');

  const close = useCallback((): void => session.setState({ showsLayouts: false }), [session]);
  const list = useCallback(async (): Promise<void> => {
    if (!keeper) return;
    const found = await listKept(keeper);
    if (found.ok) setKept(found.value);
    else setSaid(`Nothing can be shown: ${found.error}.`);
  }, [keeper]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: a file that was brought in is told in the banner, and another layout on the screen is news too.
  useEffect(() => void list(), [list, banner, here]);
  useEffect(() => {
    if (kept === null || wanted.current === null) return;
    const card = wanted.current ? `[data-layout="${CSS.escape(wanted.current)}"]` : '.here';
    const open =
      ref.current?.querySelector<HTMLElement>(`${card} .open`) ?? ref.current?.querySelector('.open');
    if (open instanceof HTMLElement) open.focus();
    wanted.current = null;
  }, [kept]);
  useEffect(() => {
    if (deleted) undoRef.current?.focus();
  }, [deleted]);

  /** Does something and lists anew; what could not be done is told here. */
  const after = async (doing: Promise<Result<void, string>>, words: string): Promise<boolean> => {
    const done = await doing;
    setSaid(done.ok ? words : `Not done: ${done.error}.`);
    await list();
    return done.ok;
  };
  const leaveTo = (action: Action): void => {
    close();
    start(editor, action);
  };

  const deeds: Deeds = {
    async open(one) {
      if (!keeper) return;
      const done = await openOne(editor, keeper, one.id);
      if (done.ok) close();
      else setSaid(`Not opened: ${done.error}. It is kept as it is.`);
    },
    rename(one, title) {
      if (keeper) void after(renameOne(editor, keeper, one, title), '');
    },
    duplicate(one) {
      if (keeper) void after(duplicateOne(editor, keeper, one), `“${one.title}, a copy” is there.`);
    },
    earlier: ({ id, title }) => session.setState({ statesOf: { id, title } }),
    save: (one) => void after(saveOne(editor, one), ''),
    async remove(one) {
      if (keeper && (await after(deleteOne(editor, keeper, one), `“${one.title}” is deleted.`)))
        setDeleted(one);
    },
  };
  const undo = async (): Promise<void> => {
    if (!keeper || !deleted) return;
    const { title, id } = deleted;
    wanted.current = id;
    if (await after(putBack(keeper, deleted), `“${title}” is back.`)) setDeleted(null);
  };

  return (
    <Dialog
      name="layouts-desk"
      title="My layouts"
      beside={
        <fieldset className="sides">
          <legend className="unseen">Pictures show</legend>
          {(['front', 'rear'] as const).map((one) => (
            <button key={one} type="button" aria-pressed={side === one} onClick={() => setSide(one)}>
              {one === 'front' ? 'Front' : 'Rear'}
            </button>
          ))}
        </fieldset>
      }
      ref={ref}
      onKeyDown={(event) => {
        // In a field Escape takes back what was typed, no more.
        if (event.key === 'Escape' && event.target instanceof HTMLInputElement) event.preventDefault();
        event.stopPropagation();
        step(event);
      }}
      onClose={close}
    >
      <div className="layouts-deeds">
        <button type="button" className="do" onClick={() => leaveTo(newLayout)}>
          New empty case
        </button>
        <button type="button" className="plain" onClick={() => leaveTo(openDemo)}>
          Open the demo
        </button>
        <button type="button" className="plain" onClick={() => leaveTo(openFile)}>
          Bring in a file…
        </button>
        <button
          type="button"
          className="plain"
          aria-disabled={!kept?.length}
          onClick={() => keeper && kept?.length && void after(saveAll(editor, keeper), '')}
        >
          Save all in one file…
        </button>
      </div>
      <p className="layouts-said" role="status">
        <span>{said}</span>
        {deleted && (
          <button ref={undoRef} type="button" className="plain" onClick={() => void undo()}>
            Undo
          </button>
        )}
      </p>
      <ul className="layouts">
        {kept?.map((one) => (
          <LayoutCard
            key={one.id}
            kept={one}
            side={side}
            isHere={one.id === here}
            now={platform.clock.now()}
            deeds={deeds}
          />
        ))}
      </ul>
      {kept?.length === 0 && (
        <p className="layouts-none">
          Nothing is kept here yet. What is on the screen comes here with the first thing that you change in
          it.
        </p>
      )}
      <p className="aside">
        Layouts are kept by this browser, on this device; nothing is sent anywhere.{' '}
        {persisted === true
          ? 'The browser has agreed not to clear them by itself, but you or another program may.'
          : 'The browser may clear them when room is short, some browsers after a week without a visit, and all when you clear their data.'}{' '}
        In a private window they are gone when it is closed. Save what matters as a file. A file of all
        layouts is brought back like any other: nothing here is overwritten by it.
      </p>
    </Dialog>
  );
}
