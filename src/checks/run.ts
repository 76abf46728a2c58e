import { remember } from '../layout/remember.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Note } from './check.ts';
import { checks } from './index.ts';
import { judge } from './judge.ts';

export { findingsOf, keyOf } from './judge.ts';

const isReminder = ({ level }: { readonly level: Note['level'] }): boolean => level === 'reminder';
const pressing = checks.filter((check) => !isReminder(check));
const reminders = checks.filter(isReminder);

/** Damage and faults: all that a drawing marks, and so all that is looked for at every move of a hand. */
export const pressingNotes = remember((take: WholeTake): readonly Note[] => judge(take, pressing));

/** Everything that the checks find in a take: a check that reminds finds nothing else, and the others never remind. */
export const checkTake = (take: WholeTake): readonly Note[] => [
  ...pressingNotes(take),
  ...judge(take, reminders),
];
