import { describe, expect, it } from 'vitest';
import type { Note } from '../../src/checks/check.ts';
import { checkTake } from '../../src/checks/run.ts';
import { type Verdict, verdictOf } from '../../src/checks/verdict.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import type { Edit } from '../../src/edit/edit.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout, Take } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { HARNESS_TESTS, harnessStates } from '../../src/wiring/harness-tests.ts';

const demo = demoLayout();
const takeOf = (layout: Layout): Take => layout.takes[0] as Take;
const derived = (layout: Layout) => deriveTake(layout.kit, takeOf(layout));

const edited = (layout: Layout, edit: Edit): Layout => {
  const done = applyEdit(layout, edit);
  if (!done.ok) throw new Error(done.error.message);
  return done.value;
};

const states = harnessStates(derived(demo));
const take = takeOf(demo).id;
const first = states[0]?.ribbons[0] as string;

const tested = states.reduce(
  (layout, { ribbons }) =>
    edited(layout, { type: 'tick-test', take, ribbon: ribbons[0] as string, tests: HARNESS_TESTS }),
  demo,
);
const changed = edited(tested, { type: 'turn-ribbon', take, ribbon: first, seats: 'keep' });
const partly = edited(tested, { type: 'untick-test', take, ribbon: first, tests: ['continuity'] });

const note = (check: string, level: Note['level'], accepted?: true): Note => ({
  check,
  level,
  take,
  key: check,
  subjects: [],
  message: '',
  headline: '',
  detail: '',
  remedy: '',
  facts: '',
  ...(accepted && { accepted }),
});

const damage = note('overload', 'damage');
const fault = note('overlap', 'fault');
const unknown = note('unknown-facts', 'reminder');
const other = note('stripe-side', 'reminder');

describe('the verdict', () => {
  it.each<[string, Note[], Layout, Verdict['state']]>([
    ['nothing found, nothing tested', [], demo, 'clear'],
    ['a reminder', [other], demo, 'clear'],
    ['some tested', [], partly, 'clear'],
    ['all tested', [other], tested, 'tested'],
    ['all tested, a fault put away', [note('overlap', 'fault', true)], tested, 'tested'],
    ['all tested, facts missing', [unknown], tested, 'incomplete'],
    ['all tested, missing facts put away', [note('unknown-facts', 'reminder', true)], tested, 'tested'],
    ['all tested, a fault', [fault], tested, 'conflicts'],
    ['all tested, damage and missing facts', [damage, unknown], tested, 'conflicts'],
    ['one changed since', [other], changed, 'changed'],
    ['one changed since, facts missing', [unknown], changed, 'incomplete'],
    ['one changed since, damage', [damage], changed, 'conflicts'],
  ])('of %s', (_, notes, layout, state) => {
    expect(verdictOf(notes, derived(layout)).state).toBe(state);
  });

  it('names what to test again', () => {
    expect(verdictOf([], derived(changed)).text).toBe(`Changed since test: test ${states[0]?.name} again`);
    expect(verdictOf([], derived(tested)).text).toBe('Built and tested');
  });

  it('is no finding: the checks say the same of what was tested and what was not', () => {
    expect(checkTake(derived(tested))).toEqual(checkTake(derived(demo)));
  });
});
