import type { Editor } from '../editor.ts';
import { hitAt } from '../store/under-pointer.ts';
import type { Pointer } from './pointer.ts';

/** A pointer that only passes lifts nothing, ms. */
const REST_MS = 120;

/** Lifts the ribbon on which a mouse rests above all others, and lets it down when it leaves. */
export interface Lift {
  hover(pointer: Pointer): void;
  drop(): void;
}

export function createLift(editor: Editor): Lift {
  const { session, platform } = editor;
  let wanted: string | null = null;
  let stop = (): void => {};

  const want = (id: string | null): void => {
    if (id === wanted) return;
    stop();
    wanted = id;
    if (session.getState().lifted !== null) session.setState({ lifted: null });
    if (id !== null) stop = platform.clock.after(REST_MS, () => session.setState({ lifted: id }));
  };

  return {
    hover(pointer) {
      if (pointer.kind === 'touch') return;
      const hit = hitAt(editor, pointer);
      want(hit?.type === 'ribbon' ? hit.id : null);
    },
    drop: () => want(null),
  };
}
