import { type Note, verdictOf } from '../../src/index.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';

const MOST_NAMED = 3;

function tell(notes: readonly Note[], one: string, many: string): string[] {
  if (notes.length === 0) return [];
  const named = notes.slice(0, MOST_NAMED).map(({ headline }) => headline);
  const rest = notes.length - named.length;
  return [
    `${notes.length === 1 ? one : `${notes.length} ${many}`}: ${named.join('; ')}${rest ? `; ${rest} more` : ''}.`,
  ];
}

/** Says after each change which notes it brought and took, and how the take stands now. */
export function startAnnouncer(editor: Editor): () => void {
  let take = shownTake(editor).id;
  let before = shownAnalysis(editor).notes;

  return editor.layouts.store.subscribe((now, then) => {
    if (now.history.present === then.history.present) return;
    const { notes } = shownAnalysis(editor);
    if (shownTake(editor).id === take) {
      const had = new Set(before.map(({ key }) => key));
      const has = new Set(notes.map(({ key }) => key));
      const gone = before.filter(({ key }) => !has.has(key));
      const fresh = notes.filter(({ key }) => !had.has(key));
      const said = [...tell(fresh, 'New note', 'new notes'), ...tell(gone, 'Gone', 'notes gone')];
      if (said.length > 0) editor.session.setState({ spoken: `${said.join(' ')} ${verdictOf(notes).text}.` });
    }
    take = shownTake(editor).id;
    before = notes;
  });
}
