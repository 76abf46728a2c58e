import type { Module, Ribbon, Take } from '../../src/index.ts';
import { type SelectionKey, selectionKey } from '../canvas/model.ts';

export type Selection = ReadonlySet<SelectionKey>;

/** The selected modules that a take still has, in document order. */
export const modulesIn = ({ modules }: Take, selection: Selection): readonly Module[] =>
  modules.filter(({ id }) => selection.has(selectionKey('module', id)));

/** The selected ribbons that a take still has, in document order. */
export const ribbonsIn = ({ ribbons }: Take, selection: Selection): readonly Ribbon[] =>
  ribbons.filter(({ id }) => selection.has(selectionKey('ribbon', id)));

export const selectionOf = (type: 'module' | 'ribbon', ids: Iterable<string>): Selection =>
  new Set(Array.from(ids, (id) => selectionKey(type, id)));
