import { takeInCase } from '../../src/index.ts';
import type { Action } from '../actions/action.ts';
import { modulesSelected, ribbonsSelected } from '../actions/selected.ts';
import { type Editor, shownTake } from '../editor.ts';
import { chosenConnector } from '../store/aim.ts';

type Reason = string | ((editor: Editor) => string);

const ANY = 'Select something first';
const MODULE = 'Select a module first';
const RIBBON = 'Select a ribbon first';
const ONE_TAKE = 'There is only one take';

const nudging: Reason = (editor) =>
  modulesSelected(editor).length > 0 ? 'What is selected is pinned' : 'Select a module or a board first';

const ordering: Reason = (editor) => {
  if (shownTake(editor).ribbons.length === 0) return 'There is no ribbon in this take';
  return ribbonsSelected(editor).length > 0 ? 'No ribbon is left to lie over or under' : RIBBON;
};

/** Why an action cannot be done, where it cannot; by its id. Those that can always be done have no line. */
export const WHY_NOT: Readonly<Record<string, Reason>> = {
  undo: 'Nothing to undo',
  redo: 'Nothing to redo',
  remove: ANY,
  copy: MODULE,
  cut: MODULE,
  duplicate: MODULE,
  pin: MODULE,
  swap: (editor) =>
    modulesSelected(editor).length > 2 ? 'Select no more than two modules' : 'Select two modules first',
  'feed-all': 'No module is left without power',
  'select-joined': 'Select a module or a ribbon first',
  'nudge-left': nudging,
  'nudge-right': nudging,
  'nudge-up': nudging,
  'nudge-down': nudging,
  'compare-with-kin': 'This layout was not made from another',
  'toggle-heat': 'The stock names no voltage',
  'measure-ribbon': 'Select two modules or more first',
  'show-change': ({ layouts }) =>
    takeInCase(layouts.layout()) ? 'This take is the one in the case' : 'Mark a take as in the case first',
  'turn-ribbon': (editor) =>
    ribbonsSelected(editor).length > 1 ? 'Select one flat ribbon alone' : 'Select a flat ribbon first',
  'twist-ribbon': (editor) =>
    chosenConnector(editor) ? 'A lead has no twists' : 'Choose a connector of a flat ribbon first',
  'lock-ribbons': RIBBON,
  'label-ribbon': 'Select one ribbon alone',
  rehearse: 'Select a ribbon that is seated on a header first',
  'bring-to-front': ordering,
  'send-to-back': ordering,
  'next-ribbon': 'There is no ribbon in this take',
  'previous-ribbon': 'There is no ribbon in this take',
  'remove-take': 'It is the only take',
  'next-take': ONE_TAKE,
  'previous-take': ONE_TAKE,
  'next-note': 'There is no note to go to',
  'previous-note': 'There is no note to go to',
  'show-all-layers': 'Nothing is hidden',
};

export function whyNot(editor: Editor, action: Action): string | undefined {
  if (action.enabled(editor)) return undefined;
  const reason = WHY_NOT[action.id];
  return typeof reason === 'function' ? reason(editor) : reason;
}
