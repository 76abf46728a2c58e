import type { TakenKind } from '../../src/stock.ts';
import type { Editor } from '../editor.ts';
import { stockKeeperOf } from './my-stock.ts';

/**
 * Keeps kinds that were just made in my stock as well, silently: making one is saying that it is mine. What bears the id
 * or name of another stays out; it is offered on the page of my stock.
 */
export async function keepMade(editor: Editor, kinds: readonly TakenKind[]): Promise<boolean> {
  const { kit } = editor.layouts.layout();
  const done = await stockKeeperOf(editor).change({ do: 'keep', from: kit, kinds, onlyNew: true });
  return done.ok;
}
