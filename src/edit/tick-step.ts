import type { Layout } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { type Edited, filterKept, refuse } from './change.ts';
import { editRecord, type Mark, markOf, refuseMark } from './change-built.ts';

/** Ticks a step of the work, or takes the tick away. */
export interface TickStep extends Mark {
  readonly type: 'tick-step';
  readonly take: string;
  /** What the step is about; the core does not ask what that is. */
  readonly step: string;
  readonly done: boolean;
}

export function tickStep(layout: Layout, edit: TickStep): Edited<Layout> {
  const { take, step, done } = edit;
  if (step === '' || step.length > OPEN_LIMITS.note.most) return refuse('There is no such step');
  return (
    refuseMark(edit) ??
    editRecord(layout, take, 'doneSteps', (before) => {
      const isDone = before.some((one) => one.step === step);
      if (!done) return ok(filterKept(before, (one) => one.step !== step));
      return ok(isDone ? before : [...before, { step, ...markOf(edit) }]);
    })
  );
}
