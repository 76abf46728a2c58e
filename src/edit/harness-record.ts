import type { HarnessTest, Kit, Take } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { Harness } from '../wiring/harness.ts';
import { type Edited, filterKept, refuse } from './change.ts';

/** The harness that a ribbon belongs to. */
export function harnessWith(kit: Kit, take: Take, ribbon: string): Edited<Harness> {
  const harness = deriveTake(kit, take).harnesses.find(({ ribbons }) =>
    ribbons.some(({ id }) => id === ribbon),
  );
  return harness ? ok(harness) : refuse(`There is no ribbon "${ribbon}"`);
}

/**
 * Without these tests of these ribbons. What was tested together with others and is apart now stays on record for
 * those, which still have to be tested again.
 */
export function without(
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
