import type { Rehearsal } from '../../src/index.ts';

/** A line of the ribbon on a line of what it sits on, and where that is, numbers from 1. */
export interface Meets {
  readonly ribbon: string;
  readonly module: string;
  readonly contacts: readonly number[];
  readonly pins: readonly number[];
}

/** Every pair of lines that meet, each once, those of different names first; empty contacts on empty pins are left out. */
export function meetsOf({ contacts, pins, map }: Rehearsal): Meets[] {
  const met = new Map<string, { ribbon: string; module: string; contacts: number[]; pins: number[] }>();
  contacts.forEach((ribbon, contact) => {
    const pin = map[contact];
    const module = pin === undefined ? '' : (pins[pin] as string);
    if (pin === undefined || (ribbon === '' && module === '')) return;
    const key = JSON.stringify([ribbon, module]);
    const meets = met.get(key) ?? { ribbon, module, contacts: [], pins: [] };
    meets.contacts.push(contact + 1);
    meets.pins.push(pin + 1);
    met.set(key, meets);
  });
  return [...met.values()].toSorted((a, b) => Number(a.ribbon === a.module) - Number(b.ribbon === b.module));
}

/** "3–8, 10" */
export function ranges(numbers: readonly number[]): string {
  const sorted = numbers.toSorted((a, b) => a - b);
  const runs: [from: number, to: number][] = [];
  for (const n of sorted) {
    const last = runs.at(-1);
    if (last && n === last[1] + 1) last[1] = n;
    else runs.push([n, n]);
  }
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(', ');
}
