import { describe, expect, it } from 'vitest';
import type { Note } from '../../src/checks/check.ts';
import { keyOf } from '../../src/checks/judge.ts';
import { noteChanges } from '../../src/checks/note-changes.ts';

const note = (check: string, modules: readonly string[], level: Note['level'] = 'reminder'): Note => {
  const subjects = modules.map((id) => ({ type: 'module' as const, id }));
  return {
    check,
    level,
    take: 'take-1',
    key: keyOf(check, subjects, undefined),
    subjects,
    message: check,
    remedy: '',
    headline: check,
    detail: '',
    facts: '',
  };
};

describe('what becomes of notes', () => {
  it('tells what is new and what is gone', () => {
    const [deep, short] = [note('too-deep', ['a']), note('short-ribbon', ['b'])];
    expect(noteChanges([deep], [short])).toEqual({ came: [short], gone: [deep], grew: [], shrank: [] });
    expect(noteChanges([deep], [deep])).toEqual({ came: [], gone: [], grew: [], shrank: [] });
  });

  it('tells a note on fewer or more things from one that is gone', () => {
    const [one, two] = [note('unknown-facts', ['a']), note('unknown-facts', ['a', 'b'])];
    expect(noteChanges([two], [one])).toEqual({ came: [], gone: [], grew: [], shrank: [one] });
    expect(noteChanges([one], [two])).toEqual({ came: [], gone: [], grew: [two], shrank: [] });
  });

  it('tells of damage where there was a fault in the same place', () => {
    const [fault, damage] = [note('displaced', ['a'], 'fault'), note('displaced', ['a'], 'damage')];
    expect(noteChanges([fault], [damage]).came).toEqual([damage]);
  });
});
