import type { Layout, Take } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, withField } from './change.ts';
import { freshTakeId, nameOfCopy, nextInSeries } from './fresh.ts';

/**
 * Adds a take at the end of the list; its id is what `freshTakeId` says beforehand. It is a copy of the take
 * named, without its as-built record (nobody has built the copy), or else the first take's case with nothing
 * in it.
 */
export interface AddTake {
  readonly type: 'add-take';
  readonly from?: string;
  /** Absent: the next in the series of the copied take's name, or of "Take". */
  readonly name?: string;
}

const emptied = ({ rows, supplies }: Take): Omit<Take, 'id' | 'name'> => ({
  rows,
  supplies,
  modules: [],
  ribbons: [],
});

export function addTake(layout: Layout, edit: AddTake): Edited<Layout> {
  const names = layout.takes.map(({ name }) => name);
  const model = edit.from === undefined ? ok(layout.takes[0] as Take) : find(layout.takes, edit.from, 'take');
  if (!model.ok) return model;
  const isCopy = edit.from !== undefined;
  const name =
    edit.name?.trim() || (isCopy ? nameOfCopy(names, model.value.name) : nextInSeries(names, 'Take'));
  const content = isCopy ? withField(model.value, 'built', undefined) : emptied(model.value);
  const take: Take = { ...content, id: freshTakeId(layout), name };
  return ok(withField(layout, 'takes', [...layout.takes, take]));
}
