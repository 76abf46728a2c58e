import { type RefObject, useRef, useState } from 'react';
import type { PanelPlace, PanelSize } from '../../src/index.ts';
import { type HeaderDraft, headerLike, placedAt } from './header-draft.ts';
import { type ModuleDraft, withEdges, withHeaders } from './module-draft.ts';
import type { ModuleFormState } from './use-module-form.ts';

/** What can be done to headers by hand. */
export interface HeaderHand {
  choose(key: string | null): void;
  /** A movement begins; it is one step back. */
  begin(): void;
  move(key: string, place: PanelPlace): void;
  /** Puts back what was there when it began. */
  cancel(): void;
  add(header: HeaderDraft): void;
  duplicate(key: string): void;
  remove(key: string): void;
  stepBack(): void;
}

/** So many steps with headers can be taken back. */
const MOST_STEPS = 100;

/** What headers were, to go back to. */
function useSteps(draft: ModuleDraft, setDraft: (next: ModuleDraft) => void) {
  const past = useRef<ModuleDraft[]>([]);
  const [count, setCount] = useState(0);
  const note = (): void => {
    past.current = [...past.current.slice(1 - MOST_STEPS), draft];
    setCount(past.current.length);
  };
  const back = (): void => {
    const before = past.current.pop();
    setCount(past.current.length);
    if (!before) return;
    // What was typed since about the kind as a whole stays.
    setDraft(
      withEdges(
        { ...draft, template: before.template, headers: before.headers, edges: before.edges },
        draft.edges,
      ),
    );
  };
  return { note, back, canGoBack: count > 0 };
}

/** The hand on the headers of a form, and the header that it has chosen. */
export function useHeaderHand(
  { draft, setDraft }: Pick<ModuleFormState, 'draft' | 'setDraft'>,
  headers: readonly HeaderDraft[],
  size: PanelSize,
  root: RefObject<HTMLElement | null>,
) {
  const [chosen, setChosen] = useState<string | null>(null);
  const { note, back, canGoBack } = useSteps(draft, setDraft);
  const { edges } = draft;

  const setHeaders = (next: readonly HeaderDraft[]): void => setDraft((now) => withHeaders(now, next));
  const changeHeader = (key: string, change: (header: HeaderDraft) => HeaderDraft): void =>
    setHeaders(headers.map((other) => (other.key === key ? change(other) : other)));
  /** The header on the drawing, or what makes one where there is none. */
  const focusOn = (key: string | null): void => {
    requestAnimationFrame(() => {
      const wanted =
        key === null ? null : root.current?.querySelector<SVGElement>(`[data-header="${CSS.escape(key)}"]`);
      (wanted ?? root.current?.querySelector<HTMLElement>('.add-header'))?.focus();
    });
  };
  const add = (header: HeaderDraft): void => {
    note();
    setHeaders([...headers, header]);
    setChosen(header.key);
    focusOn(header.key);
  };
  const hand: HeaderHand = {
    choose: setChosen,
    begin: note,
    move: (key, place) => changeHeader(key, (other) => placedAt(other, edges, size, place)),
    cancel: back,
    add,
    duplicate(key) {
      const like = headers.find((other) => other.key === key);
      if (like) add(headerLike(like, headers, edges, size));
    },
    remove(key) {
      note();
      const at = headers.findIndex((other) => other.key === key);
      const left = headers.filter((other) => other.key !== key);
      const next = left[Math.min(at, left.length - 1)]?.key ?? null;
      setHeaders(left);
      setChosen(next);
      focusOn(next);
    },
    stepBack: back,
  };
  return { chosen, hand, canGoBack, changeHeader };
}
