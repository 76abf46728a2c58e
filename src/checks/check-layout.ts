import type { Layout } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Note } from './check.ts';
import { checkTake } from './run.ts';

/** Everything that the checks find in an opened layout, take by take in document order. */
export const checkLayout = ({
  kit,
  takes,
}: Layout): { take: Layout['takes'][number]; derived: WholeTake; notes: readonly Note[] }[] =>
  takes.map((take) => {
    const derived = deriveTake(kit, take);
    return { take, derived, notes: checkTake(derived) };
  });
