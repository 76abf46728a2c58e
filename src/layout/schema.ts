import * as v from 'valibot';
import { GND } from './defaults.ts';
import type {
  Acceptance,
  Board,
  BoardHeader,
  Built,
  Bus,
  Connector,
  DoneStep,
  HarnessTest,
  Header,
  Kit,
  Layout,
  Limits,
  MeterReading,
  Module,
  ModuleKind,
  Ribbon,
  RibbonKind,
  Row,
  Seat,
  Supply,
  Take,
  Voltage,
} from './layout.ts';
import { OPEN_LIMITS } from './open-limits.ts';

/*
 * What each noun of layout.ts must look like by itself, field by field in the same order: writing takes the order of
 * keys from here. What holds between nouns, or between the fields of one, stands in references.ts. The words for what
 * is amiss stand in issue-words.ts. The schema only judges: an opened layout is the very data that was read.
 */

/** The version that this program writes, and the newest that it reads. */
export const VERSION = 1;

/** One schema for each field of an interface, no more and no fewer. */
type Fields<T> = { readonly [K in keyof T]-?: v.GenericSchema<T[K]> };

/** A rule that no action of the library knows, with its words. */
export interface Rule<T> {
  (value: T): boolean;
  readonly words: (value: T) => string;
}

const rule = <T>(holds: (value: T) => boolean, words: (value: T) => string): Rule<T> =>
  Object.assign(holds, { words });

const check = <T>(holds: Rule<NoInfer<T>>) => v.check<T>(holds);

const maybe = v.exactOptional;
const text = (most: number) => v.pipe(v.string(), v.maxLength(most));
const list = <const T extends v.GenericSchema>(item: T, most: number) =>
  v.pipe(v.array(item), v.maxLength(most));

const { most: LARGEST } = OPEN_LIMITS.size;
const name = text(OPEN_LIMITS.name.most);
const id = v.pipe(name, v.minLength(1));
const note = text(OPEN_LIMITS.note.most);
const measure = v.pipe(v.number(), v.minValue(-LARGEST), v.maxValue(LARGEST));
const notNegative = v.pipe(v.number(), v.minValue(0), v.maxValue(LARGEST));
const positive = v.pipe(v.number(), v.gtValue(0), v.maxValue(LARGEST));
const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(LARGEST));
const integer = v.pipe(v.number(), v.integer(), v.minValue(-LARGEST), v.maxValue(LARGEST));
/** Gauges from 0000 (−3) down to the finest wire. */
const awg = v.pipe(v.number(), v.minValue(-3), v.maxValue(60));
const axis = v.picklist(['vertical', 'horizontal']);
const pin1 = v.picklist(['down', 'up', 'left', 'right']);

const currents = v.record(v.string(), notNegative);

const pairs = rule<readonly string[]>(
  ({ length }) => length % 2 === 0,
  ({ length }) => `pins come in pairs; there are ${length}`,
);

const SEATED_ON_KEYS = ['module', 'board', 'ribbon', 'header', 'connector'] as const;

/** What must be said of a seat that is on nothing that there is. */
export const SEATED_ON_WORDS =
  'a seat is on a module and header, a board and header, or a ribbon and connector';

/** What a seat is on has one key of each side; with more it would be a mixture of two things. */
const unmixed = rule<object>(
  (on) => SEATED_ON_KEYS.filter((key) => Object.hasOwn(on, key)).length === 2,
  () => SEATED_ON_WORDS,
);

const limits = v.looseObject({
  seatToleranceMm: maybe(notNegative),
  skewMm: maybe(notNegative),
  bendRadiusMm: maybe(notNegative),
  connectorBodyMm: maybe(notNegative),
  ribbonMm: maybe(notNegative),
  plugMm: maybe(notNegative),
  leadAllowanceMm: maybe(notNegative),
  headroom: maybe(v.pipe(v.number(), v.minValue(0), v.maxValue(1))),
  contactMa: maybe(notNegative),
  contactMilliohm: maybe(positive),
  // Copper's resistance, taken as rising evenly with temperature, would be nothing at about -234 °C.
  ambientC: maybe(v.pipe(v.number(), v.minValue(-200), v.maxValue(1000))),
  groundShiftMv: maybe(notNegative),
} satisfies Fields<Limits>);

const voltage = v.looseObject({
  id: v.pipe(id, v.regex(/^[\x20-\x7e]+$/), v.notValue(GND)),
  volts: v.pipe(measure, v.notValue(0)),
  dropMv: maybe(notNegative),
} satisfies Fields<Voltage>);

const bus = v.looseObject({
  id,
  name,
  pinout: v.pipe(list(name, OPEN_LIMITS.pins.most), v.minLength(2), check(pairs)),
  membersPerHost: maybe(notNegative),
} satisfies Fields<Bus>);

const header = v.looseObject({
  id,
  name: maybe(name),
  bus: id,
  role: v.picklist(['host', 'member']),
  xMm: measure,
  yMm: measure,
  zMm: maybe(measure),
  axis: maybe(axis),
  pin1: maybe(pin1),
  keyed: maybe(v.boolean()),
  passes: maybe(v.boolean()),
  isolated: maybe(v.boolean()),
  counts: maybe(notNegative),
} satisfies Fields<Header>);

const moduleKind = v.looseObject({
  id,
  name,
  widthHp: v.pipe(positive, v.multipleOf(0.5)),
  heightU: maybe(positive),
  depthMm: maybe(notNegative),
  depthIs: maybe(v.picklist(['with-plugs', 'without-plugs'])),
  draws: v.record(v.string(), v.nullable(notNegative)),
  headers: list(header, OPEN_LIMITS.headers.most),
  owned: maybe(notNegative),
  price: maybe(notNegative),
  color: maybe(name),
  notes: maybe(note),
  known: maybe(v.picklist(['measured', 'published', 'guessed'])),
} satisfies Fields<ModuleKind>);

const connector = v.looseObject({
  atMm: notNegative,
  type: maybe(v.picklist(['socket', 'plug'])),
  ways: maybe(v.pipe(count, v.minValue(1))),
  face: maybe(v.picklist(['panel', 'rear'])),
  key: maybe(v.picklist(['none', 'with-stripe', 'against-stripe'])),
} satisfies Fields<Connector>);

const ribbonKind = v.looseObject({
  id,
  name,
  bus: id,
  lay: v.picklist(['flat', 'loose']),
  bends: maybe(v.boolean()),
  awg: maybe(awg),
  connectors: v.pipe(list(connector, OPEN_LIMITS.connectors.most), v.minLength(2)),
  owned: maybe(notNegative),
  price: maybe(notNegative),
} satisfies Fields<RibbonKind>);

const kit = v.looseObject({
  voltages: list(voltage, OPEN_LIMITS.voltages.most),
  buses: list(bus, OPEN_LIMITS.kinds.most),
  modules: list(moduleKind, OPEN_LIMITS.kinds.most),
  ribbons: list(ribbonKind, OPEN_LIMITS.kinds.most),
  limits: maybe(limits),
} satisfies Fields<Kit>);

const row = v.looseObject({
  id,
  name: maybe(name),
  case: maybe(name),
  widthHp: v.pipe(v.number(), v.minValue(0), v.maxValue(OPEN_LIMITS.rowHp.most)),
  heightU: positive,
  depthMm: notNegative,
  gapMm: maybe(notNegative),
} satisfies Fields<Row>);

const boardHeader = v.looseObject({
  id,
  bus: id,
  dxMm: maybe(measure),
  dyMm: maybe(measure),
  axis: maybe(axis),
  pin1: maybe(pin1),
  keyed: maybe(v.boolean()),
} satisfies Fields<BoardHeader>);

const boardLead = v.looseObject({
  lengthMm: notNegative,
  awg,
} satisfies Fields<NonNullable<Board['lead']>>);

const board = v.looseObject({
  id,
  name,
  row: id,
  xMm: measure,
  yMm: maybe(measure),
  widthMm: maybe(notNegative),
  riseMm: maybe(notNegative),
  lead: maybe(boardLead),
  headers: list(boardHeader, OPEN_LIMITS.headers.most),
  limits: maybe(currents),
} satisfies Fields<Board>);

const supply = v.looseObject({
  id,
  name,
  ratings: currents,
  boards: list(board, OPEN_LIMITS.boards.most),
} satisfies Fields<Supply>);

const module = v.looseObject({
  id,
  kind: id,
  row: id,
  atHp: measure,
  label: maybe(name),
  pinned: maybe(v.boolean()),
} satisfies Fields<Module>);

const seat = v.looseObject({
  connector: count,
  on: v.pipe(
    v.union([
      v.looseObject({ module: id, header: id }),
      v.looseObject({ board: id, header: id }),
      v.looseObject({ ribbon: id, connector: count }),
    ]),
    check(unmixed),
  ),
} satisfies Fields<Seat>);

const ribbon = v.looseObject({
  id,
  kind: id,
  label: maybe(name),
  locked: maybe(v.boolean()),
  stripe: maybe(v.picklist(['down', 'up'])),
  twists: maybe(list(count, OPEN_LIMITS.connectors.most)),
  over: maybe(integer),
  seats: list(seat, OPEN_LIMITS.seats.most),
} satisfies Fields<Ribbon>);

const acceptance = v.looseObject({
  key: v.string(),
  why: maybe(note),
  facts: maybe(v.string()),
} satisfies Fields<Acceptance>);

const mark = { by: maybe(name), at: maybe(name) };

const harnessTest = v.looseObject({
  ribbons: list(id, OPEN_LIMITS.ribbons.most),
  test: id,
  of: name,
  ...mark,
} satisfies Fields<HarnessTest>);

const doneStep = v.looseObject({
  step: v.pipe(v.string(), v.minLength(1)),
  ...mark,
} satisfies Fields<DoneStep>);

const meterReading = v.looseObject({
  on: v.picklist(['module', 'supply']),
  id,
  line: id,
  ma: maybe(notNegative),
  volts: maybe(measure),
  ...mark,
} satisfies Fields<MeterReading>);

const built = v.looseObject({
  inCase: maybe(v.boolean()),
  harnessTests: maybe(list(harnessTest, OPEN_LIMITS.built.most)),
  doneSteps: maybe(list(doneStep, OPEN_LIMITS.built.most)),
  readings: maybe(list(meterReading, OPEN_LIMITS.built.most)),
} satisfies Fields<Built>);

const take = v.looseObject({
  id,
  name,
  rows: list(row, OPEN_LIMITS.rows.most),
  supplies: list(supply, OPEN_LIMITS.supplies.most),
  modules: list(module, OPEN_LIMITS.modules.most),
  ribbons: list(ribbon, OPEN_LIMITS.ribbons.most),
  accepted: maybe(list(acceptance, OPEN_LIMITS.accepted.most)),
  built: maybe(built),
} satisfies Fields<Take>);

export const layoutSchema = v.looseObject({
  format: v.literal('ribbonwright'),
  version: v.literal(VERSION),
  id: maybe(id),
  parent: maybe(id),
  title: name,
  notes: maybe(note),
  kit,
  takes: v.pipe(list(take, OPEN_LIMITS.takes.most), v.minLength(1)),
} satisfies Fields<Layout>);

/** The nouns by the names of their interfaces. */
export const nouns = {
  Kit: kit,
  Limits: limits,
  Voltage: voltage,
  Bus: bus,
  ModuleKind: moduleKind,
  Header: header,
  RibbonKind: ribbonKind,
  Connector: connector,
  Take: take,
  Acceptance: acceptance,
  Built: built,
  HarnessTest: harnessTest,
  DoneStep: doneStep,
  MeterReading: meterReading,
  Row: row,
  Supply: supply,
  Board: board,
  BoardHeader: boardHeader,
  Module: module,
  Ribbon: ribbon,
  Seat: seat,
} as const satisfies Readonly<Record<string, v.GenericSchema>>;
