import type { Action } from '../actions/action.ts';
import { heldKeys } from '../actions/held-keys.ts';
import { actions } from '../actions/index.ts';
import type { WithKeys } from '../actions/key-choices.ts';
import type { Editor } from '../editor.ts';

/** Something that has a key or could have one. */
export interface Keyed extends WithKeys {
  readonly label: string;
  /** Its keys count while a ribbon is drawn, and then only. */
  readonly isHeld?: true;
  readonly whileDragging?: true;
  /** The browser tells of its keys as a copy, a cut or a paste. */
  readonly byClipboard?: true;
}

const keyedOf = (editor: Editor, action: Action): Keyed => ({
  ...action,
  label: action.label(editor),
});

/** All that keys can be given to. */
export const allKeyed = (editor: Editor): readonly Keyed[] => [
  ...actions.map((action) => keyedOf(editor, action)),
  ...heldKeys.map((held) => ({ ...held, isHeld: true as const })),
];

/** What keys are for, by the actions' ids. */
export const KEY_GROUPS: readonly (readonly [name: string, ids: readonly string[]])[] = [
  ['Undo and select', ['undo', 'redo', 'remove', 'select-all', 'select-joined', 'let-go']],
  ['Copy', ['copy', 'cut', 'paste', 'duplicate']],
  [
    'Modules',
    [
      'nudge-left',
      'nudge-right',
      'nudge-up',
      'nudge-down',
      'swap',
      'pin',
      'toggle-push',
      'toggle-half-hp',
      'new-module-kind',
    ],
  ],
  [
    'Ribbons and leads',
    [
      'next-ribbon',
      'previous-ribbon',
      'turn-ribbon',
      'twist-ribbon',
      'lock-ribbons',
      'label-ribbon',
      'bring-to-front',
      'send-to-back',
      'measure-ribbon',
      'rehearse',
      'feed-all',
      'new-ribbon-kind',
      'new-lead-kind',
    ],
  ],
  ['While a ribbon is drawn', heldKeys.map(({ id }) => id)],
  [
    'Look at the case',
    [
      'turn',
      'fit',
      'zoom-in',
      'zoom-out',
      'toggle-leads',
      'show-all-layers',
      'toggle-heat',
      'next-note',
      'previous-note',
    ],
  ],
  [
    'Open and shut',
    [
      'show-list',
      'show-case',
      'show-stock',
      'show-power',
      'show-faults',
      'show-built',
      'show-change',
      'mark-in-case',
    ],
  ],
  ['Takes', ['next-take', 'previous-take', 'show-takes', 'add-take', 'remove-take']],
  [
    'Layouts, files and paper',
    [
      'show-layouts',
      'show-states',
      'compare-with-kin',
      'new-layout',
      'new-from-stock',
      'new-empty-stock',
      'open-demo',
      'open-file',
      'save-file',
      'hand-over',
      'bench-sheet',
    ],
  ],
  [
    'Help and colours',
    [
      'show-help',
      'find-command',
      'show-keys',
      'show-licences',
      'theme-auto',
      'theme-light',
      'theme-dark',
      'theme-dim',
    ],
  ],
];
