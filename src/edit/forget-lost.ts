import type { Layout, Take } from '../layout/layout.ts';
import { filterKept, mapKept, withField } from './change.ts';
import { withBuilt } from './change-built.ts';
import { without } from './harness-record.ts';

type Named = readonly { readonly id: string }[];

/** Ids that were there before and are no longer. */
function lostOf(before: Named, after: Named): ReadonlySet<string> {
  if (before === after) return new Set();
  const kept = new Set(after.map(({ id }) => id));
  return new Set(before.flatMap(({ id }) => (kept.has(id) ? [] : [id])));
}

function forgetIn(take: Take, before: Take): Take {
  const { harnessTests, readings } = take.built ?? {};
  if (!harnessTests && !readings) return take;
  const lost = {
    module: lostOf(before.modules, take.modules),
    supply: lostOf(before.supplies, take.supplies),
  };
  const ribbons = lostOf(before.ribbons, take.ribbons);
  const tests = [...new Set(harnessTests?.map(({ test }) => test))];
  const tested = harnessTests && ribbons.size > 0 ? without(harnessTests, tests, [...ribbons]) : harnessTests;
  const read = readings && filterKept(readings, ({ on, id }) => !lost[on].has(id));
  const retested = tested === harnessTests ? take : withBuilt(take, 'harnessTests', tested);
  return read === readings ? retested : withBuilt(retested, 'readings', read);
}

/**
 * The layout after an edit without tests and readings of what the edit took away: what comes next may bear the same
 * id, and is another thing.
 */
export function forgetLost(before: Layout, after: Layout): Layout {
  if (before.takes === after.takes) return after;
  const was = new Map(before.takes.map((take) => [take.id, take]));
  const takes = mapKept(after.takes, (take) => {
    const old = was.get(take.id);
    return old && old !== take ? forgetIn(take, old) : take;
  });
  return withField(after, 'takes', takes);
}
