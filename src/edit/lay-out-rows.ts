import type { PatternRow } from '../layout/case-patterns.ts';
import type { Layout, Row, Take } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { nextRowName } from './add-row.ts';
import { boardsOf, withFields } from './case-parts.ts';
import { type Edited, editTake, refuse, withField } from './change.ts';
import { ROW_FIELDS } from './change-row.ts';
import { refuseIfUnfit } from './check-noun.ts';
import { freshRowId } from './fresh.ts';

/**
 * Gives the case the rows of a pattern. The rows that there are, from the top, become those of the pattern of the
 * same height, with all that stands in them; the pattern's others are new. A row that is left over stays below
 * them as long as anything stands in it.
 */
export interface LayOutRows {
  readonly type: 'lay-out-rows';
  readonly take: string;
  /** Top to bottom. */
  readonly rows: readonly PatternRow[];
  /** Of the pattern's rows; absent: as they are, and new ones like the first. */
  readonly depthMm?: number;
}

/** New rows where there is none to go by: common practice, no source. */
const PLAIN_DEPTH_MM = 60;

function holdsAnything(take: Take, { id }: Row): boolean {
  return [...take.modules, ...boardsOf(take)].some(({ row }) => row === id);
}

export function layOutRows(layout: Layout, edit: LayOutRows): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    if (edit.rows.length === 0) return refuse('A case needs a row');
    const left = [...take.rows];
    const depthMm = edit.depthMm ?? take.rows[0]?.depthMm ?? PLAIN_DEPTH_MM;
    const rows: Row[] = [];
    for (const { widthHp, heightU } of edit.rows) {
      const at = left.findIndex((row) => row.heightU === heightU);
      const [row] = at < 0 ? [] : left.splice(at, 1);
      if (row) {
        const { depthMm: depth } = edit;
        rows.push(withFields(row, ROW_FIELDS, { widthHp, ...(depth !== undefined && { depthMm: depth }) }));
      } else {
        const others = [...take.rows, ...rows.filter((one) => !take.rows.includes(one))];
        const id = freshRowId({ rows: others });
        rows.push({ id, name: nextRowName(others, rows.length), widthHp, heightU, depthMm });
      }
    }
    rows.push(...left.filter((row) => holdsAnything(take, row)));
    if (rows.length > OPEN_LIMITS.rows.most)
      return refuse(`A take holds no more than ${OPEN_LIMITS.rows.most} rows`);
    for (const row of rows) {
      const unfit = refuseIfUnfit('Row', row, row.name ?? 'a row');
      if (unfit) return unfit;
    }
    const isAsBefore = rows.length === take.rows.length && rows.every((row, i) => row === take.rows[i]);
    return ok(isAsBefore ? take : withField(take, 'rows', rows));
  });
}
