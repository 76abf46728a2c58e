import type { HarnessTest, Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { fingerprintOf, ribbonIdsOf } from '../wiring/fingerprint.ts';
import type { HarnessTestId } from '../wiring/harness-tests.ts';
import type { Edited } from './change.ts';
import { editRecord, type Mark, markOf, refuseMark } from './change-built.ts';
import { harnessWith, without } from './harness-record.ts';

/** Says that a harness has passed tests, as it is drawn now. It is named by any of its ribbons. */
export interface TickTest extends Mark {
  readonly type: 'tick-test';
  readonly take: string;
  readonly ribbon: string;
  readonly tests: readonly HarnessTestId[];
}

export function tickTest(layout: Layout, edit: TickTest): Edited<Layout> {
  const refusal = refuseMark(edit);
  if (refusal) return refusal;
  return editRecord(layout, edit.take, 'harnessTests', (before, take) => {
    const harness = harnessWith(layout.kit, take, edit.ribbon);
    if (!harness.ok) return harness;
    const ribbons = ribbonIdsOf(harness.value);
    const of = fingerprintOf(harness.value);
    const passed = before.filter((record) => record.of === of).map(({ test }) => test);
    const fresh = [...new Set(edit.tests)].filter((test) => !passed.includes(test));
    if (fresh.length === 0) return ok(before);
    const made = fresh.map((test): HarnessTest => ({ ribbons, test, of, ...markOf(edit) }));
    return ok([...without(before, fresh, ribbons), ...made]);
  });
}
