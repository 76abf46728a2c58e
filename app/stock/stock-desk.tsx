import '../style/stock-desk.css';
import { Suspense } from 'react';
import { useEditor } from '../hooks.ts';
import { Dialog } from '../panels/dialog.tsx';
import type { StockPageId } from '../store/session.ts';
import { STOCK_PAGES } from './stock-pages.ts';

/** Everything that the kit and my own stock hold, over the drawing: one page for each sort of thing. */
export function StockDesk({ page }: { readonly page: StockPageId }) {
  const { session } = useEditor();
  const close = (): void => session.setState({ stockDesk: null });
  const shown = STOCK_PAGES.find(({ id }) => id === page) ?? STOCK_PAGES[0];
  return (
    <Dialog name="stock-desk" title="Stock" first={'nav [aria-current="page"]'} onClose={close}>
      <nav aria-label="Pages of the stock">
        {STOCK_PAGES.map(({ id, label, Mark }) => (
          <button
            key={id}
            type="button"
            aria-current={id === shown?.id ? 'page' : undefined}
            onClick={() => session.setState({ stockDesk: id })}
          >
            {label}
            <Suspense>{Mark && <Mark />}</Suspense>
          </button>
        ))}
      </nav>
      <div className="page">
        <Suspense>{shown && <shown.Page />}</Suspense>
      </div>
    </Dialog>
  );
}
