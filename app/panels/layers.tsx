import { lazy, Suspense, useState } from 'react';
import { useSession } from '../hooks.ts';
import { Icon } from './icon.tsx';

const ID = 'layers';

const LayersBody = lazy(async () => ({ default: (await import('./layers-body.tsx')).LayersBody }));

/** The button that tells whether something is hidden, and opens the list of what can be. */
export function Layers() {
  const [wanted, setWanted] = useState(false);
  const count = useSession(({ hidden }) => hidden.size);
  return (
    <>
      <button type="button" className="layers-line" title="Layers of the drawing" popoverTarget={ID}>
        <Icon name="layers" />
        <span>Layers</span>
        {count > 0 && <b>{count} hidden</b>}
      </button>
      <div id={ID} popover="auto" className="sheet-pop layers" onBeforeToggle={() => setWanted(true)}>
        <Suspense>{wanted && <LayersBody />}</Suspense>
      </div>
    </>
  );
}
