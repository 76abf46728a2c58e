import { moduleBox } from '../../src/index.ts';
import { openChoices } from '../by-list/open-choices.ts';
import { connectorId, headerId, noteId } from '../by-list/tree.ts';
import { type Hit, selectionKey } from '../canvas/model.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { hitAt, notesAt } from '../store/under-pointer.ts';
import { sheetNow, viewportNow } from '../store/view.ts';
import { freeBerthAt } from './berths.ts';
import { gripAt } from './grip.ts';
import type { Pointer } from './pointer.ts';

/** The item of By list that was hit; of a module or board the header, of a ribbon the connector, where one was. */
function itemOf(editor: Editor, hit: Hit): string {
  const { moduleById, boardById } = shownAnalysis(editor).derived.places;
  const owner =
    hit.type === 'header' ? moduleById.get(hit.module) : hit.type === 'board' && boardById.get(hit.id);
  const header = owner && 'header' in hit && owner.headers.find(({ id }) => id === hit.header);
  if (header) return headerId(header);
  if (hit.type === 'header') return selectionKey('module', hit.module);
  if (hit.type === 'ribbon' && hit.connector !== undefined) return connectorId(hit.id, hit.connector);
  return selectionKey(hit.type, hit.id);
}

/** What of By list lies under a pointer: a note's mark, a free header or connector, a selected ribbon, then what is drawn uppermost. */
function itemAt(editor: Editor, pointer: Pointer): string | null {
  const [note] = notesAt(editor, pointer);
  if (note !== undefined) return noteId({ key: note });
  const berth = freeBerthAt(editor, pointer);
  if (berth) {
    const { on } = berth;
    return on.type === 'header' ? headerId(on.header) : connectorId(on.ribbon.id, on.connector);
  }
  const hit = gripAt(editor, pointer) ?? hitAt(editor, pointer);
  return hit && itemOf(editor, hit);
}

/** Opens what can be done with what lies under a pointer; whether there is anything. */
export function openChoicesAt(editor: Editor, pointer: Pointer): boolean {
  const item = itemAt(editor, pointer);
  if (item === null) return false;
  openChoices(editor, item, { x: pointer.x, y: pointer.y, onStage: true });
  return true;
}

/** Opens what can be done with a module, beside where it is drawn. */
export function askAbout(editor: Editor, module: string): void {
  const placed = shownAnalysis(editor).derived.places.moduleById.get(module);
  if (!placed) return;
  const { left, bottom } = moduleBox(sheetNow(editor), placed);
  const viewport = viewportNow(editor);
  const at = { x: viewport.x + left, y: viewport.y + bottom, onStage: true } as const;
  openChoices(editor, selectionKey('module', module), at);
}
