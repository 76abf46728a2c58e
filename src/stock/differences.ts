import type { Bus, Header, ModuleKind, RibbonKind } from '../layout/layout.ts';
import { saysTheSame } from '../layout/says-the-same.ts';
import type { AnyKind, KindSort } from './my-stock.ts';

const MINUS = '−';

const figure = (value: number): string => String(Math.round(value * 1000) / 1000).replace('-', MINUS);

/** What somebody owns, pays and notes of a kind. */
const COUNTS: ReadonlySet<string> = new Set(['owned', 'price', 'color', 'notes']);

/** What people call the fields of a kind, and their units. */
const FIELDS: Readonly<Record<string, readonly [name: string, unit: string]>> = {
  name: ['name', ''],
  widthHp: ['width', ' HP'],
  heightU: ['height', ' U'],
  depthMm: ['depth', ' mm'],
  depthIs: ['depth measured', ''],
  owned: ['owned', ''],
  price: ['price', ''],
  color: ['colour', ''],
  notes: ['notes', ''],
  known: ['figures', ''],
  bus: ['bus', ''],
  lay: ['lies', ''],
  bends: ['bends', ''],
  awg: ['gauge', ' AWG'],
  membersPerHost: ['members per host', ''],
};

const LONGEST = 24;

function valueWords(value: unknown, unit: string): string {
  if (value === undefined) return 'not said';
  if (typeof value === 'number') return `${figure(value)}${unit}`;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const text = String(value);
  return text.length > LONGEST ? `“${text.slice(0, LONGEST)}…”` : text;
}

const both = (name: string, here: string, kept: string): string =>
  `${name}: ${here} here, ${kept} in my stock`;

const lineWords = (line: string | undefined): string =>
  line === undefined ? 'no pin' : line === '' ? 'nothing' : line.replace('-', MINUS);

function pinDifferences(here: Bus, kept: Bus): string[] {
  const pins = Math.max(here.pinout.length, kept.pinout.length);
  return Array.from({ length: pins }, (_, pin) => pin).flatMap((pin) => {
    const [one, other] = [here.pinout[pin], kept.pinout[pin]];
    return one === other ? [] : [both(`pin ${pin + 1}`, lineWords(one), lineWords(other))];
  });
}

const maWords = (ma: number | null | undefined): string =>
  ma === undefined ? 'none' : ma === null ? 'unknown' : `${figure(ma)} mA`;

function drawDifferences(here: ModuleKind, kept: ModuleKind): string[] {
  const voltages = [...new Set([...Object.keys(here.draws), ...Object.keys(kept.draws)])];
  return voltages.flatMap((id) => {
    const [one, other] = [here.draws[id], kept.draws[id]];
    return one === other ? [] : [both(`current at ${lineWords(id)} V`, maWords(one), maWords(other))];
  });
}

const headerName = ({ name, id }: Header): string => name ?? id;

function headerDifferences(here: ModuleKind, kept: ModuleKind): string[] {
  const mine = new Map(kept.headers.map((header) => [header.id, header]));
  const own = new Set(here.headers.map(({ id }) => id));
  return [
    ...here.headers.flatMap((header) => {
      const other = mine.get(header.id);
      if (!other) return [`header ${headerName(header)}: here only`];
      if (saysTheSame(header, other)) return [];
      const moved = header.xMm !== other.xMm || header.yMm !== other.yMm;
      const at = ({ xMm, yMm }: Header): string => `at ${figure(xMm)} / ${figure(yMm)} mm`;
      return [
        moved
          ? both(`header ${headerName(header)}`, at(header), at(other))
          : `header ${headerName(header)}: differs`,
      ];
    }),
    ...kept.headers.flatMap((header) =>
      own.has(header.id) ? [] : [`header ${headerName(header)}: in my stock only`],
    ),
  ];
}

function connectorDifferences(here: RibbonKind, kept: RibbonKind): string[] {
  if (saysTheSame(here.connectors, kept.connectors)) return [];
  const places = ({ connectors }: RibbonKind): string =>
    connectors.map(({ atMm }) => figure(atMm)).join(', ');
  const [one, other] = [places(here), places(kept)];
  return one === other ? ['connectors: differ'] : [both('connectors at', `${one} mm`, `${other} mm`)];
}

/** Fields whose parts are told one by one. */
const IN_PARTS: ReadonlySet<string> = new Set(['id', 'draws', 'headers', 'connectors', 'pinout']);

/** What differs between a layout's kind and mine, one line each. */
export function differencesOf(
  sort: KindSort,
  here: AnyKind,
  kept: AnyKind,
  which: 'all' | 'counts',
): readonly string[] {
  const one = here as unknown as Readonly<Record<string, unknown>>;
  const other = kept as unknown as Readonly<Record<string, unknown>>;
  const keys = [...new Set([...Object.keys(one), ...Object.keys(other)])].filter(
    (key) => !IN_PARTS.has(key) && (which === 'all' || COUNTS.has(key)),
  );
  const fields = keys.flatMap((key) => {
    if (saysTheSame(one[key], other[key])) return [];
    const [name, unit] = FIELDS[key] ?? [`“${key.slice(0, LONGEST)}”`, ''];
    if (typeof (one[key] ?? other[key]) === 'object') return [`${name}: differs`];
    return [both(name, valueWords(one[key], unit), valueWords(other[key], unit))];
  });
  if (which === 'counts') return fields;
  if (sort === 'bus') return [...fields, ...pinDifferences(here as Bus, kept as Bus)];
  if (sort === 'ribbon') return [...fields, ...connectorDifferences(here as RibbonKind, kept as RibbonKind)];
  const modules = [here as ModuleKind, kept as ModuleKind] as const;
  return [...fields, ...drawDifferences(...modules), ...headerDifferences(...modules)];
}
