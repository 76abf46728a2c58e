import type { Board, Module, Ribbon, Row } from '../../src/index.ts';
import { type Editor, shownTake } from '../editor.ts';
import { boardsIn, modulesIn, ribbonsIn, rowsIn } from '../store/selection.ts';

export const modulesSelected = (editor: Editor): readonly Module[] =>
  modulesIn(shownTake(editor), editor.session.getState().selection);

export const ribbonsSelected = (editor: Editor): readonly Ribbon[] =>
  ribbonsIn(shownTake(editor), editor.session.getState().selection);

export const boardsSelected = (editor: Editor): readonly Board[] =>
  boardsIn(shownTake(editor), editor.session.getState().selection);

export const rowsSelected = (editor: Editor): readonly Row[] =>
  rowsIn(shownTake(editor), editor.session.getState().selection);

export const hasModules = (editor: Editor): boolean => modulesSelected(editor).length > 0;

export const idsOf = (things: readonly { readonly id: string }[]): string[] => things.map(({ id }) => id);
