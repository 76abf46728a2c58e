import '../style/kind-desk.css';
import { useEffect, useLayoutEffect, useRef } from 'react';
import { moduleKindIn, ribbonKindIn } from '../actions/kinds.ts';
import { useEditor, useLayout } from '../hooks.ts';
import type { KindDesk as Desk } from '../store/session.ts';
import { ModuleForm } from './module-form.tsx';
import { RibbonForm } from './ribbon-form.tsx';

/** Opens the dialog. When it goes, what had the focus before gets it back; the tile for new kinds where that is gone. */
function useModal() {
  const ref = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    const dialog = ref.current;
    const before = document.activeElement;
    dialog?.showModal();
    return () => {
      dialog?.close();
      const back = before instanceof HTMLElement && before.isConnected && before !== document.body;
      const target = back ? before : document.querySelector<HTMLElement>('.new-kind');
      target?.focus();
    };
  }, []);
  return ref;
}

const NEW_WORDS: Readonly<Record<Desk['sort'], string>> = {
  module: 'New kind of module',
  ribbon: 'New kind of ribbon',
  lead: 'New kind of lead',
};

/** The form for one kind, over everything else. */
export function KindDesk({ desk }: { readonly desk: Desk }) {
  const { session } = useEditor();
  const kit = useLayout((layout) => layout.kit);
  const ref = useModal();
  const module = moduleKindIn(kit, desk);
  const ribbon = ribbonKindIn(kit, desk);
  const isGone = desk.kind !== null && !module && !ribbon;
  const close = (): void => session.setState({ kindDesk: null });
  useEffect(() => {
    if (isGone) session.setState({ kindDesk: null });
  }, [isGone, session]);

  const before = module ?? ribbon;
  const title = before ? `Change ${before.name}` : NEW_WORDS[desk.sort];
  return (
    <dialog
      ref={ref}
      className={desk.full ? 'kind-desk full' : 'kind-desk'}
      aria-label={title}
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
    >
      {desk.sort === 'module' ? (
        <ModuleForm title={title} desk={desk} before={module} />
      ) : (
        <RibbonForm title={title} sort={desk.sort} before={ribbon} />
      )}
    </dialog>
  );
}
