import { feedAll } from '../../src/index.ts';
import { perform } from '../actions/action.ts';
import { type Editor, shownAnalysis } from '../editor.ts';

/** Leads and gaps told one by one; of more there is a number. */
const MOST_TOLD = 3;

function tell(lead: string, sentences: readonly string[]): string[] {
  if (sentences.length === 0) return [];
  const rest = sentences.length - MOST_TOLD;
  return [lead, ...sentences.slice(0, MOST_TOLD), ...(rest > 0 ? [`And ${rest} more.`] : [])];
}

/** Feeds whatever needs it, in one step, and says what was chosen, why, and what could not be fed. */
export function feedAllIn(editor: Editor): void {
  const { mend, chosen, unfed } = feedAll(shownAnalysis(editor).derived);
  if (mend) perform(editor, mend.edit);
  const fed = `${chosen.length} ${chosen.length === 1 ? 'lead' : 'leads'} laid.`;
  const said = [...tell(fed, chosen), ...tell('Not fed:', unfed)].join(' ');
  editor.session.setState({ banner: said || null });
}
