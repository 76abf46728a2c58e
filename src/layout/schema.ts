import * as v from 'valibot';
import { LIMIT_FACTS } from './defaults.ts';
import type { Limits } from './layout.ts';

/**
 * The shape of a layout document, version 1. It only judges: an opened layout is the very data that was read,
 * with unknown keys kept and no defaults filled in. What spans several places (references, ids, pin ends) is
 * judged in `references.ts`.
 */
export const VERSION = 1;

/** Counts beyond which a document is no case of anybody's but made to be slow. */
const MOST = {
  takes: 100,
  rows: 200,
  modules: 20_000,
  ribbons: 20_000,
  supplies: 100,
  boards: 1000,
  kinds: 2000,
  headers: 200,
  pins: 128,
  connectors: 200,
  seats: 400,
  accepted: 100_000,
  nameLength: 1000,
  notesLength: 100_000,
} as const;

/** Arithmetic stays exact enough to a nanometre below this. */
const HUGE = 1e9;

const name = v.pipe(v.string(), v.maxLength(MOST.nameLength));
const id = v.pipe(name, v.minLength(1));
const notes = v.pipe(v.string(), v.maxLength(MOST.notesLength));
/** Gauges from 0000 (−3) down to the finest wire. */
const awg = v.pipe(v.number(), v.minValue(-3), v.maxValue(60));
const number = v.pipe(v.number(), v.minValue(-HUGE), v.maxValue(HUGE));
const notNegative = v.pipe(v.number(), v.minValue(0), v.maxValue(HUGE));
const positive = v.pipe(v.number(), v.gtValue(0), v.maxValue(HUGE));
const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(HUGE));
const flag = v.boolean();
const currents = v.record(v.string(), notNegative);

const list = <const T extends v.GenericSchema>(item: T, most: number) =>
  v.pipe(v.array(item), v.maxLength(most));

const axis = v.picklist(['vertical', 'horizontal']);
const pin1 = v.picklist(['down', 'up', 'left', 'right']);
const stripe = v.picklist(['down', 'up']);

const voltage = v.looseObject({
  id: v.pipe(id, v.regex(/^[\x20-\x7e]+$/)),
  volts: v.pipe(number, v.notValue(0)),
  dropMv: v.optional(notNegative),
});

const bus = v.looseObject({
  id,
  name,
  pinout: v.pipe(list(name, MOST.pins), v.minLength(2)),
  membersPerHost: v.optional(notNegative),
});

const header = v.looseObject({
  id,
  name: v.optional(name),
  bus: id,
  role: v.picklist(['host', 'member']),
  xMm: number,
  yMm: number,
  zMm: v.optional(number),
  axis: v.optional(axis),
  pin1: v.optional(pin1),
  keyed: v.optional(flag),
  passes: v.optional(flag),
  isolated: v.optional(flag),
  counts: v.optional(notNegative),
});

const moduleKind = v.looseObject({
  id,
  name,
  widthHp: v.pipe(positive, v.multipleOf(0.5)),
  heightU: v.optional(positive),
  depthMm: v.optional(notNegative),
  depthIs: v.optional(v.picklist(['with-plugs', 'without-plugs'])),
  draws: v.record(v.string(), v.nullable(notNegative)),
  headers: list(header, MOST.headers),
  owned: v.optional(notNegative),
  price: v.optional(notNegative),
  color: v.optional(name),
  notes: v.optional(notes),
  known: v.optional(v.picklist(['measured', 'published', 'guessed'])),
});

const connector = v.looseObject({
  atMm: notNegative,
  type: v.optional(v.picklist(['socket', 'plug'])),
  ways: v.optional(v.pipe(count, v.minValue(1))),
  face: v.optional(v.picklist(['panel', 'rear'])),
  key: v.optional(v.picklist(['none', 'with-stripe', 'against-stripe'])),
});

const ribbonKind = v.looseObject({
  id,
  name,
  bus: id,
  lay: v.picklist(['flat', 'loose']),
  bends: v.optional(flag),
  awg: v.optional(awg),
  connectors: v.pipe(list(connector, MOST.connectors), v.minLength(2)),
  owned: v.optional(notNegative),
  price: v.optional(notNegative),
});

const LIMIT_NAMES = Object.keys(LIMIT_FACTS) as (keyof Limits)[];

const limits = v.looseObject({
  ...(Object.fromEntries(LIMIT_NAMES.map((limit) => [limit, v.optional(notNegative)])) as Record<
    keyof Limits,
    v.OptionalSchema<typeof notNegative, undefined>
  >),
  contactMilliohm: v.optional(positive),
  headroom: v.optional(v.pipe(notNegative, v.maxValue(1))),
  ambientC: v.optional(number),
});

const kit = v.looseObject({
  voltages: list(voltage, MOST.kinds),
  buses: list(bus, MOST.kinds),
  modules: list(moduleKind, MOST.kinds),
  ribbons: list(ribbonKind, MOST.kinds),
  limits: v.optional(limits),
});

const row = v.looseObject({
  id,
  name: v.optional(name),
  case: v.optional(name),
  widthHp: notNegative,
  heightU: positive,
  depthMm: notNegative,
  gapMm: v.optional(notNegative),
});

const boardHeader = v.looseObject({
  id,
  bus: id,
  dxMm: v.optional(number),
  dyMm: v.optional(number),
  axis: v.optional(axis),
  pin1: v.optional(pin1),
  keyed: v.optional(flag),
});

const board = v.looseObject({
  id,
  name,
  row: id,
  xMm: number,
  yMm: v.optional(number),
  widthMm: v.optional(notNegative),
  riseMm: v.optional(notNegative),
  lead: v.optional(v.looseObject({ lengthMm: notNegative, awg })),
  headers: list(boardHeader, MOST.headers),
  limits: v.optional(currents),
});

const supply = v.looseObject({ id, name, ratings: currents, boards: list(board, MOST.boards) });

const module = v.looseObject({
  id,
  kind: id,
  row: id,
  atHp: number,
  label: v.optional(name),
  pinned: v.optional(flag),
});

/** One of three shapes; `references.ts` sees that it is one and not a mixture. */
const seatedOn = v.looseObject({
  module: v.optional(id),
  board: v.optional(id),
  ribbon: v.optional(id),
  header: v.optional(id),
  connector: v.optional(count),
});

const ribbon = v.looseObject({
  id,
  kind: id,
  label: v.optional(name),
  locked: v.optional(flag),
  stripe: v.optional(stripe),
  twists: v.optional(list(count, MOST.connectors)),
  seats: list(v.looseObject({ connector: count, on: seatedOn }), MOST.seats),
});

const take = v.looseObject({
  id,
  name,
  rows: list(row, MOST.rows),
  supplies: list(supply, MOST.supplies),
  modules: list(module, MOST.modules),
  ribbons: list(ribbon, MOST.ribbons),
  accepted: v.optional(
    list(
      v.looseObject({ key: v.string(), why: v.optional(notes), facts: v.optional(v.string()) }),
      MOST.accepted,
    ),
  ),
  built: v.optional(v.looseObject({})),
});

export const layoutSchema = v.looseObject({
  format: v.literal('ribbonwright'),
  version: v.literal(VERSION),
  id: v.optional(id),
  parent: v.optional(id),
  title: name,
  notes: v.optional(notes),
  kit,
  takes: v.pipe(list(take, MOST.takes), v.minLength(1)),
});
