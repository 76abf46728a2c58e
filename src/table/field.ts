import type { Header, Kit, ModuleKind } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';

/** Spellings of a unit, in small letters, and what one of it is in the unit of the document. */
type Units = Readonly<Record<string, number>>;

/** What may stand in the cells of a column. */
export type CellSort =
  | { readonly is: 'text'; readonly most: number }
  | {
      readonly is: 'number';
      /** The unit that the document has; absent: a bare number. */
      readonly unit?: string;
      readonly units: Units;
      readonly holds: (value: number) => boolean;
      /** What it must be, after "is not": "a width: from 0.5 HP on, in halves". */
      readonly must: string;
    }
  | { readonly is: 'choice'; readonly choices: Readonly<Record<string, readonly string[]>> }
  | { readonly is: 'yes or no' }
  | { readonly is: 'bus' };

type KindField = Exclude<keyof ModuleKind, 'draws' | 'headers'>;

/** Which fact of a kind a column tells. */
type FieldOf =
  | { readonly of: 'kind'; readonly field: KindField }
  | { readonly of: 'draw'; readonly voltage: string }
  /** Headers count from 1, as on screen. */
  | { readonly of: 'header'; readonly number: number; readonly field: keyof Header };

/** A fact of a kind of module, as a column of a table. */
export interface Field {
  readonly key: string;
  /** Without its unit. */
  readonly label: string;
  /** Other ways to call it, in small letters. */
  readonly spellings: readonly string[];
  readonly sort: CellSort;
  readonly fact: FieldOf;
}

const LENGTH: Units = { mm: 1, cm: 10, m: 1000, in: 25.4, inch: 25.4, inches: 25.4, '"': 25.4, '″': 25.4 };

const { most: LARGEST } = OPEN_LIMITS.size;
const isMeasure = (value: number): boolean => Math.abs(value) <= LARGEST;
const isFromNought = (value: number): boolean => value >= 0 && value <= LARGEST;

const text = (most: number = OPEN_LIMITS.name.most): CellSort => ({ is: 'text', most });

const number = (
  must: string,
  holds: (value: number) => boolean = isFromNought,
  units: Units = {},
  unit?: string,
): CellSort => ({ is: 'number', must, holds, units, ...(unit !== undefined && { unit }) });

const place = number('a length in mm', isMeasure, LENGTH, 'mm');
const YES_NO: CellSort = { is: 'yes or no' };

interface Told {
  readonly label: string;
  readonly spellings: readonly string[];
  readonly sort: CellSort;
}

const told = (label: string, sort: CellSort, ...spellings: string[]): Told => ({ label, sort, spellings });

const KIND: Readonly<Record<KindField, Told>> = {
  name: told('Name', text(), 'module', 'module name', 'kind', 'kind of module', 'title'),
  id: told('Id', text(), 'identifier'),
  widthHp: told(
    'Width',
    number(
      'a width: from 0.5 HP on, in halves',
      (hp) => hp > 0 && hp <= LARGEST && (hp * 2) % 1 === 0,
      { hp: 1, te: 1 },
      'HP',
    ),
    'hp',
    'te',
    'wide',
    'panel width',
  ),
  heightU: told(
    'Height',
    number('a height above 0 U', (u) => u > 0 && u <= LARGEST, { u: 1, he: 1 }, 'U'),
    'u',
    'he',
    'panel height',
  ),
  depthMm: told(
    'Depth',
    number('a depth: from 0 mm on', isFromNought, LENGTH, 'mm'),
    'depth behind panel',
    'depth behind the panel',
    'deep',
  ),
  depthIs: told(
    'Depth is',
    {
      is: 'choice',
      choices: { 'with-plugs': ['with plugs', 'with'], 'without-plugs': ['without plugs', 'without'] },
    },
    'depth measured',
    'plugs',
  ),
  owned: told(
    'Owned',
    number('a count: a whole number from 0', (n) => Number.isInteger(n) && isFromNought(n)),
    'i own',
    'own',
    'count',
    'quantity',
    'qty',
    'how many',
    'pieces',
    'in stock',
  ),
  price: told('Price', number('a price: from 0'), 'cost', 'costs', 'one costs', 'unit price', 'price each'),
  color: told('Colour', text(), 'color'),
  notes: told('Notes', text(OPEN_LIMITS.note.most), 'note', 'remark', 'remarks', 'comment', 'comments'),
  known: told(
    'Figures are',
    {
      is: 'choice',
      choices: { measured: ['measured'], published: ['published'], guessed: ['guessed', 'estimated'] },
    },
    'known',
    'how known',
    'data are',
    'source of figures',
  ),
};

const HEADER: Readonly<Record<keyof Header, Told>> = {
  bus: told('bus', { is: 'bus' }, '', 'type', 'link'),
  role: told('role', { is: 'choice', choices: { host: ['host'], member: ['member'] } }, 'host or member'),
  xMm: told('x', place, 'from left', 'from the left', 'left', 'x from left'),
  yMm: told('y', place, 'from bottom', 'from the bottom', 'bottom', 'up', 'y from bottom'),
  zMm: told('z', place, 'behind panel', 'behind the panel', 'back'),
  axis: told(
    'axis',
    {
      is: 'choice',
      choices: { vertical: ['vertical', 'upright'], horizontal: ['horizontal', 'lying'] },
    },
    'long side',
    'stands',
  ),
  pin1: told(
    'pin 1',
    {
      is: 'choice',
      choices: {
        down: ['down', 'bottom', 'lower'],
        up: ['up', 'top', 'upper'],
        left: ['left'],
        right: ['right'],
      },
    },
    'pin1',
    'pin 1 at',
    'pin 1 is at',
  ),
  keyed: told('keyed', YES_NO, 'boxed', 'shrouded', 'key'),
  passes: told('passes', YES_NO, 'passes on', 'through'),
  isolated: told('isolated', YES_NO),
  counts: told('counts', number('a count: from 0'), 'counts for'),
  name: told('name', text(), 'label', 'called'),
  id: told('id', text(), 'identifier'),
};

const keysOf = <T extends object>(record: T): (keyof T)[] => Object.keys(record) as (keyof T)[];

/** A voltage as people write it. */
const voltageWords = (id: string): string => (/^[+-]?\d/.test(id) ? `${id} V` : id);

const kindField = (field: KindField): Field => ({ ...KIND[field], key: field, fact: { of: 'kind', field } });

const drawField = (voltage: string): Field => ({
  key: `draws ${voltage}`,
  label: `Current at ${voltageWords(voltage)}`,
  spellings: [],
  sort: number(
    'a current: from 0 mA, “none”, or “?” where it is not known',
    isFromNought,
    { ma: 1, a: 1000 },
    'mA',
  ),
  fact: { of: 'draw', voltage },
});

/** What a header's column is called, whatever its number. */
export const HEADER_SPELLINGS: readonly (readonly [field: keyof Header, spellings: readonly string[]])[] =
  keysOf(HEADER).map((field) => [field, [HEADER[field].label, ...HEADER[field].spellings]]);

export const headerKey = (number: number, field: keyof Header): string => `header ${number} ${field}`;

const headerField = (number: number, field: keyof Header): Field => ({
  key: headerKey(number, field),
  label: `Header ${number} ${HEADER[field].label}`,
  spellings: [],
  sort: HEADER[field].sort,
  fact: { of: 'header', number, field },
});

/** Every fact that a table can tell of kinds with so many headers, in the order in which it is written. */
export const fieldsFor = (kit: Kit, headers: number): readonly Field[] => [
  ...(['name', 'widthHp', 'heightU', 'depthMm', 'depthIs'] as const).map(kindField),
  ...kit.voltages.map(({ id }) => drawField(id)),
  ...(['owned', 'price', 'known'] as const).map(kindField),
  ...Array.from({ length: headers }, (_, i) =>
    keysOf(HEADER).map((field) => headerField(i + 1, field)),
  ).flat(),
  ...(['color', 'notes', 'id'] as const).map(kindField),
];

/** A column's heading, with the unit that it is written in. */
export const headingOf = ({ label, sort }: Field): string =>
  sort.is === 'number' && sort.unit !== undefined ? `${label} (${sort.unit})` : label;
