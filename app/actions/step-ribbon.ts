import type { LaidRibbon } from '../../src/index.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { selectionOf } from '../store/selection.ts';
import type { Action } from './action.ts';
import { modulesSelected, ribbonsSelected } from './selected.ts';

const isOn =
  (modules: ReadonlySet<string>) =>
  ({ ribbon }: LaidRibbon): boolean =>
    ribbon.seats.some(({ on }) => 'module' in on && modules.has(on.module));

/** The next one in the take, those that are seated nowhere too; from a module, the first one on it. */
function stepRibbon(editor: Editor, step: 1 | -1): void {
  const { ribbons } = shownAnalysis(editor).derived.wiring;
  const [selected] = ribbonsSelected(editor);
  const modules = new Set(modulesSelected(editor).map(({ id }) => id));
  const at = ribbons.findIndex(({ id }) => id === selected?.id);
  const after = at < 0 && step < 0 ? 0 : at;
  const next =
    (at < 0 && ribbons.find(isOn(modules))) || ribbons[(after + step + ribbons.length) % ribbons.length];
  if (!next) return;
  const seated = new Set(next.ribbon.seats.map(({ connector }) => connector)).size;
  editor.session.setState({
    selection: selectionOf('ribbon', [next.id]),
    connector: null,
    focus: null,
    spoken: `${next.name}, ${next.facts.kind.name}, ${seated} of ${next.uses.length} connectors seated.`,
  });
}

const hasRibbons = (editor: Editor): boolean => shownTake(editor).ribbons.length > 0;

export const nextRibbon: Action = {
  id: 'next-ribbon',
  label: () => 'Next ribbon',
  shortcuts: [{ key: 'b' }],
  enabled: hasRibbons,
  run: (editor) => stepRibbon(editor, 1),
};

export const previousRibbon: Action = {
  id: 'previous-ribbon',
  label: () => 'Previous ribbon',
  shortcuts: [{ key: 'b', shift: true }],
  enabled: hasRibbons,
  run: (editor) => stepRibbon(editor, -1),
};
