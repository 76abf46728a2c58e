import type { Layout } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { Note } from './check.ts';
import { checkTake } from './run.ts';

/** Everything that the checks find in an opened layout, take by take in document order. */
export const checkLayout = ({
  kit,
  takes,
}: Layout): { take: Layout['takes'][number]; notes: readonly Note[] }[] =>
  takes.map((take) => ({ take, notes: checkTake(deriveTake(kit, take)) }));
