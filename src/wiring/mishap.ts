import { GND } from '../layout/defaults.ts';
import { UnionFind } from './union-find.ts';

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
 * How a connector sits on pins: displaced by pin rows along the rail and pairs from the pin-1 end (0, 0 is
 * right), or turned end for end.
 */
export type Misplug =
  | { readonly type: 'shifted'; readonly rows: number; readonly pairs: number }
  | { readonly type: 'reversed' };

/** The pin (from 0) that a contact (from 0) touches, if there is one. Pins run in pairs along the long side. */
function pinTouched(contact: number, pins: number, misplug: Misplug): number | undefined {
  if (misplug.type === 'reversed') {
    const pin = pins - 1 - contact;
    return pin >= 0 ? pin : undefined;
  }
  const row = (contact % 2) + misplug.rows;
  const pair = Math.floor(contact / 2) + misplug.pairs;
  if (row < 0 || row > 1) return undefined;
  const pin = 2 * pair + row;
  return pin >= 0 && pin < pins ? pin : undefined;
}

/** Names lines by number, ribbon's first; open pins get none, as they join nothing. */
function numberLines(lines: readonly string[], from: number): Map<string, number> {
  const numbers = new Map<string, number>();
  for (const line of lines) if (line !== '' && !numbers.has(line)) numbers.set(line, from + numbers.size);
  return numbers;
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
  const ribbonLines = numberLines(contacts, 0);
  const moduleLines = numberLines(pins, ribbonLines.size);
  const joined = new UnionFind(ribbonLines.size + moduleLines.size);
  const meets = new Map<string, { ribbon: string; module: string }>();
  let touching = 0;
  contacts.forEach((ribbon, contact) => {
    const pin = pinTouched(contact, pins.length, misplug);
    if (pin === undefined) return;
    touching++;
    const module = pins[pin] as string;
    if (ribbon !== module) meets.set(JSON.stringify([ribbon, module]), { ribbon, module });
    const a = ribbonLines.get(ribbon);
    const b = moduleLines.get(module);
    if (a !== undefined && b !== undefined) joined.join(a, b);
  });
  const sets = new Map<number, string[]>();
  for (const [line, number] of ribbonLines) {
    const root = joined.find(number);
    const set = sets.get(root);
    if (set) set.push(line);
    else sets.set(root, [line]);
  }
  const ties = [...sets.values()].filter((set) => set.length > 1);
  return {
    meets: [...meets.values()],
    ties,
    shorts: ties.filter((tie) => isShort(tie, isVoltage)),
    openPins: pins.length - touching,
    openContacts: contacts.length - touching,
  };
}

function isShort(tie: readonly string[], isVoltage: (line: string) => boolean): boolean {
  const voltages = tie.filter(isVoltage).length;
  return voltages > 1 || (voltages === 1 && tie.includes(GND));
}
