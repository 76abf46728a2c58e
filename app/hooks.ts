import { createContext, useContext, useMemo, useSyncExternalStore } from 'react';
import { useStore } from 'zustand';
import type { Layout, Take } from '../src/index.ts';
import type { Action } from './actions/action.ts';
import type { Moving } from './canvas/model.ts';
import type { Editor } from './editor.ts';
import { type Analysis, analyse, judging } from './store/analysis.ts';
import type { Gesture } from './store/gestures.ts';
import type { Session } from './store/session.ts';
import { takeOf } from './store/shown.ts';

export const EditorContext = createContext<Editor | null>(null);

export function useEditor(): Editor {
  const editor = useContext(EditorContext);
  if (!editor) throw new Error('no editor around this part of the page');
  return editor;
}

export const useSession = <T>(select: (session: Session) => T): T => useStore(useEditor().session, select);

/** As last committed: no part of the page follows a drag by way of the document. */
export const useLayout = <T>(select: (layout: Layout) => T): T =>
  useStore(useEditor().layouts.store, ({ history }) => select(history.present));

export const useGesture = <T>(select: (gesture: Gesture) => T): T =>
  useStore(useEditor().gestures.store, select);

/** What a running gesture shows, as often as words about it should change. */
export function useMoving<T>(select: (moving: Moving | null) => T): T {
  const { inWords } = useEditor().gestures;
  return useSyncExternalStore(inWords.subscribe, () => select(inWords.get()));
}

export function useTake(): Take {
  const id = useSession(({ take }) => take);
  return useLayout((layout) => takeOf(layout, id));
}

export function useAnalysis(): Analysis {
  const take = useTake();
  const kit = useLayout((layout) => layout.kit);
  const judge = useSyncExternalStore(judging.subscribe, judging.get);
  // biome-ignore lint/correctness/useExhaustiveDependencies: analysing judges by it
  return useMemo(() => analyse(kit, take), [kit, take, judge]);
}

/** Whether an action can be done and what it is called now; a gesture that holds it off for a moment does not show. */
export function useAction(action: Action): { readonly enabled: boolean; readonly label: string } {
  const editor = useEditor();
  const subscribe = useMemo(
    () => (listener: () => void) => {
      const ends = [
        editor.layouts.store.subscribe(listener),
        editor.session.subscribe(listener),
        // What a gesture shows at each move changes no action.
        editor.gestures.store.subscribe((now, then) => {
          if (now.running !== then.running) listener();
        }),
      ];
      return () => {
        for (const end of ends) end();
      };
    },
    [editor],
  );
  const enabled = useSyncExternalStore(subscribe, () => action.enabled(editor));
  const label = useSyncExternalStore(subscribe, () => action.label(editor));
  return { enabled, label };
}
