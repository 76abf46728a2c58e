import { type RefObject, useLayoutEffect, useRef } from 'react';

/**
 * Opens a dialog over everything else, with the keys at its first control or the one named. When it goes, what had the
 * focus before gets it back, or where that is gone something else: the drawing, unless told otherwise.
 */
export function useModal(
  first?: string,
  fallback = '.by-list',
  given?: RefObject<HTMLDialogElement | null>,
): RefObject<HTMLDialogElement | null> {
  const own = useRef<HTMLDialogElement>(null);
  const ref = given ?? own;
  useLayoutEffect(() => {
    const dialog = ref.current;
    const before = document.activeElement;
    dialog?.showModal();
    if (first !== undefined) dialog?.querySelector<HTMLElement>(first)?.focus();
    return () => {
      dialog?.close();
      const isThere = before instanceof HTMLElement && before.isConnected && before !== document.body;
      const back = isThere ? before : document.querySelector<HTMLElement>(fallback);
      back?.focus({ preventScroll: true });
    };
  }, [first, fallback, ref]);
  return ref;
}
