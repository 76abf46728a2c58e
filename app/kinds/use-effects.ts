import { useEffect, useState } from 'react';
import {
  applyEdit,
  checkTake,
  deriveTake,
  type Edit,
  type Kit,
  type Layout,
  type Note,
  type NoteChanges,
  noteChanges,
  type Take,
} from '../../src/index.ts';

/** What an edit would do to the notes of one take. */
export interface Effect extends NoteChanges {
  readonly take: Pick<Take, 'id' | 'name'>;
}

/** Nobody reads while typing, ms. */
const PAUSE_MS = 180;

/** Not by way of the analysis that the sheet keeps: that would make it forget what it shows. */
const notesOf = (kit: Kit, take: Take): readonly Note[] => checkTake(deriveTake(kit, take));

/** What an edit would do to the notes of every take, the first of them that is shown. */
export function effectsOf(layout: Layout, edit: Edit, first: string): readonly Effect[] {
  const done = applyEdit(layout, edit);
  if (!done.ok || done.value === layout) return [];
  const { kit, takes } = done.value;
  const inOrder = [...layout.takes].sort((a, b) => Number(b.id === first) - Number(a.id === first));
  return inOrder.map((take) => {
    const after = takes.find(({ id }) => id === take.id) ?? take;
    const { id, name } = take;
    return { take: { id, name }, ...noteChanges(notesOf(layout.kit, take), notesOf(kit, after)) };
  });
}

interface Effects {
  readonly effects: readonly Effect[];
  /** Something was typed since. */
  readonly pending: boolean;
}

/** What an edit would do, a moment after it was last changed. */
export function useEffects(layout: Layout, edit: Edit | null, shown: string): Effects {
  const [known, setKnown] = useState<{ readonly of: string; readonly effects: readonly Effect[] }>({
    of: '',
    effects: [],
  });
  const wanted = edit ? JSON.stringify(edit) : '';
  useEffect(() => {
    const timer = setTimeout(() => {
      const now = wanted ? (JSON.parse(wanted) as Edit) : null;
      setKnown({ of: wanted, effects: now ? effectsOf(layout, now, shown) : [] });
    }, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [layout, wanted, shown]);
  return { effects: known.effects, pending: known.of !== wanted };
}
