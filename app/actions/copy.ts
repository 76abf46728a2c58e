import { clipOf, clipText } from '../../src/index.ts';
import { type Editor, shownTake } from '../editor.ts';
import type { Action } from './action.ts';
import { hasModules, modulesSelected } from './selected.ts';

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

interface Counted {
  readonly modules: { readonly length: number };
  readonly ribbons: { readonly length: number };
}

/** "3 modules and 1 ribbon". */
export const sizeInWords = ({ modules, ribbons }: Counted): string =>
  [
    counted(modules.length, 'module'),
    ...(ribbons.length > 0 ? [counted(ribbons.length, 'ribbon')] : []),
  ].join(' and ');

/** What is selected, as a text for the clipboard; `null` where that is no module. */
export function copySelected(editor: Editor): string | null {
  const modules = modulesSelected(editor);
  if (modules.length === 0 || editor.gestures.store.getState().running) return null;
  const clip = clipOf(editor.layouts.layout().kit, shownTake(editor), modules);
  editor.session.setState({ spoken: `Copied ${sizeInWords(clip)}.` });
  return clipText(clip);
}

export const copy: Action = {
  id: 'copy',
  label: () => 'Copy with ribbons',
  icon: 'copy',
  shortcuts: [{ key: 'c', mod: true }],
  byClipboard: true,
  enabled: hasModules,
  run: (editor) => {
    const text = copySelected(editor);
    if (text !== null) void editor.platform.clipboard().then((clipboard) => clipboard.put(text));
  },
};
