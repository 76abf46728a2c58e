import '../style/kind-desk.css';
import { useEffect } from 'react';
import { moduleKindIn, ribbonKindIn } from '../actions/kinds.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { Dialog } from '../panels/dialog.tsx';
import type { KindDesk as Desk } from '../store/session.ts';
import { ModuleForm } from './module-form.tsx';
import { RibbonForm } from './ribbon-form.tsx';

const NEW_WORDS: Readonly<Record<Desk['sort'], string>> = {
  module: 'New kind of module',
  ribbon: 'New kind of ribbon',
  lead: 'New kind of lead',
};

/** The form for one kind, over everything else. */
export function KindDesk({ desk }: { readonly desk: Desk }) {
  const { session } = useEditor();
  const kit = useLayout((layout) => layout.kit);
  // The tile for new kinds has the keys where the one that was changed is gone.
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
    <Dialog
      name="kind-desk"
      state={desk.full ? 'full' : undefined}
      label={title}
      fallback=".new-kind"
      onClose={close}
    >
      {desk.sort === 'module' ? (
        <ModuleForm title={title} desk={desk} before={module} />
      ) : (
        <RibbonForm title={title} sort={desk.sort} before={ribbon} />
      )}
    </Dialog>
  );
}
