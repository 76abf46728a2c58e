import type { Edit } from '../edit/edit.ts';
import { nextInSeries } from '../edit/fresh.ts';
import type { Kit, ModuleKind } from '../layout/layout.ts';
import { saysTheSame } from '../layout/says-the-same.ts';
import type { ReadRow } from './read-table.ts';

/** What becomes of a row whose kind there is already. */
export type RowChoice = 'change' | 'new' | 'leave';

/** What can be done with a row, what is done unless somebody says otherwise first. */
export function choicesFor({ before, changed, made }: ReadRow): readonly RowChoice[] {
  if (!before) return ['new', 'leave'];
  const isNews = changed !== undefined && !saysTheSame(changed, before);
  return [...(isNews ? (['change'] as const) : []), 'leave', ...(made ? (['new'] as const) : [])];
}

/** What a table does to a kit. */
export interface TableEdit {
  /** Absent where nothing would change. */
  readonly edit?: Edit;
  /** Ids of the kinds that are made or changed. */
  readonly made: readonly string[];
  readonly changed: readonly string[];
}

const count = (n: number): string => `${n} ${n === 1 ? 'kind' : 'kinds'}`;

/** All that a table says, as one edit; a row by its number is done with as chosen. */
export function tableEdit(
  kit: Kit,
  rows: readonly ReadRow[],
  chosen: ReadonlyMap<number, RowChoice>,
): TableEdit {
  const names = kit.modules.map(({ name }) => name);
  const made: ModuleKind[] = [];
  const changed: ModuleKind[] = [];
  for (const row of rows) {
    const choices = choicesFor(row);
    const wish = chosen.get(row.row);
    const choice = wish && choices.includes(wish) ? wish : choices[0];
    if (choice === 'change' && row.changed) changed.push(row.changed);
    if (choice !== 'new' || !row.made) continue;
    const name = row.before ? nextInSeries(names, row.made.name) : row.made.name;
    names.push(name);
    made.push({ ...row.made, name });
  }
  const edits = [
    ...made.map((kind): Edit => ({ type: 'add-module-kind', kind })),
    ...changed.map((kind): Edit => ({ type: 'change-module-kind', kind })),
  ];
  const label =
    made.length > 0
      ? `make ${count(made.length)} from a table`
      : `change ${count(changed.length)} by a table`;
  return {
    ...(edits.length > 0 && { edit: { type: 'several', label, edits } }),
    made: made.map(({ id }) => id),
    changed: changed.map(({ id }) => id),
  };
}
