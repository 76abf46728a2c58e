import type { Edit, Kit, ModuleKind, RibbonKind } from '../../src/index.ts';
import { selectionKey } from '../canvas/model.ts';
import { type Editor, shownTake } from '../editor.ts';
import { railUnder } from '../store/view.ts';
import { pushesFor, stepFor } from './drag-tool.ts';
import type { Pointer } from './pointer.ts';
import { snapTo } from './slide.ts';

/** A kind taken from the stock. */
export type InHand =
  | { readonly type: 'module'; readonly kind: ModuleKind }
  | { readonly type: 'ribbon'; readonly kind: RibbonKind };

/** What the session's key for it names in the kit; nothing where the kit has no such kind. */
export function inHandOf(key: string | null, kit: Kit): InHand | null {
  const module = kit.modules.find(({ id }) => selectionKey('module', id) === key);
  if (module) return { type: 'module', kind: module };
  const ribbon = kit.ribbons.find(({ id }) => selectionKey('ribbon', id) === key);
  return ribbon ? { type: 'ribbon', kind: ribbon } : null;
}

const clamp = (value: number, least: number, most: number): number => Math.max(least, Math.min(value, most));

/** The edit that puts a module with its middle under the pointer, kept on the rails. */
export function placeUnder(editor: Editor, kind: ModuleKind, pointer: Pointer): Edit | null {
  const under = railUnder(editor, pointer);
  const { rows, id: take } = shownTake(editor);
  const row = under && rows[under.row];
  if (!row) return null;
  const wanted = snapTo(under.atHp - kind.widthHp / 2, stepFor(editor, pointer));
  const atHp = clamp(wanted, 0, Math.max(0, row.widthHp - kind.widthHp));
  return { type: 'place-module', take, kind: kind.id, row: row.id, atHp, push: pushesFor(editor, pointer) };
}
