import type { applyEdit, Layout } from '../../src/index.ts';

const seatsOf = ({ takes }: Layout): number =>
  takes.reduce(
    (sum, { ribbons }) => sum + ribbons.reduce((inTake, { seats }) => inTake + seats.length, 0),
    0,
  );

const ribbonsOf = ({ takes }: Layout): number => takes.reduce((sum, { ribbons }) => sum + ribbons.length, 0);

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** What an edit takes off its headers, told before it is done; nothing where it takes off none. */
export function lossWords(before: Layout, after: ReturnType<typeof applyEdit>): string | undefined {
  if (!after.ok) return undefined;
  const seats = seatsOf(before) - seatsOf(after.value);
  const ribbons = ribbonsOf(before) - ribbonsOf(after.value);
  if (seats <= 0 && ribbons <= 0) return undefined;
  const out = ribbons > 0 ? `, and ${counted(ribbons, 'ribbon')} out of the case` : '';
  return `This takes ${counted(seats, 'connector')} off what they sit on${out}, in all takes together.`;
}
