import type { Module, Ribbon } from '../../src/index.ts';
import { type Editor, shownTake } from '../editor.ts';
import { modulesIn, ribbonsIn } from '../store/selection.ts';

export const modulesSelected = (editor: Editor): readonly Module[] =>
  modulesIn(shownTake(editor), editor.session.getState().selection);

export const ribbonsSelected = (editor: Editor): readonly Ribbon[] =>
  ribbonsIn(shownTake(editor), editor.session.getState().selection);

export const hasModules = (editor: Editor): boolean => modulesSelected(editor).length > 0;

export const idsOf = (things: readonly { readonly id: string }[]): string[] => things.map(({ id }) => id);
