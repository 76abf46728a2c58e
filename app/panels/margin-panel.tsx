import { lazy, Suspense } from 'react';
import { useSession } from '../hooks.ts';

const AsBuiltPanel = lazy(async () => ({
  default: (await import('../as-built/as-built-panel.tsx')).AsBuiltPanel,
}));
const CasePanel = lazy(async () => ({ default: (await import('./case/case-panel.tsx')).CasePanel }));
const ChangePanel = lazy(async () => ({
  default: (await import('../as-built/change-panel.tsx')).ChangePanel,
}));
const FaultsPanel = lazy(async () => ({ default: (await import('../faults/faults-panel.tsx')).FaultsPanel }));
const PowerPanel = lazy(async () => ({ default: (await import('../power/power-panel.tsx')).PowerPanel }));
const TakesPanel = lazy(async () => ({ default: (await import('../takes/takes-panel.tsx')).TakesPanel }));

/** Whatever takes the place of the notes; loaded with the first of it. */
export function MarginPanel() {
  const fold = useSession((session) => session.fold);
  return (
    <Suspense>
      {fold === 'case' && <CasePanel />}
      {fold === 'power' && <PowerPanel />}
      {fold === 'built' && <AsBuiltPanel />}
      {fold === 'change' && <ChangePanel />}
      {fold === 'faults' && <FaultsPanel />}
      {fold === 'takes' && <TakesPanel />}
    </Suspense>
  );
}
