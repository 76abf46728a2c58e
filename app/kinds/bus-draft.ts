import { type Bus, freshKindId, GND, type Kit, OPEN_LIMITS } from '../../src/index.ts';
import { hasProblems, type Problems, readName, startReading, typed } from './typed.ts';

/** Chosen in a list of buses to make another. */
export const NEW_BUS = '\u0000new';

/** A new bus as it stands in the form. */
export interface BusDraft {
  readonly name: string;
  /** How many pins, as typed. */
  readonly count: string;
  /** What lies on each pin, as typed; more than counted are kept in case the count grows again. */
  readonly pins: readonly string[];
  readonly most: string;
}

export type BusField = 'name' | 'count' | 'pins' | 'most';

export const NEW_BUS_DRAFT: BusDraft = { name: '', count: '10', pins: [], most: '' };

/** A bus that there is, to be changed. */
export const busDraftOf = ({ name, pinout, membersPerHost }: Bus): BusDraft => ({
  name,
  count: typed(pinout.length),
  pins: pinout,
  most: typed(membersPerHost),
});

export const { most: MOST_PINS } = OPEN_LIMITS.pins;

const isPinCount = (count: number): boolean => count >= 2 && count <= MOST_PINS && count % 2 === 0;

/** How many pins to show: none while the count makes no sense. */
export function pinsShown({ count }: BusDraft): number {
  const number = Number(count);
  return count.trim() !== '' && isPinCount(number) ? number : 0;
}

/** What someone means by a pin: the id of a supply line where it is one, however it is written. */
export function lineOf({ voltages }: Pick<Kit, 'voltages'>, text: string): string {
  const plain = text.trim().replace('−', '-');
  const asVolts = plain.replace(/\s*v$/i, '');
  if (/^(gnd|ground|0)$/i.test(asVolts)) return GND;
  const exact = voltages.find(({ id }) => id.toLowerCase() === asVolts.toLowerCase());
  const unsigned = voltages.find(({ id }) => id === `+${asVolts}`);
  return exact?.id ?? unsigned?.id ?? plain;
}

const isMemberCount = (members: number): boolean =>
  Number.isInteger(members) && members >= 1 && members <= 1000;

/** @param before - the bus that is changed; what the form does not show stays as it is */
export function readBus(
  kit: Kit,
  draft: BusDraft,
  before?: Bus,
): { readonly bus: Bus | null; readonly problems: Problems<BusField> } {
  const read = startReading<BusField>();
  const name = readName(read, draft.name, kit.buses, before?.name);
  const words = `Pins come in pairs: an even number from 2 to ${MOST_PINS}`;
  const count = read.number('count', draft.count, words, isPinCount) ?? 0;
  const most = read.maybe(
    'most',
    draft.most,
    'A whole number of members from 1, or nothing for no limit',
    (members) => members === before?.membersPerHost || isMemberCount(members),
  );
  const pinout = Array.from({ length: count }, (_, i) => {
    const text = draft.pins[i] ?? '';
    return text === before?.pinout[i] ? text : lineOf(kit, text);
  });
  if (pinout.every((line) => line === '')) read.wrong('pins', 'Say what lies on at least one pin');
  if (pinout.some((line) => line.length > 100)) read.wrong('pins', 'A line has a short name');
  const { problems } = read;
  if (hasProblems(problems)) return { bus: null, problems };
  const { membersPerHost: _, ...rest } = before ?? {};
  const bus: Bus = {
    ...rest,
    id: before?.id ?? freshKindId(kit.buses, name),
    name,
    pinout,
    ...(most !== undefined && { membersPerHost: most }),
  };
  return { bus, problems };
}
