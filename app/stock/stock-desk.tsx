import '../style/stock-desk.css';
import { Suspense } from 'react';
import { useModal } from '../hand-over/use-modal.ts';
import { useEditor } from '../hooks.ts';
import { Icon } from '../panels/icon.tsx';
import type { StockPageId } from '../store/session.ts';
import { STOCK_PAGES } from './stock-pages.ts';

/** Everything that the kit and my own stock hold, over the drawing: one page for each sort of thing. */
export function StockDesk({ page }: { readonly page: StockPageId }) {
  const { session } = useEditor();
  const ref = useModal('nav [aria-current="page"]');
  const close = (): void => session.setState({ stockDesk: null });
  const shown = STOCK_PAGES.find(({ id }) => id === page) ?? STOCK_PAGES[0];
  return (
    <dialog
      ref={ref}
      className="stock-desk"
      aria-labelledby="stock-desk-title"
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
    >
      <header>
        <h2 id="stock-desk-title">Stock</h2>
        <button type="button" className="quiet icon" aria-label="Close" title="Close (Esc)" onClick={close}>
          <Icon name="close" />
        </button>
      </header>
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
    </dialog>
  );
}
