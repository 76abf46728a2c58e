import { assignHeaders } from './assign-headers.ts';
import { type Choice, type Chosen, SAME_MV } from './choose.ts';
import { judgeOf } from './judge-choice.ts';
import { LossRows } from './loss-bounds.ts';
import type { Columns } from './model.ts';
import { searchQuickly } from './quick-search.ts';
import type { Task } from './task.ts';

interface Quick {
  readonly chosen: Chosen;
  /** Nothing is left to be proven. */
  readonly isSettled: boolean;
}

/** The best choice where it can be had without an engine; nothing where it cannot, or would not stand. */
export function chooseQuickly(task: Task, columns: Columns): Quick | undefined {
  const rows = new LossRows(task, columns, true);
  const found = searchQuickly(task, columns, rows);
  if (!found) return undefined;
  const byColumn = new Map(columns.leads.map((lead) => [lead.column, lead]));
  const assigned = assignHeaders(
    found.leads.map((list) => list.flatMap((column) => byColumn.get(column) ?? [])),
  );
  if (!assigned.ok) return undefined;
  const made = new Set([...found.groups, ...assigned.value.map(({ column }) => column)]);
  const choice: Choice = {
    groups: columns.groups.filter(({ column }) => made.has(column)),
    leads: assigned.value,
    values: [...columns.groups, ...columns.leads].map(({ column }) => (made.has(column) ? 1 : 0)),
  };
  const { worstLossMv, broken } = judgeOf(task, columns)(choice);
  if (broken.length > 0) return undefined;
  if (!found.isProven)
    return {
      chosen: { choice, score: { ...found.score, worstLossMv }, proven: 0, bound: 0 },
      isSettled: false,
    };
  const isAsTold = Math.abs(worstLossMv - found.score.worstLossMv) < SAME_MV && !rows.mayMesh;
  const isKnown = isAsTold && (rows.isFree || found.score.unfed === 0);
  return {
    chosen: {
      choice,
      score: { ...found.score, worstLossMv },
      proven: isKnown ? 6 : 5,
      bound: found.score.cost,
    },
    isSettled: isKnown,
  };
}
