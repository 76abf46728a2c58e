import { applyEdit, checkTake, pressingNotes, verdictOf } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import { startAiming } from '../store/aim.ts';
import { judging } from '../store/analysis.ts';
import { startAnnouncer } from '../store/announcer.ts';
import { labelOf } from '../store/edit-label.ts';
import { markStarts } from '../tools/mark-starts.ts';
import { createToolbox } from '../tools/toolbox.ts';
import { showHints } from './hint-card.ts';
import { listenToClipboard } from './listen-to-clipboard.ts';
import { listenToFiles } from './listen-to-files.ts';
import { listenToKeys } from './listen-to-keys.ts';
import { listenToLinks } from './listen-to-links.ts';
import { listenToPointers } from './listen-to-pointers.ts';
import { listenToTray } from './listen-to-tray.ts';
import { loupeForFingers } from './loupe-for-fingers.ts';

/**
 * Everything that lets a user take hold of the drawing: pointers, keys, the tray, dropped files, a voice, the edits, and the checks.
 * A module of its own, loaded once the first picture stands.
 */
export function takeHold(editor: Editor, stage: HTMLElement): () => void {
  const toolbox = createToolbox(editor);
  editor.layouts.equip(applyEdit, labelOf);
  judging.set({ checkTake, pressingNotes, verdictOf });
  stage.dataset.held = '';
  const ends = [
    toolbox.release,
    listenToPointers(stage, toolbox),
    listenToKeys(editor, stage, toolbox),
    listenToTray(editor, stage, toolbox),
    listenToClipboard(editor, stage),
    listenToFiles(editor),
    listenToLinks(editor),
    startAnnouncer(editor),
    startAiming(editor),
    markStarts(editor),
    showHints(editor, stage),
    loupeForFingers(editor, stage),
  ];
  return () => {
    for (const end of ends) end();
  };
}
