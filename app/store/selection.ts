import type { Board, Module, Ribbon, Row, SubjectType, Take } from '../../src/index.ts';
import { type SelectionKey, selectionKey } from '../canvas/model.ts';

export type Selection = ReadonlySet<SelectionKey>;

interface Selected {
  readonly take: Take;
  readonly modules: readonly Module[];
  readonly ribbons: readonly Ribbon[];
}

const known = new WeakMap<Selection, Selected>();

/** What is selected and still in the take; looked up once, since many ask and a drag asks all the time. */
function selectedIn(take: Take, selection: Selection): Selected {
  const before = known.get(selection);
  if (before?.take === take) return before;
  const selected = {
    take,
    modules: take.modules.filter(({ id }) => selection.has(selectionKey('module', id))),
    ribbons: take.ribbons.filter(({ id }) => selection.has(selectionKey('ribbon', id))),
  };
  known.set(selection, selected);
  return selected;
}

/** The selected modules that a take still has, in document order. */
export const modulesIn = (take: Take, selection: Selection): readonly Module[] =>
  selectedIn(take, selection).modules;

/** The selected ribbons that a take still has, in document order. */
export const ribbonsIn = (take: Take, selection: Selection): readonly Ribbon[] =>
  selectedIn(take, selection).ribbons;

/** The selected boards that a take still has. */
export const boardsIn = ({ supplies }: Take, selection: Selection): readonly Board[] =>
  supplies.flatMap(({ boards }) => boards.filter(({ id }) => selection.has(selectionKey('board', id))));

/** The selected rows that a take still has, top to bottom. */
export const rowsIn = ({ rows }: Take, selection: Selection): readonly Row[] =>
  rows.filter(({ id }) => selection.has(selectionKey('row', id)));

/** The ribbon that alone is selected, if it is one. */
export function selectedAlone(take: Take, selection: Selection): Ribbon | undefined {
  const { modules, ribbons } = selectedIn(take, selection);
  return modules.length === 0 && ribbons.length === 1 ? ribbons[0] : undefined;
}

export const selectionOf = (type: SubjectType, ids: Iterable<string>): Selection =>
  new Set(Array.from(ids, (id) => selectionKey(type, id)));
