import { useRef, useState } from 'react';
import type { ModuleKind } from '../../src/index.ts';
import { useKitInForm, useTold } from './kind-form.tsx';
import { moduleDraftOf, newModuleDraft, readModule } from './module-draft.ts';

/** The form as it stands, to be shown in short or in full: both read and write the very same. */
export function useModuleForm(before: ModuleKind | undefined) {
  const [kit, made, addBus] = useKitInForm();
  const [draft, setDraft] = useState(() => (before ? moduleDraftOf(kit, before) : newModuleDraft(kit)));
  const start = useRef(draft);
  const [drawn, setDrawn] = useState(before);
  const { kind, problems } = readModule(kit, draft, before);
  const { told, leave, tellAll } = useTold(problems);
  if (kind && JSON.stringify(kind) !== JSON.stringify(drawn)) setDrawn(kind);
  return {
    kit,
    made,
    addBus,
    draft,
    setDraft,
    change: (part: Partial<typeof draft>): void => setDraft((now) => ({ ...now, ...part })),
    kind,
    /** The last that could be read. */
    shown: kind ?? drawn,
    problems,
    told,
    leave,
    tellAll,
    before,
    isTouched: draft !== start.current,
    canKeep: Boolean(before && before.headers.length > 0) || draft.template === 'kept',
  };
}

export type ModuleFormState = ReturnType<typeof useModuleForm>;
