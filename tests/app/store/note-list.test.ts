import { describe, expect, test } from 'vitest';
import { freezeOrder, listNotes } from '../../../app/store/note-list.ts';
import type { Note } from '../../../src/index.ts';

const note = (key: string, more: Partial<Note> = {}): Note => ({
  check: 'overlap',
  level: 'fault',
  take: 't',
  key,
  subjects: [],
  message: '',
  remedy: '',
  headline: '',
  detail: '',
  spots: [{ row: 'upper', xMm: 0, yMm: 0 }],
  facts: '',
  ...more,
});

describe('the list of notes', () => {
  test('leaves out what was put away, and knows the row', () => {
    expect(listNotes([note('a'), note('b', { accepted: true }), note('c', { spots: [] })])).toEqual([
      { key: 'a', level: 'fault', row: 'upper', gone: false },
      { key: 'c', level: 'fault', row: null, gone: false },
    ]);
  });

  test('under a gesture its order stays: what has gone fades in its place, what is new comes last', () => {
    const start = listNotes([note('a'), note('b'), note('c')]);
    const shown = freezeOrder(start, start, [note('new', { level: 'damage' }), note('c'), note('a')]);
    expect(shown.map(({ key, gone }) => [key, gone])).toEqual([
      ['a', false],
      ['b', true],
      ['c', false],
      ['new', false],
    ]);
    const later = freezeOrder(start, shown, [note('c'), note('b'), note('a')]);
    expect(later.map(({ key, gone }) => [key, gone])).toEqual([
      ['a', false],
      ['b', false],
      ['c', false],
    ]);
  });

  test('is the very list while no note comes or goes', () => {
    const start = listNotes([note('a')]);
    const shown = freezeOrder(start, start, [note('a'), note('b')]);
    expect(freezeOrder(start, shown, [note('b', { detail: 'other figures' }), note('a')])).toBe(shown);
  });
});
