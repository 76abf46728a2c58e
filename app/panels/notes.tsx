import { type CSSProperties, type ReactNode, useMemo } from 'react';
import { useAnalysis, useEditor, useSession, useTake } from '../hooks.ts';
import type { ListedNote } from '../store/note-list.ts';
import { sheetNow, viewportNow } from '../store/view.ts';
import { toggled } from '../tools/pick.ts';
import { FirstSteps } from './first-steps.tsx';
import { Icon } from './icon.tsx';
import { NoteCard } from './note-card.tsx';
import { useNoteList } from './use-notes.ts';

/** More are worth a search and not a look; the rest comes on demand. */
const MOST_SHOWN = 40;

/** Where there are more, those that are not touched say less. */
const MOST_IN_FULL = 4;

/** Room above the first row's notes, px. */
const TOP_PX = 12;

const Cards = ({ notes }: { readonly notes: readonly ListedNote[] }) =>
  notes.map(({ key, gone }) => <NoteCard key={key} id={key} gone={gone} />);

interface FoldProps {
  readonly id: string;
  readonly title: string;
  readonly keys: readonly string[];
  readonly startsOpen?: boolean;
}

/** A group of quiet notes under one line. */
function Fold({ id, title, keys, startsOpen = false }: FoldProps): ReactNode {
  const { session } = useEditor();
  const isOpen = useSession(
    ({ toggledGroups, focus }) =>
      toggledGroups.has(id) !== startsOpen || (focus !== null && keys.includes(focus)),
  );
  if (keys.length === 0) return null;
  const toggle = () =>
    session.setState(({ toggledGroups }) => ({ toggledGroups: toggled(toggledGroups, id) }));
  return (
    <section className="fold">
      <button type="button" className="quiet both" aria-expanded={isOpen} onClick={toggle}>
        <Icon name="chevron" />
        <span>
          {title} ({keys.length})
        </span>
      </button>
      {isOpen && keys.slice(0, MOST_SHOWN).map((key) => <NoteCard key={key} id={key} brief />)}
    </section>
  );
}

/** Height on the stage at which each row's notes begin; rows out of sight are kept at the edges. */
function useRowTops(): ReadonlyMap<string, number> {
  const editor = useEditor();
  const { derived } = useAnalysis();
  const viewport = useSession((session) => session.viewport);
  const stage = useSession((session) => session.stage);
  const side = useSession((session) => session.side);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the sheet and its place follow from these.
  return useMemo(() => {
    const { y } = viewportNow(editor);
    const within = (top: number): number => Math.min(Math.max(top + y, TOP_PX), stage.height);
    return new Map(sheetNow(editor).rows.map(({ placed, top }) => [placed.row.id, within(top)]));
  }, [editor, derived, viewport, stage, side]);
}

/** Notes in groups that stand beside their rows as long as there is room; else they close up. */
function NotesByRow({ notes }: { readonly notes: readonly ListedNote[] }) {
  const tops = [...useRowTops()].slice(0, notes.length === 0 ? 1 : undefined);
  const inRow = (id: string, i: number) => (note: ListedNote) =>
    note.row === id || (i === 0 && note.row === null);
  return tops.map(([id, top], i) => {
    const next = tops[i + 1]?.[1];
    const style: CSSProperties = {
      ...(next !== undefined && { flexBasis: next - (i === 0 ? 0 : top) }),
      ...(i === 0 && { paddingTop: top }),
    };
    return (
      <div key={id} className="beside-row" style={style}>
        <Cards notes={notes.filter(inRow(id, i))} />
      </div>
    );
  });
}

/** All notes of the take: what matters beside its row, reminders and what was put away folded at the end. */
export function Notes({ besideRows }: { readonly besideRows: boolean }) {
  const list = useNoteList();
  const { notes, derived } = useAnalysis();
  const isEmpty = useTake().modules.length === 0;
  const hasKinds = derived.kit.kit.modules.length > 0;
  const putAway = notes.filter(({ accepted }) => accepted).map(({ key }) => key);
  const pressing = list.filter(({ level }) => level !== 'reminder').slice(0, MOST_SHOWN);
  const reminders = list.filter(({ level }) => level === 'reminder');
  const left = list.length - reminders.length - pressing.length;
  return (
    <section className={pressing.length > MOST_IN_FULL ? 'notes many' : 'notes'} aria-label="Notes">
      {isEmpty && <FirstSteps hasKinds={hasKinds} />}
      {besideRows ? <NotesByRow notes={pressing} /> : <Cards notes={pressing} />}
      {left > 0 && <p className="more">and {left} more, after these</p>}
      <Fold
        id="reminders"
        title="Worth knowing"
        keys={reminders.map(({ key }) => key)}
        startsOpen={pressing.length === 0}
      />
      <Fold id="put-away" title="Put away" keys={putAway} />
    </section>
  );
}
