import type { HarnessTest, Take } from '../layout/layout.ts';
import { remember } from '../layout/remember.ts';
import type { DerivedTake } from './derived-take.ts';
import { fingerprintOf, ribbonIdsOf } from './fingerprint.ts';
import type { Harness } from './harness.ts';

/** What a harness is tested for, in the order in which it is done. */
export const HARNESS_TESTS = ['stripe', 'continuity', 'no-short'] as const;

export type HarnessTestId = (typeof HARNESS_TESTS)[number];

/** How the tests of a harness stand. */
export interface HarnessState {
  readonly harness: Harness;
  readonly ribbons: readonly string[];
  readonly name: string;
  /** Tests passed by it as it is now. */
  readonly passed: ReadonlyMap<HarnessTestId, HarnessTest>;
  /** changed: something of it was tested, and it is no longer what was tested. */
  readonly state: 'untested' | 'partly' | 'tested' | 'changed';
}

const NO_TESTS: readonly HarnessTest[] = [];

const testsOf = ({ built }: Take): readonly HarnessTest[] => built?.harnessTests ?? NO_TESTS;

const isSameList = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i]);

function stateOf(harness: Harness, records: readonly HarnessTest[]): HarnessState {
  const ribbons = ribbonIdsOf(harness);
  const own = new Set(ribbons);
  const about = records.filter((record) => record.ribbons.some((id) => own.has(id)));
  const of = about.length > 0 ? fingerprintOf(harness) : '';
  const holds = about.filter((record) => record.of === of && isSameList(record.ribbons, ribbons));
  const passed = new Map(
    HARNESS_TESTS.flatMap((test) => {
      const record = holds.find((one) => one.test === test);
      return record ? [[test, record] as const] : [];
    }),
  );
  const isTested = passed.size === HARNESS_TESTS.length;
  const isStale = !isTested && holds.length < about.length;
  const state = isTested ? 'tested' : isStale ? 'changed' : passed.size > 0 ? 'partly' : 'untested';
  const name = harness.ribbons.map((ribbon) => ribbon.name).join(' + ');
  return { harness, ribbons, name, passed, state };
}

const firstOf = ({ ribbons }: Harness): number => ribbons[0]?.index ?? 0;

/** Every harness with a seat, in document order, and how its tests stand. */
export const harnessStates = remember((take: DerivedTake): readonly HarnessState[] => {
  const records = testsOf(take.take);
  return take.harnesses
    .filter(({ ribbons }) => ribbons.some(({ ribbon }) => ribbon.seats.length > 0))
    .toSorted((a, b) => firstOf(a) - firstOf(b))
    .map((harness) => stateOf(harness, records));
});

/** Names of harnesses that are no longer what was tested. */
export const testAgain = (take: DerivedTake): readonly string[] =>
  testsOf(take.take).length === 0
    ? []
    : harnessStates(take).flatMap(({ name, state }) => (state === 'changed' ? [name] : []));

/** Whether there is a harness with seats, and every one has passed all tests as it is now. */
export function isAllTested(take: DerivedTake): boolean {
  if (testsOf(take.take).length === 0) return false;
  const states = harnessStates(take);
  return states.length > 0 && states.every(({ state }) => state === 'tested');
}
