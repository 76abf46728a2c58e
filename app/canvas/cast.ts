import type { DerivedTake, LaidRibbon, Note, PlacedModule, Ribbon } from '../../src/index.ts';
import type { Moving, Scene } from './model.ts';

/** What stands still and what a gesture moves: they are drawn on layers of their own. */
export interface Cast {
  readonly moves: (module: PlacedModule) => boolean;
  readonly carries: (ribbon: LaidRibbon) => boolean;
  /** Whether a note is about something that moves: its mark goes along. */
  readonly concerns: (note: Note) => boolean;
  /** Drawn whole instead of what stands still: the gesture changes the case itself. */
  readonly instead?: DerivedTake;
  /** Differs when the still layer must be drawn anew. */
  readonly key: string;
}

export const STILL: Cast = { moves: () => false, carries: () => false, concerns: () => false, key: '' };

const isSeatedOn = ({ seats }: Ribbon, modules: ReadonlySet<string>): boolean =>
  seats.some(({ on }) => 'module' in on && modules.has(on.module));

/** Ribbons that a gesture changed, and those on the modules that it moves, with all that is joined to them. */
function carriedIds(
  { take, harnesses }: DerivedTake,
  shown: DerivedTake,
  modules: ReadonlySet<string>,
): string[] {
  const others = new Set(shown.take.ribbons);
  const touched = new Set(
    take.ribbons.filter((ribbon) => !others.has(ribbon) || isSeatedOn(ribbon, modules)).map(({ id }) => id),
  );
  return harnesses
    .filter(({ ribbons }) => ribbons.some(({ id }) => touched.has(id)))
    .flatMap(({ ribbons }) => ribbons.map(({ id }) => id));
}

const isSame = (a: ReadonlySet<string>, b: ReadonlySet<string>): boolean =>
  a === b || (a.size === b.size && [...a].every((id) => b.has(id)));

/** Whether rows, supplies or boards differ. */
const changesCase = ({ take }: DerivedTake, other: DerivedTake): boolean =>
  take.rows !== other.take.rows || take.supplies !== other.take.supplies;

/** Whether the same modules move and no ribbon was changed since: then what stands still does so yet. */
export const movesOn = (before: Moving | null, moving: Moving | null): boolean =>
  before !== null &&
  moving !== null &&
  before.derived.take.ribbons === moving.derived.take.ribbons &&
  !changesCase(before.derived, moving.derived) &&
  isSame(before.modules, moving.modules);

/** What is new was never drawn among what stands still: a ribbon that is being laid leaves it as it is. */
function keyOf(
  { places, wiring }: DerivedTake,
  modules: ReadonlySet<string>,
  ribbons: ReadonlySet<string>,
): string {
  const moved = [...modules].filter((id) => places.moduleById.has(id)).sort();
  const carried = [...ribbons].filter((id) => wiring.ribbonById.has(id)).sort();
  return moved.length + carried.length === 0 ? STILL.key : JSON.stringify([moved, carried]);
}

/** Sorts a take into what stands still and what moves. */
export function castOf(scene: Scene, moving: Moving | null): Cast {
  if (!moving) return STILL;
  const { modules, derived } = moving;
  if (changesCase(scene.derived, derived)) {
    const { rows, supplies } = derived.take;
    return { ...STILL, instead: derived, key: JSON.stringify([rows, supplies]) };
  }
  const ribbons = new Set([
    ...carriedIds(scene.derived, derived, modules),
    ...carriedIds(derived, scene.derived, modules),
  ]);
  return {
    moves: ({ id }) => modules.has(id),
    carries: ({ id }) => ribbons.has(id),
    concerns: ({ subjects }) =>
      subjects.some(
        ({ type, id }) => (type === 'module' && modules.has(id)) || (type === 'ribbon' && ribbons.has(id)),
      ),
    key: `${scene.heat ? 'without heat ' : ''}${keyOf(scene.derived, modules, ribbons)}`,
  };
}
