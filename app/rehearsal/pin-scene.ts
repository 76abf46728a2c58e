import { contactPlace, type Misplug, type Rehearsal } from '../../src/index.ts';
import type { Facing } from './facing.ts';
import type { Group } from './groups.ts';
import type { Reach } from './position.ts';

/** On the grid of pins as it is drawn: column 0 and 1 hold the pins, rows count downward from its upper edge. */
interface Cell {
  readonly column: number;
  readonly row: number;
}

/** How a contact and a pin get on. Open: one of the two carries nothing. */
type Meeting = 'agrees' | 'wrong' | 'open';

export interface ScenePin extends Cell {
  /** From 0. */
  readonly pin: number;
  readonly line: string;
  /** Absent: nothing touches it. */
  readonly meeting?: Meeting;
  readonly group?: Group;
}

export interface SceneContact extends Cell {
  /** From 0. */
  readonly contact: number;
  readonly line: string;
  /** Absent: it hangs free. */
  readonly meeting?: Meeting;
  readonly group?: Group;
}

/** Pins of one column that became one line, strung together beside it. */
export interface Chain {
  readonly group: Group;
  readonly column: 0 | 1;
  /** Chains that would run over one another lie in lanes of their own, counted outward. */
  readonly lane: number;
  readonly rows: readonly number[];
}

/** Where everything stands while a connector is held in one way. */
export interface PinScene {
  readonly pins: readonly ScenePin[];
  readonly contacts: readonly SceneContact[];
  readonly chains: readonly Chain[];
  /** Rows that the drawing has. */
  readonly rows: number;
  /** The corner of the connector, and how many columns and rows it has. */
  readonly plug: Cell & { readonly columns: number; readonly rows: number };
  /** The first row with pins, and how many there are. */
  readonly header: { readonly row: number; readonly rows: number };
}

const pairsOf = (pins: number): number => Math.ceil(pins / 2);

function meetingOf(ribbon: string, module: string): Meeting {
  if (ribbon === module) return 'agrees';
  return ribbon === '' || module === '' ? 'open' : 'wrong';
}

/** The innermost lane that is free over all of a chain's rows. */
function freeLane(chains: readonly Chain[], column: number, from: number, to: number): number {
  const beside = chains.filter(
    (other) => other.column === column && Math.min(...other.rows) <= to && Math.max(...other.rows) >= from,
  );
  const taken = new Set(beside.map(({ lane }) => lane));
  let lane = 0;
  while (taken.has(lane)) lane++;
  return lane;
}

function chainsOf(pins: readonly ScenePin[], groups: readonly Group[]): Chain[] {
  const chains: Chain[] = [];
  for (const column of [0, 1] as const) {
    for (const group of groups) {
      const rows = pins.filter((pin) => pin.group === group && pin.column === column).map(({ row }) => row);
      if (rows.length === 0) continue;
      const lane = freeLane(chains, column, Math.min(...rows), Math.max(...rows));
      chains.push({ group, column, lane, rows });
    }
  }
  return chains;
}

/** Lays out pins and contacts as they are seen. */
export function pinScene(
  { contacts, pins, map }: Rehearsal,
  groups: readonly Group[],
  misplug: Misplug,
  facing: Facing,
  reach: Reach,
): PinScene {
  const [plugRows, headerRows] = [pairsOf(contacts.length), pairsOf(pins.length)];
  const firstPair = Math.min(0, headerRows - plugRows) - reach.pairs;
  const rows = Math.max(headerRows, plugRows) + reach.pairs - firstPair;
  const cell = (row: number, pair: number): Cell => ({
    column: facing.oddLeft ? row : 1 - row,
    row: facing.pin1Up ? pair - firstPair : rows - 1 - (pair - firstPair),
  });
  const groupOf = new Map(groups.flatMap((group) => group.ribbon.map((line) => [line, group] as const)));

  const placedContacts = contacts.map((line, contact): SceneContact => {
    const { row, pair } = contactPlace(contact, pins.length, misplug);
    const pin = map[contact];
    const base = { contact, line, ...cell(row, pair) };
    if (pin === undefined) return base;
    const meeting = meetingOf(line, pins[pin] as string);
    const group = meeting === 'open' ? undefined : groupOf.get(line);
    return { ...base, meeting, ...(group && { group }) };
  });
  const onPin = new Map(placedContacts.map((contact, i) => [map[i], contact]));
  const placedPins = pins.map((line, pin): ScenePin => {
    const { meeting, group } = onPin.get(pin) ?? {};
    const base = { pin, line, ...cell(pin % 2, Math.floor(pin / 2)) };
    return { ...base, ...(meeting && { meeting }), ...(group && { group }) };
  });
  const least = (cells: readonly Cell[], of: keyof Cell): number => Math.min(...cells.map((c) => c[of]));
  const column = least(placedContacts, 'column');
  return {
    pins: placedPins,
    contacts: placedContacts,
    chains: chainsOf(placedPins, groups),
    rows,
    plug: {
      column,
      columns: Math.max(...placedContacts.map((contact) => contact.column)) - column + 1,
      row: least(placedContacts, 'row'),
      rows: plugRows,
    },
    header: { row: least(placedPins, 'row'), rows: headerRows },
  };
}
