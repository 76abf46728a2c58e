import { type DerivedTake, type Note, type Take, testAgain, verdictOf } from '../../src/index.ts';
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

/** Ribbons that a change took out of the take: some go with the modules that they were on. */
function tellPulledOut(before: Take, after: Take): string[] {
  const has = new Set(after.ribbons.map(({ id }) => id));
  const gone = before.ribbons.filter(({ id }) => !has.has(id)).map(({ id, label }) => label || id);
  if (gone.length === 0) return [];
  const rest = gone.length - MOST_NAMED;
  return [
    `Back in the stock: ${gone.slice(0, MOST_NAMED).join(', ')}${rest > 0 ? ` and ${rest} more` : ''}.`,
  ];
}

/** Harnesses that a change made another than was tested, and what is no longer to be tested again. */
function tellTests(before: DerivedTake, after: DerivedTake): string[] {
  const [had, has] = [testAgain(before), testAgain(after)];
  const fresh = has.filter((name) => !had.includes(name));
  const settled = had.some((name) => !has.includes(name));
  if (fresh.length > 0) return [`Test again: ${fresh.join(', ')}.`];
  return settled && has.length === 0 ? ['Nothing is to be tested again.'] : [];
}

/** Says after each change which ribbons and notes went and which notes came, and how the take stands now. */
export function startAnnouncer(editor: Editor): () => void {
  let take = shownTake(editor);
  let { notes: before, derived: was } = shownAnalysis(editor);

  return editor.layouts.store.subscribe((now, then) => {
    if (now.history.present === then.history.present) return;
    const { notes, derived } = shownAnalysis(editor);
    const shown = shownTake(editor);
    if (shown.id === take.id) {
      const had = new Set(before.map(({ key }) => key));
      const has = new Set(notes.map(({ key }) => key));
      const gone = before.filter(({ key }) => !has.has(key));
      const fresh = notes.filter(({ key }) => !had.has(key));
      const said = [
        ...tellPulledOut(take, shown),
        ...tell(fresh, 'New note', 'new notes'),
        ...tell(gone, 'Gone', 'notes gone'),
        ...tellTests(was, derived),
      ];
      if (said.length > 0)
        editor.session.setState({ spoken: `${said.join(' ')} ${verdictOf(notes, derived).text}.` });
    }
    take = shown;
    before = notes;
    was = derived;
  });
}
