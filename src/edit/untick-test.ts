import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { ribbonIdsOf } from '../wiring/fingerprint.ts';
import type { HarnessTestId } from '../wiring/harness-tests.ts';
import type { Edited } from './change.ts';
import { editRecord } from './change-built.ts';
import { harnessWith, without } from './harness-record.ts';

/** Takes back that a harness has passed tests, whatever it looked like then. */
export interface UntickTest {
  readonly type: 'untick-test';
  readonly take: string;
  readonly ribbon: string;
  readonly tests: readonly HarnessTestId[];
}

export function untickTest(layout: Layout, edit: UntickTest): Edited<Layout> {
  return editRecord(layout, edit.take, 'harnessTests', (before, take) => {
    const harness = harnessWith(layout.kit, take, edit.ribbon);
    return harness.ok ? ok(without(before, edit.tests, ribbonIdsOf(harness.value))) : harness;
  });
}
