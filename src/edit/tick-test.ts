import type { HarnessTest, Kit, Layout, Take } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { deriveTake } from '../wiring/derive.ts';
import { fingerprintOf, ribbonIdsOf } from '../wiring/fingerprint.ts';
import type { HarnessTestId } from '../wiring/harness-tests.ts';
import { type Edited, filterKept, find } from './change.ts';
import { editRecord, type Mark, markOf, refuseMark } from './change-built.ts';

/** Says that a harness has passed tests, as it is drawn now. It is named by any of its ribbons. */
export interface TickTest extends Mark {
  readonly type: 'tick-test';
  readonly take: string;
  readonly ribbon: string;
  readonly tests: readonly HarnessTestId[];
}

/** Takes back that a harness has passed tests, whatever it looked like then. */
export interface UntickTest {
  readonly type: 'untick-test';
  readonly take: string;
  readonly ribbon: string;
  readonly tests: readonly HarnessTestId[];
}

function harnessWith(kit: Kit, take: Take, ribbon: string) {
  const found = find(take.ribbons, ribbon, 'ribbon');
  if (!found.ok) return found;
  const harness = deriveTake(kit, take).harnesses.find(({ ribbons }) =>
    ribbons.some(({ id }) => id === ribbon),
  );
  return harness ? ok(harness) : find([], ribbon, 'ribbon');
}

/**
 * Without these tests of these ribbons. What was tested together with others and is apart now stays on record for
 * those, which still have to be tested again.
 */
function without(
  records: readonly HarnessTest[],
  tests: readonly string[],
  ribbons: readonly string[],
): readonly HarnessTest[] {
  const own = new Set(ribbons);
  const shrunk = records.map((record) => {
    const rest = filterKept(record.ribbons, (id) => !own.has(id));
    return tests.includes(record.test) && rest !== record.ribbons ? { ...record, ribbons: rest } : record;
  });
  const kept = shrunk.filter(({ ribbons: rest }, i) => rest.length > 0 || shrunk[i] === records[i]);
  const isSame = kept.length === records.length && kept.every((record, i) => record === records[i]);
  return isSame ? records : kept;
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

export function untickTest(layout: Layout, edit: UntickTest): Edited<Layout> {
  return editRecord(layout, edit.take, 'harnessTests', (before, take) => {
    const harness = harnessWith(layout.kit, take, edit.ribbon);
    return harness.ok ? ok(without(before, edit.tests, ribbonIdsOf(harness.value))) : harness;
  });
}
