import type { applyEdit, Layout } from '../../src/index.ts';

const seatsOf = ({ takes }: Layout): number =>
  takes.reduce(
    (sum, { ribbons }) => sum + ribbons.reduce((inTake, { seats }) => inTake + seats.length, 0),
    0,
  );

const ribbonsOf = ({ takes }: Layout): number => takes.reduce((sum, { ribbons }) => sum + ribbons.length, 0);

export const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** What comes off its headers, and out of the case. */
interface Lost {
  readonly seatsLost: number;
  readonly ribbonsLost: number;
}

/** What an edit takes off its headers, told before it is done; nothing where it takes off none. */
export function lossWords({ seatsLost, ribbonsLost }: Lost): string | undefined {
  if (seatsLost <= 0 && ribbonsLost <= 0) return undefined;
  const parts = [
    ...(seatsLost > 0 ? [`${counted(seatsLost, 'connector')} off what they sit on`] : []),
    ...(ribbonsLost > 0 ? [`${counted(ribbonsLost, 'ribbon')} out of the case`] : []),
  ];
  return `This takes ${parts.join(', and ')}, in all takes together.`;
}

/** What an edit would take off. */
export function lostBy(before: Layout, after: ReturnType<typeof applyEdit>): Lost {
  if (!after.ok) return { seatsLost: 0, ribbonsLost: 0 };
  return {
    seatsLost: seatsOf(before) - seatsOf(after.value),
    ribbonsLost: ribbonsOf(before) - ribbonsOf(after.value),
  };
}
