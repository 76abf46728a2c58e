import { lazy, Suspense } from 'react';
import { useEditor, useSession } from '../hooks.ts';
import { type Fold, isPanel } from '../store/session.ts';
import { MarginPanel } from './margin-panel.tsx';
import { Notes } from './notes.tsx';
import { ThisPart } from './this-part.tsx';
import { LoadLines, TitleBlock } from './title-block.tsx';
import { Tray } from './tray.tsx';
import { useShownNotes } from './use-notes.ts';

const ListPanel = lazy(async () => ({ default: (await import('../by-list/list-panel.tsx')).ListPanel }));

const HeatLegend = lazy(async () => ({ default: (await import('../power/heat-legend.tsx')).HeatLegend }));

const FOLDS: readonly { readonly id: Fold; readonly label: string }[] = [
  { id: 'stock', label: 'Stock' },
  { id: 'notes', label: 'Notes' },
  { id: 'part', label: 'This part' },
  { id: 'case', label: 'Case' },
  { id: 'list', label: 'By list' },
];

/** On a narrow screen tray, notes and part fold to the bottom, one open at a time. */
export function FoldBar() {
  const { session } = useEditor();
  const fold = useSession((state) => state.fold);
  const hasHeat = useSession(({ heat }) => heat !== null) && fold !== 'power';
  const open = useShownNotes(
    (notes) => notes.filter(({ level, accepted }) => level !== 'reminder' && !accepted).length,
  );
  return (
    <div className="folds">
      <Suspense>{hasHeat && <HeatLegend />}</Suspense>
      <TitleBlock />
      {fold && (
        <section className="fold-sheet" id="fold-sheet" aria-label="Folded out">
          {fold === 'stock' && <Tray />}
          {fold === 'notes' && <Notes besideRows={false} />}
          {fold === 'notes' && <LoadLines />}
          {isPanel(fold) && <MarginPanel />}
          <Suspense>{fold === 'list' && <ListPanel />}</Suspense>
          {fold === 'part' && (
            <ThisPart hint="Nothing is selected. Tap a module, a ribbon, a board or a row’s rail." />
          )}
        </section>
      )}
      <div className="fold-tabs">
        {FOLDS.map(({ id, label }) => (
          <button
            key={id}
            type="button"
            aria-expanded={fold === id}
            aria-controls={fold === id ? 'fold-sheet' : undefined}
            onClick={() => session.setState({ fold: fold === id ? null : id })}
          >
            {label}
            {id === 'notes' && open > 0 && <small>{open}</small>}
          </button>
        ))}
      </div>
    </div>
  );
}
