import { memo, type RefObject, useMemo } from 'react';
import type { PlacedModule } from '../../src/index.ts';
import { selectionKey } from '../canvas/model.ts';
import { layOutSheet, moduleBox, type Sheet } from '../canvas/sheet.ts';
import { useAnalysis, useEditor, useGesture, useSession } from '../hooks.ts';
import { figure } from '../panels/figures.ts';
import { viewportNow } from '../store/view.ts';

const optionId = (module: string): string => `on-rails-${module}`;

interface OptionProps {
  readonly module: PlacedModule;
  readonly sheet: Sheet;
  readonly notes: number;
}

/** A module as a screen reader finds it: lying where it is drawn, with what the drawing shows in words. */
const Option = memo(function Option({ module: placed, sheet, notes }: OptionProps) {
  const { id, name, facts, module } = placed;
  const selected = useSession(({ selection }) => selection.has(selectionKey('module', id)));
  const { left, top, right, bottom } = moduleBox(sheet, placed);
  const words = [
    name,
    `${figure(facts.kind.widthHp)} HP at ${figure(module.atHp)}`,
    ...(module.pinned ? ['pinned'] : []),
    ...(notes > 0 ? [`${notes} ${notes === 1 ? 'note' : 'notes'}`] : []),
  ];
  return (
    <div
      id={optionId(id)}
      role="option"
      aria-selected={selected}
      tabIndex={-1}
      style={{ left, top, width: right - left, height: bottom - top }}
    >
      {words.join(', ')}
    </div>
  );
});

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
        {derived.places.rows.map((row) => (
          // biome-ignore lint/a11y/useSemanticElements: a list of options may hold groups, but no fieldsets.
          <div key={row.row.id} role="group" aria-label={row.row.name ?? `Row ${row.index + 1}`}>
            {derived.places.modules
              .filter((module) => module.row === row)
              .map((module) => (
                <Option key={module.id} module={module} sheet={sheet} notes={counts.get(module.id) ?? 0} />
              ))}
          </div>
        ))}
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
