import { useLayoutEffect, useRef } from 'react';

/** Opens a dialog over everything else. When it goes, what had the focus before gets it back, or else the drawing. */
export function useModal() {
  const ref = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    const dialog = ref.current;
    const before = document.activeElement;
    dialog?.showModal();
    return () => {
      dialog?.close();
      const isThere = before instanceof HTMLElement && before.isConnected && before !== document.body;
      const back = isThere ? before : document.querySelector<HTMLElement>('.by-list');
      back?.focus({ preventScroll: true });
    };
  }, []);
  return ref;
}
