import { useLayoutEffect, useRef } from 'react';

/** Opens a dialog over everything else, with the keys at its first control or the one named. When it goes, what had the focus before gets it back, or else the drawing. */
export function useModal(first?: string) {
  const ref = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    const dialog = ref.current;
    const before = document.activeElement;
    dialog?.showModal();
    if (first !== undefined) dialog?.querySelector<HTMLElement>(first)?.focus();
    return () => {
      dialog?.close();
      const isThere = before instanceof HTMLElement && before.isConnected && before !== document.body;
      const back = isThere ? before : document.querySelector<HTMLElement>('.by-list');
      back?.focus({ preventScroll: true });
    };
  }, [first]);
  return ref;
}
