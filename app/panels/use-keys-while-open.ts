import { type RefObject, useEffect, useRef } from 'react';
import { useEditor } from '../hooks.ts';

/** Takes the keys when it opens, and gives them back to where they were. A form that was asked for since has them first. */
export function useKeysWhileOpen(given?: RefObject<HTMLElement | null>) {
  const { session } = useEditor();
  const own = useRef<HTMLElement>(null);
  const ref = given ?? own;
  const before = useRef<Element | null>(null);
  useEffect(() => {
    before.current = document.activeElement;
    if (session.getState().kindDesk === null) ref.current?.focus({ preventScroll: true });
  }, [session, ref]);
  const giveBack = (): void => {
    const { current } = before;
    const isThere = current instanceof HTMLElement && current.isConnected && current !== document.body;
    const to = isThere ? current : document.querySelector<HTMLElement>('.by-list');
    to?.focus({ preventScroll: true });
  };
  return { ref, giveBack };
}
