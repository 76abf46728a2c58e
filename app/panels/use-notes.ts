import { useMemo, useRef, useSyncExternalStore } from 'react';
import type { Note } from '../../src/index.ts';
import { useAnalysis, useEditor } from '../hooks.ts';
import { freezeOrder, type ListedNote, listNotes } from '../store/note-list.ts';

/** Something simple about the notes that the stage shows, those of a running gesture included. */
export function useShownNotes<T extends string | number | boolean | null>(
  select: (notes: readonly Note[]) => T,
): T {
  const { gestures } = useEditor();
  const { notes } = useAnalysis();
  return useSyncExternalStore(gestures.inWords.subscribe, () =>
    select(gestures.inWords.get()?.notes ?? notes),
  );
}

/** The open notes in a steady order; changes under a gesture only when a note comes or goes. */
export function useNoteList(): readonly ListedNote[] {
  const { gestures } = useEditor();
  const { notes } = useAnalysis();
  const start = useMemo(() => listNotes(notes), [notes]);
  const last = useRef(start);
  return useSyncExternalStore(gestures.inWords.subscribe, () => {
    const moving = gestures.inWords.get();
    last.current = moving ? freezeOrder(start, last.current, moving.notes) : start;
    return last.current;
  });
}

const byKey = new WeakMap<readonly Note[], ReadonlyMap<string, Note>>();

function find(notes: readonly Note[] | undefined, key: string): Note | undefined {
  if (!notes) return undefined;
  let index = byKey.get(notes);
  if (!index) {
    index = new Map(notes.map((note) => [note.key, note]));
    byKey.set(notes, index);
  }
  return index.get(key);
}

/** What a note says now; the same object as long as it says the same. */
export function useNote(key: string): Note | undefined {
  const { gestures } = useEditor();
  const { notes } = useAnalysis();
  const last = useRef<Note | undefined>(undefined);
  return useSyncExternalStore(gestures.inWords.subscribe, () => {
    const standing = find(notes, key);
    const now = find(gestures.inWords.get()?.notes, key);
    const saysTheSame = now && last.current?.headline === now.headline && last.current.detail === now.detail;
    if (!saysTheSame) last.current = now ?? standing ?? last.current;
    if (!gestures.inWords.get()) last.current = standing;
    return last.current;
  });
}
