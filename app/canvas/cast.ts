import {
  type DerivedTake,
  type LaidRibbon,
  type Note,
  type PlacedModule,
  type Ribbon,
  remember,
  type SubjectType,
  type WholeTake,
} from '../../src/index.ts';
import type { Moving, Scene } from './model.ts';

/** What stands still and what a gesture moves: they are drawn on layers of their own. */
export interface Cast {
  /** Whether a thing moves or is carried. */
  readonly has: (type: SubjectType, id: string) => boolean;
  readonly moves: (module: PlacedModule) => boolean;
  readonly carries: (ribbon: LaidRibbon) => boolean;
  /** Whether a note is about something that moves: its mark goes along. */
  readonly concerns: (note: Note) => boolean;
  /** The take as it was when the gesture began; absent while nothing moves. */
  readonly from?: WholeTake;
  /** Drawn whole instead of what stands still: the gesture changes the case itself. */
  readonly instead?: WholeTake;
  /** Differs when the still layer must be drawn anew. */
  readonly key: string;
}

interface Moved {
  readonly modules: readonly PlacedModule[];
  readonly ribbons: readonly LaidRibbon[];
}

const never = (): boolean => false;

export const STILL: Cast = { has: never, moves: never, carries: never, concerns: never, key: '' };

const isSeatedOn = ({ seats }: Ribbon, modules: ReadonlySet<string>): boolean =>
  seats.some(({ on }) => 'module' in on && modules.has(on.module));

const partSet = remember(({ parts }: WholeTake): ReadonlySet<DerivedTake> => new Set(parts));

/** Parts in which something stands, hangs or sits otherwise than in the other take: few, while a gesture runs. */
const partsUnlike = ({ parts }: WholeTake, other: WholeTake): readonly DerivedTake[] =>
  parts.filter((part, i) => part !== other.parts[i] && !partSet(other).has(part));

const ribbonSet = remember((ribbons: readonly Ribbon[]): ReadonlySet<Ribbon> => new Set(ribbons));

/** Ribbons that a gesture changed, and those on the modules that it moves, with all that is joined to them. */
function carriedIds(derived: WholeTake, other: WholeTake, modules: ReadonlySet<string>): string[] {
  const unlike = partsUnlike(derived, other);
  if (unlike.length === 0) return [];
  const others = ribbonSet(other.take.ribbons);
  const isTouched = ({ ribbon }: LaidRibbon): boolean => !others.has(ribbon) || isSeatedOn(ribbon, modules);
  return unlike
    .flatMap(({ harnesses }) => harnesses)
    .filter(({ ribbons }) => ribbons.some(isTouched))
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

const inOrder = <T extends { readonly index: number }>(things: readonly T[]): T[] =>
  things.toSorted((a, b) => a.index - b.index);

/** What a gesture moves and carries in a take, in document order. Costs as much as it moves, however large the take. */
export function movedIn(derived: WholeTake, { from, moves, carries }: Cast): Moved {
  const parts = from ? partsUnlike(derived, from) : [];
  return {
    modules: inOrder(parts.flatMap(({ places }) => places.modules.filter(moves))),
    ribbons: inOrder(parts.flatMap(({ wiring }) => wiring.ribbons.filter(carries))),
  };
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
  const has: Cast['has'] = (type, id) =>
    (type === 'module' && modules.has(id)) || (type === 'ribbon' && ribbons.has(id));
  return {
    from: scene.derived,
    has,
    moves: ({ id }) => modules.has(id),
    carries: ({ id }) => ribbons.has(id),
    concerns: ({ subjects }) => subjects.some(({ type, id }) => has(type, id)),
    key: `${scene.heat ? 'without heat ' : ''}${keyOf(scene.derived, modules, ribbons)}`,
  };
}
