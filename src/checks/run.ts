import type { WholeTake } from '../wiring/whole-take.ts';
import type { Note } from './check.ts';
import { checks } from './index.ts';
import { judge } from './judge.ts';

export { findingsOf, keyOf } from './judge.ts';

/** Everything that the checks find in a take. */
export const checkTake = (take: WholeTake): readonly Note[] => judge(take, checks);
