import { lazy, Suspense, useState } from 'react';

const ID = 'cautions';

const CautionsBody = lazy(async () => ({ default: (await import('./cautions-body.tsx')).CautionsBody }));

/** What to mind on the bench; always in sight, told in full on demand. */
export function Cautions() {
  const [wanted, setWanted] = useState(false);
  return (
    <>
      <button type="button" className="cautions-line" popoverTarget={ID}>
        <b>Before power:</b> unplug, wait, check stripes and seats
      </button>
      <div id={ID} popover="auto" className="sheet-pop cautions" onBeforeToggle={() => setWanted(true)}>
        <Suspense>{wanted && <CautionsBody />}</Suspense>
      </div>
    </>
  );
}
