import { useRef, useState } from 'react';
import type { ModuleKind } from '../../src/index.ts';
import { useKitInForm, useTold } from './kind-form.tsx';
import { moduleDraftOf, newModuleDraft, REAR_EDGES, readModule, withEdges } from './module-draft.ts';

/** The form as it stands, to be shown in short or in full: both read and write the very same. */
export function useModuleForm(before: ModuleKind | undefined, isFull: boolean) {
  const [kit, made, addBus] = useKitInForm();
  const [draft, setDraft] = useState(() => {
    const first = before ? moduleDraftOf(kit, before) : newModuleDraft(kit);
    return isFull ? withEdges(first, REAR_EDGES) : first;
  });
  const [drawn, setDrawn] = useState(before);
  const { kind, problems } = readModule(kit, draft, before);
  const { told, leave, tellAll } = useTold(problems);
  const asText = JSON.stringify(kind);
  const start = useRef(asText);
  if (kind && asText !== JSON.stringify(drawn)) setDrawn(kind);
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
    /** It says something else than when it was opened. */
    isTouched: asText !== start.current,
    canKeep: draft.headers.length > 0 || draft.template === 'kept',
  };
}

export type ModuleFormState = ReturnType<typeof useModuleForm>;
