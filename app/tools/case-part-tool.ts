import { type Hit, type SelectionKey, selectionKey } from '../canvas/model.ts';
import type { Editor } from '../editor.ts';
import { boardUnder, moduleUnder } from '../store/under-pointer.ts';
import { boardTool } from './board-tool.ts';
import type { Pointer, Tool } from './pointer.ts';
import { rowEndTool } from './row-end-tool.ts';

interface PartTool {
  /** What the tool takes hold of. */
  readonly key: SelectionKey;
  readonly tool: Tool;
}

/**
 * What drags the part of the case under a press: a row by its end, or a board. A part that is selected can be taken
 * hold of through whatever lies over it; by finger nothing else can.
 */
export function casePartTool(editor: Editor, from: Pointer, hit: Hit | null): PartTool | undefined {
  const { selection } = editor.session.getState();
  const canBeTaken = (key: SelectionKey, isFree: boolean): boolean =>
    selection.has(key) || (isFree && from.kind !== 'touch');

  if (hit?.type === 'row' && hit.on === 'end') {
    const key = selectionKey('row', hit.id);
    if (canBeTaken(key, true)) return { key, tool: rowEndTool(editor, hit.id) };
  }
  const board = boardUnder(editor, from);
  if (board === null) return undefined;
  const key = selectionKey('board', board);
  const isFree = hit?.type === 'board' && moduleUnder(editor, from) === null;
  return canBeTaken(key, isFree) ? { key, tool: boardTool(editor, board) } : undefined;
}
