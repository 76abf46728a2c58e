import { emptyLayout } from '../../src/index.ts';
import type { MyStock } from '../../src/stock.ts';
import type { Editor } from '../editor.ts';
import { type Action, always } from './action.ts';
import { takeLayout } from './take-layout.ts';

/** Starts an empty case whose kit is a copy of my stock, with the question which case it is. */
export async function startFromStock(editor: Editor, stock: MyStock): Promise<void> {
  const { kitFromStock } = await import('../../src/stock.ts');
  takeLayout(editor, emptyLayout(kitFromStock(stock)), 'start a case from my stock');
  editor.session.setState({ stockDesk: null, fold: 'case' });
}

async function open(editor: Editor): Promise<void> {
  const { stockKeeperOf } = await import('../stock/my-stock.ts');
  const keeper = stockKeeperOf(editor);
  await keeper.refresh();
  const state = keeper.store.getState();
  if (state.is === 'open') await startFromStock(editor, state.stock);
  else if (state.is === 'fault')
    editor.session.setState({ banner: `Your stock cannot be opened: ${state.why}.` });
}

export const newFromStock: Action = {
  id: 'new-from-stock',
  label: () => 'New case from my stock',
  enabled: always,
  run: (editor) => void open(editor),
};
