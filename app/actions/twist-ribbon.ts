import { orderOf } from '../../src/index.ts';
import { type Editor, shownTake } from '../editor.ts';
import { chosenConnector } from '../store/aim.ts';
import { type Action, perform } from './action.ts';

/** The gap after the connector chosen, or before it where it is the last; flat ribbons only. */
function gapAtChosen(editor: Editor) {
  const chosen = chosenConnector(editor);
  if (!chosen?.ribbon.facts.flat) return undefined;
  const { ribbon, connector } = chosen;
  const after = Math.min(orderOf(ribbon, connector), ribbon.uses.length - 2);
  return { ribbon, after, halfTwists: ribbon.ribbon.twists?.[after] ?? 0 };
}

function toggleTwist(editor: Editor): void {
  const gap = gapAtChosen(editor);
  if (!gap) return;
  const { ribbon, after } = gap;
  const halfTwists = gap.halfTwists > 0 ? 0 : 1;
  perform(editor, { type: 'twist-ribbon', take: shownTake(editor).id, ribbon: ribbon.id, after, halfTwists });
}

export const twistRibbon: Action = {
  id: 'twist-ribbon',
  label: (editor) =>
    (gapAtChosen(editor)?.halfTwists ?? 0) > 0 ? 'Take the twist out' : 'Half-twist after this connector',
  shortcuts: [{ key: 'w' }],
  enabled: (editor) => gapAtChosen(editor) !== undefined,
  run: toggleTwist,
};
