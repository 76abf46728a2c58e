import {
  type FaultTest,
  GND,
  type Joint,
  type LaidRibbon,
  type Link,
  type ModuleReadings,
  probeOf,
  type Reading,
  type Suspect,
  type WholeTake,
  waysOf,
} from '../../src/index.ts';
import { voltageName } from '../panels/figures.ts';
import { placeWords } from '../store/seat-words.ts';
import type { Breakage } from './breakage.ts';

const MINUS = '−';

export const lineName = (line: string): string => (line === GND ? 'ground' : voltageName(line));

/** "6 and 7"; "3 to 5 and 8". Pins count from 1 for people. */
export function pinsWords(pins: readonly number[]): string {
  const spans: [number, number][] = [];
  for (const pin of pins) {
    const last = spans.at(-1);
    if (last && pin === last[1] + 1) last[1] = pin;
    else spans.push([pin, pin]);
  }
  const words = spans.flatMap(([from, to]) =>
    to - from > 1
      ? [`${from + 1} to ${to + 1}`]
      : from === to
        ? [`${from + 1}`]
        : [`${from + 1}`, `${to + 1}`],
  );
  return listWords(words);
}

/** "pin 6", "pins 6 and 7". */
export const several = (noun: string, pins: readonly number[]): string =>
  `${noun}${pins.length > 1 ? 's' : ''} ${pinsWords(pins)}`;

/** "A", "A and B", "A, B and C". */
export function listWords(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

/** Three decimals of a volt that is nearly nothing, else two. */
export const volts = (value: number): string =>
  `${value.toFixed(value !== 0 && Math.abs(value) < 0.5 ? 3 : 2).replace('-', MINUS)} V`;

/** "on Cobble 3, shore"; "carrying connector 1 of T2". */
export function seatOn(ribbon: LaidRibbon, connector: number, joint: Joint): string {
  return joint.ribbon === ribbon && joint.connector === connector
    ? joint.on.type === 'connector'
      ? `in ${onWords(joint.on)}`
      : `on ${onWords(joint.on)}`
    : `carrying connector ${joint.connector + 1} of ${joint.ribbon.name}`;
}

/** "Cobble 3", "header 2 of Board 1", "connector 1 of T2": as it is said at the bench. */
function onWords(on: Joint['on']): string {
  if (on.type === 'connector') return placeWords(on);
  const { owner, name } = on.header;
  return owner.headers.length > 1 ? `header ${name} of ${owner.name}` : owner.name;
}

/** Contacts or conductors of each supply line of a link, from 0. */
export function linkPins(link: Link): ReadonlyMap<string, readonly number[]> {
  if (link.type === 'span') return link.ribbon.facts.bus.supplyPins;
  if (link.type !== 'seat') return new Map();
  const { ribbon, connector, on } = link.joint;
  const ways = Math.min(
    waysOf(ribbon, connector),
    on.type === 'connector' ? waysOf(on.ribbon, on.connector) : Number.POSITIVE_INFINITY,
  );
  return new Map(
    [...ribbon.facts.bus.supplyPins].flatMap(([line, pins]): [string, readonly number[]][] => {
      const within = pins.filter((pin) => pin < ways);
      return within.length > 0 ? [[line, within]] : [];
    }),
  );
}

/** Where a link is. */
export function linkPlace(link: Link): string {
  switch (link.type) {
    case 'supply':
      return link.supply.name;
    case 'board-lead':
      return link.board.board.lead
        ? `Lead from ${link.board.supply.name} to ${link.board.name}`
        : `Way from ${link.board.supply.name} to ${link.board.name}`;
    case 'seat': {
      const { joint } = link;
      return `${joint.ribbon.name}, connector ${joint.connector + 1} ${seatOn(joint.ribbon, joint.connector, joint)}`;
    }
    case 'span':
      return `${link.ribbon.name}, between connectors ${link.from + 1} and ${link.to + 1}`;
  }
}

function openWords(link: Link, line: string | null): string {
  const pins = line === null ? [] : (linkPins(link).get(line) ?? []);
  switch (link.type) {
    case 'supply':
      return line === null ? 'off' : `no ${lineName(line)}: its output, or a fuse behind it`;
    case 'board-lead':
      return line === null ? 'off, or loose at one end' : `its ${lineName(line)} wire open`;
    case 'seat':
      return line === null
        ? 'off, or not pushed home'
        : `no touch on ${lineName(line)}, ${several('contact', pins)}`;
    case 'span':
      return line === null ? 'torn through' : `${lineName(line)} broken, ${several('conductor', pins)}`;
  }
}

/** What may be broken, or was: where, and what of it. */
export interface PlaceWords {
  readonly place: string;
  readonly what: string;
}

export function suspectWords(suspect: Suspect): PlaceWords {
  if (suspect.type === 'inside')
    return { place: suspect.module.name, what: 'the fault is inside: all that it needs arrives' };
  if (suspect.type === 'short') {
    const { place, lines } = suspect;
    const what = `${lineName(lines[0])} touches ${lineName(lines[1])}`;
    if (place.type === 'ribbon') return { place: place.ribbon.name, what: `${what} in the ribbon` };
    if (place.type === 'board') return { place: place.board.name, what: `${what} on the board` };
    return { place: place.module.name, what: `${what} inside` };
  }
  return { place: linkPlace(suspect.link), what: openWords(suspect.link, suspect.line) };
}

export function breakageWords(breakage: Breakage): PlaceWords {
  if (breakage.type !== 'pin') return suspectWords(breakage);
  const { link, pin } = breakage;
  return {
    place: linkPlace(link),
    what: `${link.type === 'span' ? 'conductor' : 'contact'} ${pin + 1} alone open`,
  };
}

/** What a meter shows on one line. */
export function readingWords({ line, state, volts: against, ownVolts }: Reading): string {
  if (state === 'nothing') return 'nothing';
  if (state === 'shorted') return '0 V, pulled down';
  if (state === 'no-ground') return `${volts(against ?? 0)}, but no ground`;
  if (line === GND) return volts(against ?? 0);
  const figure = volts(ownVolts ?? 0);
  return state === 'right' ? figure : `${figure}, ${state === 'low' ? 'too low' : 'wrong'}`;
}

/** Why a module is dead, in a few words. */
export function deadWords({ readings }: ModuleReadings): string {
  const of = (state: Reading['state']): string[] =>
    readings.filter((reading) => reading.state === state).map(({ line }) => lineName(line));
  const parts: string[] = [];
  const say = (names: readonly string[], words: (names: string) => string): void => {
    if (names.length > 0) parts.push(words(listWords(names)));
  };
  say(of('wrong'), (names) => `wrong voltage on ${names}`);
  say(of('shorted'), (names) => `${names} pulled down`);
  say(of('nothing'), (names) => `no ${names}`);
  say(of('low'), (names) => `${names} too low`);
  return parts.join(', ');
}

/** A supply's own ground, where a meter's black probe is held. */
function blackProbe(take: WholeTake): string {
  const [board] = take.places.boards;
  const isOne = take.take.supplies.length === 1;
  return isOne && board
    ? `black probe on a ground pin of ${board.name}`
    : 'black probe on ground of its supply';
}

export interface TestWords {
  /** What to unplug, before power. */
  readonly unplug?: string;
  readonly question: string;
  readonly yes: string;
  readonly no: string;
}

/** Pins on which a line can be measured at a module or a board. */
export function pinsAt(
  headers: readonly { readonly name: string; readonly bus: LaidRibbon['facts']['bus'] }[],
  line: string,
): string {
  const header = headers.find(({ bus }) => bus.supplyPins.has(line));
  const pins = header?.bus.supplyPins.get(line) ?? [];
  if (!header) return '';
  return `${headers.length > 1 ? `header ${header.name}, ` : ''}${several('pin', pins)}`;
}

const seatWords = ({ ribbon, connector, on }: Joint): string =>
  `${ribbon.name} ${on.type === 'connector' ? 'out of' : 'off'} ${onWords(on)}${
    ribbon.facts.connectors.length > 2 ? ` (connector ${connector + 1})` : ''
  }`;

/** Where a line is looked for once a seat is apart: on the half from which it comes. */
function freedHalf(test: Extract<FaultTest, { readonly type: 'unplug' }>, take: WholeTake): string {
  const [joint] = test.seats;
  const probe = probeOf(test, take);
  if (!joint || !probe) return '';
  if ('isUnder' in probe && probe.isUnder)
    return joint.on.type === 'header'
      ? `on the freed pins of ${onWords(joint.on)}`
      : `in the freed ${onWords(joint.on)}`;
  const pins = linkPins({ type: 'seat', joint }).get(test.line) ?? [];
  return `in the freed connector of ${joint.ribbon.name}, ${several('contact', pins)}`;
}

/** A step of the search, as it is said to someone at the bench. */
export function testWords(test: FaultTest, take: WholeTake): TestWords {
  if (test.type === 'look')
    return { question: `Does ${test.module.name} work?`, yes: 'It works', no: 'It is dead' };
  const answers = { yes: 'It is there', no: 'It is not there' };
  const line = lineName(test.line);
  if (test.type === 'measure') {
    const pins = pinsAt(test.at.headers, test.line);
    const where = `${test.at.name}${pins && `, ${pins}`}`;
    const question =
      test.line === GND
        ? `Power off: does a meter beep between ground at ${where}, and ground of its supply?`
        : `Measure ${line} at ${where}; ${blackProbe(take)}. Is it there?`;
    return { question, ...answers };
  }
  return {
    unplug: `Pull ${listWords(test.seats.map(seatWords))}.`,
    question: `Power on: is ${line} there ${freedHalf(test, take)}? ${capital(blackProbe(take))}.`,
    ...answers,
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What was answered, in one line. */
export function seenWords(test: FaultTest, isThere: boolean): string {
  if (test.type === 'look') return `${test.module.name} ${isThere ? 'works' : 'is dead'}`;
  const line = lineName(test.line);
  if (test.type === 'measure') return `${isThere ? '' : 'no '}${line} at ${test.at.name}`;
  const off = listWords(
    test.seats.map(({ ribbon, connector }) => `${ribbon.name}, connector ${connector + 1}`),
  );
  return `${isThere ? '' : 'no '}${line} with ${off} off`;
}
