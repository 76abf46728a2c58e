import {
  type Edit,
  type Kit,
  layRibbon,
  type ModuleKind,
  type PlacedHeader,
  type RibbonKind,
} from '../../src/index.ts';
import { selectionKey } from '../canvas/model.ts';
import { headerPoint } from '../canvas/sheet.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { markPrefix } from '../store/leads.ts';
import { railUnder, sheetNow, toSheet } from '../store/view.ts';
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

/** The module with its middle under the pointer, kept on the rails. */
function placeUnder(editor: Editor, kind: ModuleKind, pointer: Pointer): Edit | null {
  const under = railUnder(editor, pointer);
  const { rows, id: take } = shownTake(editor);
  const row = under && rows[under.row];
  if (!row) return null;
  const wanted = snapTo(under.atHp - kind.widthHp / 2, stepFor(editor, pointer));
  const atHp = clamp(wanted, 0, Math.max(0, row.widthHp - kind.widthHp));
  return { type: 'place-module', take, kind: kind.id, row: row.id, atHp, push: pushesFor(editor, pointer) };
}

/** How far off its header a ribbon may be put down, px. */
export const REACH_PX = { mouse: 28, touch: 44, pen: 28 } as const;

/** Headers within reach of a pointer, the nearest first. */
function headersNear(editor: Editor, pointer: Pointer): PlacedHeader[] {
  const sheet = sheetNow(editor);
  const at = toSheet(editor, pointer);
  const { modules, boards } = shownAnalysis(editor).derived.places;
  return [...modules, ...boards]
    .flatMap(({ headers }) => headers)
    .map((header) => {
      const { x, y } = headerPoint(sheet, header);
      return { header, off: Math.hypot(x - at.x, y - at.y) };
    })
    .filter(({ off }) => off <= REACH_PX[pointer.kind])
    .sort((a, b) => a.off - b.off)
    .map(({ header }) => header);
}

/** The ribbon as it would lie from the nearest header that it can start on. */
function layUnder(editor: Editor, kind: RibbonKind, pointer: Pointer): Edit | null {
  const { derived } = shownAnalysis(editor);
  const take = shownTake(editor).id;
  const prefix = markPrefix(kind, derived.kit.kit);
  for (const header of headersNear(editor, pointer)) {
    const laid = layRibbon(derived, kind.id, header);
    if (laid) return { type: 'add-ribbon', take, kind: kind.id, prefix, ...laid };
  }
  return null;
}

/** The edit that would put what is in hand under a pointer; nothing where it has no place there. */
export const editUnder = (editor: Editor, { type, kind }: InHand, pointer: Pointer): Edit | null =>
  type === 'module' ? placeUnder(editor, kind, pointer) : layUnder(editor, kind, pointer);
