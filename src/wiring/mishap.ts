import { GND } from '../layout/defaults.ts';
import { joinLines } from './joined-lines.ts';
import { type Misplug, pinMap } from './pin-map.ts';

/** What would happen if a connector were plugged wrongly. Lines are named as in the pinouts; '' is an open pin. */
export interface Mishap {
  /** A line of the ribbon on a line of another name of what it sits on, each pair once. */
  readonly meets: readonly { readonly ribbon: string; readonly module: string }[];
  /** Sets of two or more ribbon lines that would be connected through contacts and lines of the module. */
  readonly ties: readonly (readonly string[])[];
  /** Ties with two different voltages, or a voltage and GND. */
  readonly shorts: readonly (readonly string[])[];
  /** Header pins without a contact. */
  readonly openPins: number;
  /** Contacts without a pin. */
  readonly openContacts: number;
}

/**
 * What a connector on `contacts` lines would join on the pins of `pins` lines (pin 1 first).
 * @param isVoltage whether a line is one of the kit's voltages
 */
export function mishapOf(
  contacts: readonly string[],
  pins: readonly string[],
  misplug: Misplug,
  isVoltage: (line: string) => boolean,
): Mishap {
  const map = pinMap(contacts.length, pins.length, misplug);
  const meets = new Map<string, { ribbon: string; module: string }>();
  let touching = 0;
  contacts.forEach((ribbon, contact) => {
    const pin = map[contact];
    if (pin === undefined) return;
    touching++;
    const module = pins[pin] as string;
    if (ribbon !== module) meets.set(JSON.stringify([ribbon, module]), { ribbon, module });
  });
  const ties = joinLines(contacts, pins, map)
    .map(({ ribbon }) => ribbon)
    .filter((lines) => lines.length > 1);
  return {
    meets: [...meets.values()],
    ties,
    shorts: ties.filter((tie) => isShort(tie, isVoltage)),
    openPins: pins.length - touching,
    openContacts: contacts.length - touching,
  };
}

/** Whether lines that are one carry two different voltages, or a voltage and GND. */
export function isShort(tie: readonly string[], isVoltage: (line: string) => boolean): boolean {
  const voltages = tie.filter(isVoltage).length;
  return voltages > 1 || (voltages === 1 && tie.includes(GND));
}
