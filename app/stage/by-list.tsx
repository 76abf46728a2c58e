import { memo, type RefObject, useMemo } from 'react';
import type { PlacedModule, PlacedRow, Places } from '../../src/index.ts';
import { layOutSheet, moduleBox, type Sheet } from '../../src/index.ts';
import { selectionKey } from '../canvas/model.ts';
import { useAnalysis, useEditor, useGesture, useSession } from '../hooks.ts';
import { figure } from '../panels/figures.ts';
import { viewportNow } from '../store/view.ts';

const optionId = (module: string): string => `on-rails-${module}`;

/** What the drawing shows of a module, in words. */
function wordsOf({ name, facts, module }: PlacedModule, notes: number): string {
  const words = [name, `${figure(facts.kind.widthHp)} HP at ${figure(module.atHp)}`];
  if (module.pinned) words.push('pinned');
  if (notes > 0) words.push(`${notes} ${notes === 1 ? 'note' : 'notes'}`);
  return words.join(', ');
}

function useNoteCounts(): ReadonlyMap<string, number> {
  const { notes } = useAnalysis();
  return useMemo(() => {
    const counts = new Map<string, number>();
    for (const { subjects, level, accepted } of notes) {
      if (accepted || level === 'reminder') continue;
      for (const { type, id } of subjects) if (type === 'module') counts.set(id, (counts.get(id) ?? 0) + 1);
    }
    return counts;
  }, [notes]);
}

interface OptionsProps {
  readonly places: Places;
  readonly sheet: Sheet;
  readonly counts: ReadonlyMap<string, number>;
}

/**
 * All modules by row, as a screen reader finds them: each lies where it is drawn. Made anew when the take, the side or
 * the selection changes, not when the sheet or the keys move; elements without components of their own, since there may
 * be a thousand.
 */
const Options = memo(function Options({ places, sheet, counts }: OptionsProps) {
  const selection = useSession((session) => session.selection);
  const byRow = new Map(places.rows.map((row): [PlacedRow, PlacedModule[]] => [row, []]));
  for (const module of places.modules) byRow.get(module.row)?.push(module);
  return [...byRow].map(([{ row, index }, modules]) => (
    // biome-ignore lint/a11y/useSemanticElements: a list of options may hold groups, but no fieldsets.
    <div key={row.id} role="group" aria-label={row.name ?? `Row ${index + 1}`}>
      {modules.map((module) => {
        const { left, top, right, bottom } = moduleBox(sheet, module);
        return (
          <div
            key={module.id}
            id={optionId(module.id)}
            role="option"
            aria-selected={selection.has(selectionKey('module', module.id))}
            aria-label={wordsOf(module, counts.get(module.id) ?? 0)}
            tabIndex={-1}
            // From an anchor without size: one property to set instead of four.
            style={{ inset: `${top}px ${-right}px ${-bottom}px ${left}px` }}
          />
        );
      })}
    </div>
  ));
});

/** Follows the sheet about the stage with a transform alone: the list itself is laid out once, at 1 px per mm. */
function useSheetTransform(): string {
  const editor = useEditor();
  useAnalysis();
  useSession(({ viewport, stage }) => viewport ?? stage);
  const { x, y, scale } = viewportNow(editor);
  return `translate(${x}px,${y}px) scale(${scale})`;
}

/** The modules on the rails by list: one tab stop over the drawing, and the ear for pointers and keys. */
export function ByList({ ref }: { readonly ref: RefObject<HTMLDivElement | null> }) {
  const { derived } = useAnalysis();
  const side = useSession((session) => session.side);
  const cursor = useSession((session) => session.cursor);
  const counts = useNoteCounts();
  const sheet = useMemo(() => layOutSheet(derived, side, 1), [derived, side]);
  const transform = useSheetTransform();
  const atCursor = cursor === null ? undefined : derived.places.moduleById.get(cursor);
  const isStill = useGesture(({ running }) => !running);
  const ring = atCursor && isStill && moduleBox(sheet, atCursor);

  return (
    <div
      ref={ref}
      className="by-list"
      role="listbox"
      tabIndex={0}
      aria-label={`Modules on the rails, seen from the ${side}`}
      aria-multiselectable="true"
      aria-activedescendant={atCursor ? optionId(atCursor.id) : undefined}
    >
      <div className="options" style={{ transform }}>
        <Options places={derived.places} sheet={sheet} counts={counts} />
      </div>
      {ring && (
        <div className="cursor-frame" aria-hidden="true" style={{ transform }}>
          <div
            style={{
              left: ring.left,
              top: ring.top,
              width: ring.right - ring.left,
              height: ring.bottom - ring.top,
            }}
          />
        </div>
      )}
    </div>
  );
}
