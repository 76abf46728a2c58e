import type { Edit } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import type { IconName } from '../panels/icon.tsx';
import type { Shortcut } from './shortcut.ts';

/** One thing that a user can do; buttons, menus and keys all read the same list. */
export interface Action {
  readonly id: string;
  label(editor: Editor): string;
  readonly icon?: IconName;
  readonly shortcuts?: readonly Shortcut[];
  /** Keys that mean something else on buttons and lists count only where the drawing has them. */
  readonly keysOnStageOnly?: true;
  /** One of several ways to do the same: left out of the list of keys. */
  readonly isVariant?: true;
  /** The browser tells of its keys as a copy, a cut or a paste. */
  readonly byClipboard?: true;
  /** It may be done while something is dragged. */
  readonly whileDragging?: true;
  enabled(editor: Editor): boolean;
  /** @param held - the key is held down, and this is one more of its repeats */
  run(editor: Editor, held?: boolean): void;
}

export const always = (): boolean => true;

/** Carries out an edit; a refusal is told in the banner. */
export function perform({ layouts, session }: Editor, edit: Edit): void {
  const done = layouts.run(edit);
  if (!done.ok) session.setState({ banner: `${done.error}.` });
}

/** Does it, if it can be done now. */
export function start(editor: Editor, action: Action, held = false): void {
  const heldOff = !action.whileDragging && editor.gestures.store.getState().running;
  if (!heldOff && action.enabled(editor)) action.run(editor, held);
}
