import { type Level, lineName, list, type Rehearsal } from '../../src/index.ts';
import { type Group, tiedThrough } from './groups.ts';

/** The whole of it in one line, and the shape it has. No shape: nothing is wrong. */
export interface VerdictWords {
  readonly level?: Level;
  readonly text: string;
}

const named = (lines: readonly string[]): string => list(lines.map(lineName));

/** Keeps figures and their units on one line. */
export const unbroken = (text: string): string => text.replace(/(\d) V\b/g, '$1\u00a0V');

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

export function verdictWords({ mishap }: Rehearsal, groups: readonly Group[]): VerdictWords {
  const shorts = groups.filter(({ sort }) => sort === 'short');
  if (shorts.length > 0) {
    const which = new Map(shorts.map(({ shorted }) => [JSON.stringify(shorted.toSorted()), named(shorted)]));
    return { level: 'damage', text: `Shorted together: ${[...which.values()].join('; ')}` };
  }
  if (groups.some(({ sort }) => sort === 'voltage'))
    return { level: 'damage', text: 'A voltage meets a line where it does not belong' };
  if (groups.length > 0) return { level: 'fault', text: 'Lines meet others than their own' };
  if (mishap.openContacts > 0)
    return {
      level: 'fault',
      text: `No line meets another, but ${count(mishap.openContacts, 'contact hangs', 'contacts hang')} free`,
    };
  if (mishap.meets.length > 0) return { level: 'reminder', text: 'Lines meet pins that carry nothing' };
  return { text: 'All lines agree' };
}

const SORT_WORDS: Readonly<Record<Group['sort'], string>> = {
  short: 'Short',
  voltage: 'Voltage on a wrong line',
  wrong: 'Wrong line',
};

/** What a group is, and what joins what in it. */
export const groupTitle = ({ sort }: Group): string => SORT_WORDS[sort];

/** "+12 V and +5 V become one line, through the module's GND." */
export function groupWords(group: Group, whose: string): string {
  const { ribbon, module } = group;
  if (ribbon.length === 1 && module.length === 1) return `${named(ribbon)} on ${whose} ${named(module)}.`;
  if (ribbon.length === 1)
    return `${capital(whose)} ${named(module)} become one line, through the ribbon's ${named(ribbon)}.`;
  const by = tiedThrough(group, 'module');
  const besides = module.filter((line) => !by.includes(line));
  const more = besides.length > 0 ? `, and ${whose} ${named(besides)} with them` : '';
  return `${named(ribbon)} become one line, through ${whose} ${named(by)}${more}.`;
}

/** Pins without a contact by their lines, each once. */
export function openPinsWords({ pins, map, mishap }: Rehearsal): string | undefined {
  if (mishap.openPins === 0) return undefined;
  const touched = new Set(map);
  const open = [...new Set(pins.filter((line, pin) => line !== '' && !touched.has(pin)))];
  return `${count(mishap.openPins, 'pin has', 'pins have')} no contact${open.length > 0 ? `: ${named(open)}` : ''}.`;
}

/** Contacts without a pin by their lines, each once. */
export function freeContactsWords({ contacts, map, mishap }: Rehearsal): string | undefined {
  if (mishap.openContacts === 0) return undefined;
  const free = [...new Set(contacts.filter((line, contact) => line !== '' && map[contact] === undefined))];
  return `${count(mishap.openContacts, 'contact hangs', 'contacts hang')} free${free.length > 0 ? `: ${named(free)}` : ''}.`;
}
