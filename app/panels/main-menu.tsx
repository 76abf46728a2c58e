import { lazy, Suspense, useState } from 'react';
import { Icon } from './icon.tsx';

const ID = 'main-menu';

const MenuBody = lazy(async () => ({ default: (await import('./menu-body.tsx')).MenuBody }));

/** The button for all that is seldom done; what stands in the menu is loaded when it is first opened. */
export function MainMenu() {
  const [wanted, setWanted] = useState(false);
  return (
    <>
      <button type="button" className="quiet icon" aria-label="Menu" title="Menu" popoverTarget={ID}>
        <Icon name="menu" />
      </button>
      <div id={ID} popover="auto" className="sheet-pop menu" onBeforeToggle={() => setWanted(true)}>
        <Suspense>{wanted && <MenuBody menu={ID} />}</Suspense>
      </div>
    </>
  );
}
