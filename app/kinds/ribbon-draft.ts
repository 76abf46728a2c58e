import {
  type Bus,
  type Connector,
  evenPlaces,
  type Face,
  faceOf,
  freshKindId,
  HP_MM,
  hpToMm,
  isPowerBus,
  type Key,
  type Kit,
  mmToHp,
  OPEN_LIMITS,
  type RibbonKind,
  typeOf,
} from '../../src/index.ts';
import { figure, parseHp } from '../panels/figures.ts';
import { NEW_BUS } from './bus-draft.ts';
import {
  hasProblems,
  isCount,
  isPrice,
  OWNED_WORDS,
  PRICE_WORDS,
  type Problems,
  type Reading,
  readName,
  startReading,
  typed,
  unusedName,
} from './typed.ts';

/** A connector by itself, as it stands in the editor. */
export interface ConnectorDraft {
  /** Rising from 0. */
  readonly atMm: number;
  readonly type: 'socket' | 'plug';
  /** Contacts, as typed; empty: all. */
  readonly ways: string;
  readonly face: Face;
  readonly key: Key;
  /** Which one of the kind that is changed it was; a new one was none. */
  readonly was?: number;
}

/** A kind of ribbon as it stands in the form. */
export interface RibbonDraft {
  /** `null`: as suggested. */
  readonly name: string | null;
  readonly bus: string;
  readonly lay: 'fixed' | 'bends' | 'loose';
  /** each: every connector by itself, as the editor has them; what is said of all together does not count then. */
  readonly spacing: 'even' | 'typed' | 'each';
  readonly count: string;
  readonly pitch: string;
  readonly unit: 'HP' | 'mm';
  /** Typed places, mm, the first at 0. */
  readonly places: string;
  /** kept: as they are on a ribbon that this form could not have made. */
  readonly plug: 'none' | 'first' | 'last' | 'kept';
  /** Contacts of the last connector; empty: all. */
  readonly lastWays: string;
  readonly gauge: string;
  readonly key: Key | 'kept';
  readonly owned: string;
  readonly price: string;
  readonly connectors: readonly ConnectorDraft[];
}

type RibbonField = keyof RibbonDraft;

export interface ReadRibbon {
  readonly kind: RibbonKind | null;
  readonly problems: Problems<RibbonField>;
}

const USUAL_GAUGE = 28;

/** A new ribbon at the pitch of 5 HP modules, or a new power lead. */
export function newRibbonDraft(kit: Kit, sort: 'ribbon' | 'lead'): RibbonDraft {
  const power = kit.buses.filter((bus) => isPowerBus(kit, bus));
  const [link] = kit.buses.filter((bus) => !power.includes(bus));
  const widest = [...power].sort((a, b) => b.pinout.length - a.pinout.length)[0];
  const isLead = sort === 'lead';
  return {
    name: null,
    bus: (isLead ? widest : link)?.id ?? '',
    lay: isLead ? 'loose' : 'fixed',
    spacing: 'even',
    count: isLead ? '2' : '3',
    pitch: isLead ? '250' : '5',
    unit: isLead ? 'mm' : 'HP',
    places: '',
    plug: 'none',
    lastWays: '',
    gauge: typed(USUAL_GAUGE),
    key: 'none',
    owned: '',
    price: '',
    connectors: socketsAt(isLead ? [0, 250] : evenPlaces(3, hpToMm(5))),
  };
}

/** New connectors at these places, mm. */
export const socketsAt = (placesMm: readonly number[]): readonly ConnectorDraft[] =>
  placesMm.map((atMm) => ({ atMm, type: 'socket', ways: '', face: 'panel', key: 'none' }));

const connectorDraftOf = (connector: Connector, was: number): ConnectorDraft => ({
  atMm: connector.atMm,
  type: typeOf(connector),
  ways: typed(connector.ways),
  face: faceOf(connector),
  key: keyOf(connector),
  was,
});

const NEAR = 1e-6;

function evenPitch(connectors: readonly Connector[]): number | undefined {
  const pitch = connectors[1]?.atMm ?? 0;
  const even = evenPlaces(connectors.length, pitch);
  return connectors.every(({ atMm }, i) => Math.abs(atMm - (even[i] as number)) < NEAR) ? pitch : undefined;
}

function plugOf(connectors: readonly Connector[]): RibbonDraft['plug'] {
  const plugs = connectors.flatMap((connector, i) => (typeOf(connector) === 'plug' ? [i] : []));
  if (plugs.length === 0) return 'none';
  if (plugs.length > 1) return 'kept';
  if (plugs[0] === 0) return 'first';
  return plugs[0] === connectors.length - 1 ? 'last' : 'kept';
}

const keyOf = ({ key = 'none' }: Connector): Key => key;

/** A kind that there is, to be changed. */
export function ribbonDraftOf(kind: RibbonKind): RibbonDraft {
  const { connectors, lay, bends } = kind;
  const pitch = evenPitch(connectors);
  const hp = pitch === undefined ? 0 : Math.round(mmToHp(pitch) * 2) / 2;
  const isHp = lay === 'flat' && pitch !== undefined && hp > 0 && Math.abs(hpToMm(hp) - pitch) < NEAR;
  const keys = new Set(connectors.map(keyOf));
  return {
    name: kind.name,
    bus: kind.bus,
    lay: lay === 'loose' ? 'loose' : bends ? 'bends' : 'fixed',
    spacing: pitch === undefined ? 'typed' : 'even',
    count: typed(connectors.length),
    pitch: typed(isHp ? hp : pitch),
    unit: isHp ? 'HP' : 'mm',
    places: connectors.map(({ atMm }) => typed(Number(atMm.toFixed(6)))).join(', '),
    plug: plugOf(connectors),
    lastWays: typed(connectors.at(-1)?.ways),
    gauge: typed(kind.awg ?? USUAL_GAUGE),
    key: keys.size === 1 ? ([...keys][0] as Key) : 'kept',
    owned: typed(kind.owned),
    price: typed(kind.price),
    connectors: connectors.map(connectorDraftOf),
  };
}

/** What a pitch is in the other unit, in words; nothing where it is no number. */
export function otherUnit({ pitch, unit }: RibbonDraft): string {
  const value = parseHp(pitch);
  if (value === null) return '';
  return unit === 'HP' ? `= ${figure(value * HP_MM)} mm` : `= ${figure(value / HP_MM, 2)} HP`;
}

/** The same distance in the other unit, for the field. */
export function inUnit(draft: RibbonDraft, unit: RibbonDraft['unit']): RibbonDraft {
  const value = parseHp(draft.pitch);
  if (unit === draft.unit || value === null) return { ...draft, unit };
  const converted = unit === 'mm' ? value * HP_MM : value / HP_MM;
  return { ...draft, unit, pitch: typed(Number(converted.toFixed(3))) };
}

function distance({ spacing, pitch, unit, lay }: RibbonDraft, places: readonly number[]): string {
  if (spacing === 'even' && lay !== 'loose') return ` at ${pitch.trim()} ${unit}`;
  if (lay !== 'loose') return '';
  return `, ${figure(places.at(-1) ?? 0)} mm`;
}

/** What it would be called: its bus, its connectors and their distance. */
function suggestedRibbonName(kit: Kit, draft: RibbonDraft): string {
  const bus = kit.buses.find(({ id }) => id === draft.bus);
  const places = readPlaces(startReading(), draft);
  const away = distance(draft, places);
  if (bus && draft.lay === 'loose' && isPowerBus(kit, bus)) {
    const ways = draft.lastWays.trim();
    const ends = ways ? `${bus.pinout.length} to ${ways}` : `${bus.pinout.length}-way`;
    return unusedName(kit.ribbons, `Lead ${ends}${away}`);
  }
  const sort = draft.plug === 'first' || draft.plug === 'last' ? ' extension' : '';
  const lies = draft.lay === 'loose' ? ' loose' : draft.lay === 'bends' ? ' bending' : '';
  const name = `${bus?.name ?? 'Ribbon'}${sort}, ${places.length || '?'}${lies}${away}`;
  return unusedName(kit.ribbons, name);
}

export const ribbonName = (kit: Kit, draft: RibbonDraft): string =>
  draft.name ?? suggestedRibbonName(kit, draft);

const LEAST_MM = 0.1;
const MOST_MM = 10_000;
const { most: MOST_CONNECTORS } = OPEN_LIMITS.connectors;

type Read = Reading<RibbonField>;

const COUNT_WORDS = `A whole number of connectors from 2 to ${MOST_CONNECTORS}`;
const PLACES_WORDS = 'Places are numbers of mm that rise from 0, as in 0, 36, 96';

const isConnectors = (value: number): boolean =>
  Number.isInteger(value) && value >= 2 && value <= MOST_CONNECTORS;

function readTypedPlaces(read: Read, text: string): number[] {
  // Between semicolons a comma is a decimal one.
  const between = text.includes(';') ? /;/ : /[,\s]+/;
  const parts = text.split(between).filter((part) => part.trim() !== '');
  const places = parts.map((part) => parseHp(part) ?? Number.NaN);
  const rise = places.every((mm, i) => (i === 0 ? mm === 0 : mm > (places[i - 1] as number)));
  if (!rise || places.length < 2 || places.length > MOST_CONNECTORS) read.wrong('places', PLACES_WORDS);
  return places;
}

function readEvenPlaces(read: Read, { count: text, pitch: away, unit }: RibbonDraft): number[] {
  const count = read.number('count', text, COUNT_WORDS, isConnectors);
  const mmOf = (value: number): number => (unit === 'HP' ? hpToMm(value) : value);
  const words = `A distance is a number of ${unit}, at least ${LEAST_MM} mm`;
  const pitch = read.number('pitch', away, words, (value) => mmOf(value) >= LEAST_MM);
  if (count === undefined || pitch === undefined) return [];
  return evenPlaces(count, mmOf(pitch));
}

function readEachPlace(read: Read, connectors: readonly ConnectorDraft[]): number[] {
  const places = connectors.map(({ atMm }) => atMm);
  if (!isConnectors(places.length)) read.wrong('connectors', COUNT_WORDS);
  const rise = places.every((mm, i) => (i === 0 ? mm === 0 : mm > (places[i - 1] as number)));
  if (!rise) read.wrong('connectors', 'No two connectors are at one place');
  return places;
}

const WRONG_PLACES = { even: 'pitch', typed: 'places', each: 'connectors' } as const;

/** mm; empty, or not rising, with a problem. */
function readPlaces(read: Read, draft: RibbonDraft): number[] {
  const { spacing } = draft;
  const places =
    spacing === 'each'
      ? readEachPlace(read, draft.connectors)
      : spacing === 'typed'
        ? readTypedPlaces(read, draft.places)
        : readEvenPlaces(read, draft);
  if ((places.at(-1) ?? 0) > MOST_MM) {
    read.wrong(WRONG_PLACES[spacing], `Longer than ${MOST_MM / 1000} m from end to end`);
  }
  return places;
}

function readWays(
  read: Read,
  field: RibbonField,
  ways: string,
  bus: Bus | undefined,
  of = '',
): number | undefined {
  const most = bus?.pinout.length ?? OPEN_LIMITS.pins.most;
  const words = `${of}A whole number of contacts from 1 to ${most}, or nothing for all of them`;
  return read.maybe(
    field,
    ways,
    words,
    (number) => Number.isInteger(number) && number >= 1 && number <= most,
  );
}

/** The very place that it had, where it has not moved. */
const asBefore = (atMm: number, before: Connector | undefined): number =>
  before && Math.abs(before.atMm - atMm) < NEAR ? before.atMm : atMm;

/** The old connector that a new one comes from: both ends from the ends. */
function originOf(i: number, count: number, before: readonly Connector[]): Partial<Connector> {
  if (i === 0) return before[0] ?? {};
  if (i === count - 1) return before.at(-1) ?? {};
  return i < before.length - 1 ? (before[i] ?? {}) : {};
}

/** What the form says of a connector, and of the old one all that it does not show. */
function connectorAt(
  atMm: number,
  origin: Partial<Connector>,
  { plug, key }: RibbonDraft,
  { isFirst, isLast, ways }: { isFirst: boolean; isLast: boolean; ways: number | undefined },
): Connector {
  const { type, face, ways: oldWays, key: oldKey, ...rest } = origin;
  const old = type ?? 'socket';
  const now =
    plug === 'kept' ? old : (plug === 'first' && isFirst) || (plug === 'last' && isLast) ? 'plug' : 'socket';
  const contacts = isLast ? ways : oldWays;
  const bump = key === 'kept' ? oldKey : key === (oldKey ?? 'none') ? oldKey : key;
  return {
    ...rest,
    atMm,
    ...(now === old ? type && { type } : now === 'plug' && { type: now }),
    ...(contacts !== undefined && { ways: contacts }),
    ...(now === old && face && { face }),
    ...(bump && { key: bump }),
  };
}

/** A connector as the editor has it; what it does not show, and what was said though it goes without saying, stays. */
function connectorFrom(
  { atMm, type, face, key }: ConnectorDraft,
  ways: number | undefined,
  origin: Partial<Connector>,
): Connector {
  const { type: oldType, face: oldFace, ways: _, key: oldKey, ...rest } = origin;
  const isUsualFace = face === faceOf({ atMm, type });
  return {
    ...rest,
    atMm,
    ...((type === 'plug' || oldType === type) && { type }),
    ...(ways !== undefined && { ways }),
    ...((!isUsualFace || (oldFace === face && (oldType ?? 'socket') === type)) && { face }),
    ...((key !== 'none' || oldKey === key) && { key }),
  };
}

function readEach(
  read: Read,
  { connectors }: RibbonDraft,
  bus: Bus | undefined,
  before: readonly Connector[],
): Connector[] {
  return connectors.map((connector, i) => {
    const origin = (connector.was === undefined ? undefined : before[connector.was]) ?? {};
    const ways = readWays(read, 'connectors', connector.ways, bus, `Connector ${i + 1}: `);
    return connectorFrom(connector, ways, origin);
  });
}

function readTogether(
  read: Read,
  draft: RibbonDraft,
  bus: Bus | undefined,
  before: readonly Connector[],
  places: readonly number[],
): Connector[] {
  const ways = readWays(read, 'lastWays', draft.lastWays, bus);
  const last = places.length - 1;
  return places.map((atMm, i) =>
    connectorAt(asBefore(atMm, before[i]), originOf(i, places.length, before), draft, {
      isFirst: i === 0,
      isLast: i === last,
      ways,
    }),
  );
}

/** @param before - the kind that is changed; what the form does not show stays as it is */
export function readRibbon(kit: Kit, draft: RibbonDraft, before?: RibbonKind): ReadRibbon {
  const read = startReading<RibbonField>();
  const bus = kit.buses.find(({ id }) => id === draft.bus);
  if (draft.bus === NEW_BUS) read.wrong('bus', 'Finish the new bus, or choose another');
  else if (!bus) read.wrong('bus', 'Choose a bus, or make a new one');
  const places = readPlaces(read, draft);
  const old = before?.connectors ?? [];
  const connectors =
    draft.spacing === 'each' ? readEach(read, draft, bus, old) : readTogether(read, draft, bus, old, places);
  const gauge = read.maybe(
    'gauge',
    draft.gauge,
    'A gauge is a number from 0 to 60; 28 is usual for ribbon',
    (awg) => awg >= 0 && awg <= 60,
  );
  const owned = read.maybe('owned', draft.owned, OWNED_WORDS, isCount);
  const price = read.maybe('price', draft.price, PRICE_WORDS, isPrice);
  const name = readName(read, ribbonName(kit, draft), kit.ribbons, before?.name);

  const { problems } = read;
  if (hasProblems(problems) || !bus) return { kind: null, problems };
  const { bends, awg, owned: _, price: __, ...rest } = before ?? {};
  const isFlat = draft.lay !== 'loose';
  const wasFixed = bends === false ? { bends } : {};
  const kind: RibbonKind = {
    ...rest,
    id: before?.id ?? freshKindId(kit.ribbons, name),
    name,
    bus: bus.id,
    lay: isFlat ? 'flat' : 'loose',
    ...(draft.lay === 'bends' ? { bends: true } : wasFixed),
    ...(gauge !== undefined && (gauge !== USUAL_GAUGE || awg !== undefined) && { awg: gauge }),
    connectors,
    ...(owned !== undefined && { owned }),
    ...(price !== undefined && { price }),
  };
  return { kind, problems };
}
