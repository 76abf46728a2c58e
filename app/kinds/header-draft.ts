import {
  type Axis,
  type Edges,
  type Header,
  isPowerBus,
  type Kit,
  measuredFrom,
  OPEN_LIMITS,
  type PanelPlace,
  type PanelSize,
  type PinEnd,
  type Role,
} from '../../src/index.ts';
import { parseHp } from '../panels/figures.ts';
import { NEW_BUS } from './bus-draft.ts';
import { keptText, type Reading, typed } from './typed.ts';

/** Not said, which the program reads in its own way and says so, or said. */
export type Said = '' | 'yes' | 'no';

/** A header as it stands in the form: everything that may be unknown may be empty. */
export interface HeaderDraft {
  /** Tells it from the others in the form, whatever becomes of its id. */
  readonly key: string;
  /** As it stands in the kind; what the form does not know of it stays. */
  readonly was?: Header;
  readonly id: string;
  readonly name: string;
  readonly bus: string;
  readonly role: Role;
  /** From the form's edges, mm. */
  readonly x: string;
  readonly y: string;
  readonly z: string;
  readonly axis: '' | Axis;
  readonly pin1: '' | PinEnd;
  readonly keyed: Said;
  readonly passes: Said;
  readonly isolated: Said;
  readonly counts: string;
}

type HeaderPart = keyof Omit<HeaderDraft, 'key' | 'was'>;

/** A field of a header in the form. */
export type HeaderField = `header ${string}`;

export const headerField = ({ key }: Pick<HeaderDraft, 'key'>, part: HeaderPart): HeaderField =>
  `header ${part} ${key}`;

const saidOf = (value: boolean | undefined): Said => (value === undefined ? '' : value ? 'yes' : 'no');

const typedPlace = (place: PanelPlace): Pick<HeaderDraft, 'x' | 'y'> => ({
  x: typed(place.xMm),
  y: typed(place.yMm),
});

export function headerDraftOf(header: Header, edges: Edges, size: PanelSize): HeaderDraft {
  const { id, name = '', bus, role, zMm, axis = '', pin1 = '', keyed, passes, isolated, counts } = header;
  return {
    key: id,
    was: header,
    id,
    name,
    bus,
    role,
    ...typedPlace(measuredFrom(edges, size, header)),
    z: typed(zMm),
    axis,
    pin1,
    keyed: saidOf(keyed),
    passes: saidOf(passes),
    isolated: saidOf(isolated),
    counts: typed(counts),
  };
}

/** What is typed as mm; `undefined` where it is no number. */
export const mmIn = (text: string): number | undefined =>
  parseHp(text.replace(/\s*mm\s*$/i, '')) ?? undefined;

/** Closer than this, a place that was converted to and fro is the one that it was, mm. */
const SAME_MM = 2e-6;

/** Where a header lies as far as it is typed, seen from the front as the document has it. */
export function placeOf({ x, y, was }: HeaderDraft, edges: Edges, size: PanelSize): PanelPlace | undefined {
  const [xMm, yMm] = [mmIn(x), mmIn(y)];
  if (xMm === undefined || yMm === undefined) return undefined;
  const place = measuredFrom(edges, size, { xMm, yMm });
  if (!was) return place;
  return {
    xMm: Math.abs(place.xMm - was.xMm) < SAME_MM ? was.xMm : place.xMm,
    yMm: Math.abs(place.yMm - was.yMm) < SAME_MM ? was.yMm : place.yMm,
  };
}

/** The header at another place of the panel. */
export const placedAt = (
  header: HeaderDraft,
  edges: Edges,
  size: PanelSize,
  place: PanelPlace,
): HeaderDraft => ({ ...header, ...typedPlace(measuredFrom(edges, size, place)) });

/** The same place, measured from other edges; what is no number stays as it is typed. */
export function measuredAnew(header: HeaderDraft, from: Edges, to: Edges, size: PanelSize): HeaderDraft {
  const x = mmIn(header.x);
  const y = mmIn(header.y);
  const turned = measuredFrom(
    {
      across: from.across === to.across ? 'front-left' : 'rear-left',
      up: from.up === to.up ? 'bottom' : 'top',
    },
    size,
    { xMm: x ?? 0, yMm: y ?? 0 },
  );
  return {
    ...header,
    x: x === undefined || from.across === to.across ? header.x : typed(turned.xMm),
    y: y === undefined || from.up === to.up ? header.y : typed(turned.yMm),
  };
}

/** Ends at which pin 1 can be, by the header's long side. */
export const PIN_ENDS: Readonly<Record<Axis, readonly PinEnd[]>> = {
  vertical: ['down', 'up'],
  horizontal: ['left', 'right'],
};

const MOST_MM = 10_000;
const MOST_COUNTS = 1000;
const { most: LONGEST } = OPEN_LIMITS.name;

const isPlace = (mm: number): boolean => Math.abs(mm) <= MOST_MM;
const isDepth = (mm: number): boolean => mm >= 0 && mm <= MOST_MM;
const isCounted = (members: number): boolean => members >= 0 && members <= MOST_COUNTS;

const said = (answer: Said, key: 'keyed' | 'passes' | 'isolated'): Partial<Header> =>
  answer ? { [key]: answer === 'yes' } : {};

/** What a header says, or a problem at its field; it is only to be used where no problem was noted. */
export function readHeader<Field extends string>(
  read: Reading<Field | HeaderField>,
  kit: Pick<Kit, 'buses'>,
  draft: HeaderDraft,
  others: readonly HeaderDraft[],
  edges: Edges,
  size: PanelSize,
): Header {
  const at = (part: HeaderPart): HeaderField => headerField(draft, part);
  const id = draft.id.trim();
  if (id === '') read.wrong(at('id'), 'Give it a short name of its own');
  else if (id.length > LONGEST) read.wrong(at('id'), `At most ${LONGEST} characters`);
  else if (others.some((other) => other !== draft && other.id.trim() === id))
    read.wrong(at('id'), 'Another header has this id');
  const name = keptText(draft.was?.name, draft.name);
  if (draft.name.length > LONGEST) read.wrong(at('name'), `At most ${LONGEST} characters`);
  if (draft.bus === NEW_BUS) read.wrong(at('bus'), 'Finish the new bus, or choose another');
  else if (!kit.buses.some((bus) => bus.id === draft.bus))
    read.wrong(at('bus'), 'Choose a bus, or make a new one');
  const placeWords = `A distance from the edge is a number of mm, at most ${MOST_MM}`;
  read.number(at('x'), draft.x, placeWords, isPlace);
  read.number(at('y'), draft.y, placeWords, isPlace);
  const depthWords = `A distance behind the panel is from 0 to ${MOST_MM} mm; empty where it is not known`;
  const zMm = read.maybe(at('z'), draft.z, depthWords, isDepth);
  const countWords = `A number of members from 0 to ${MOST_COUNTS}, or nothing for one`;
  const counts = read.maybe(at('counts'), draft.counts, countWords, isCounted);
  if (draft.pin1 && !PIN_ENDS[draft.axis || 'vertical'].includes(draft.pin1))
    read.wrong(at('pin1'), 'Pin 1 is at an end of the long side');
  const place = placeOf(draft, edges, size) ?? { xMm: 0, yMm: 0 };
  const {
    name: _1,
    zMm: _2,
    axis: _3,
    pin1: _4,
    keyed: _5,
    passes: _6,
    isolated: _7,
    counts: _8,
    ...rest
  } = draft.was ?? {};
  return {
    ...rest,
    id: id === draft.was?.id.trim() ? draft.was.id : id,
    ...(name !== undefined && { name }),
    bus: draft.bus,
    role: draft.role,
    ...place,
    ...(zMm !== undefined && { zMm }),
    ...(draft.axis && { axis: draft.axis }),
    ...(draft.pin1 && { pin1: draft.pin1 }),
    ...said(draft.keyed, 'keyed'),
    ...said(draft.passes, 'passes'),
    ...said(draft.isolated, 'isolated'),
    ...(counts !== undefined && { counts }),
  };
}

/** A word that no header has as its id or key yet: the stem, or with a number behind it. */
function unusedId(headers: readonly HeaderDraft[], stem: string): string {
  const taken = new Set(headers.flatMap(({ key, id }) => [key, id.trim()]));
  let id = stem;
  for (let number = 2; taken.has(id); number++) id = `${stem}-${number}`;
  return id;
}

/** Room that two headers need so that neither hides the other, mm. */
const APART_MM = 12;

/** The free place nearest below or above the middle of the panel, and the middle where there is none. */
function freePlace(taken: readonly PanelPlace[], { widthMm, heightMm }: PanelSize): PanelPlace {
  const xMm = Math.round(widthMm * 500) / 1000;
  const middle = Math.round(heightMm * 500) / 1000;
  const steps = Array.from({ length: Math.floor(heightMm / APART_MM) }, (_, i) => i);
  const heights = steps.map((i) => middle + Math.ceil(i / 2) * APART_MM * 1.5 * (i % 2 ? 1 : -1));
  const isFree = (yMm: number): boolean =>
    yMm > APART_MM / 2 &&
    yMm < heightMm - APART_MM / 2 &&
    !taken.some((other) => Math.abs(other.xMm - xMm) < APART_MM / 2 && Math.abs(other.yMm - yMm) < APART_MM);
  return { xMm, yMm: Math.round((heights.find(isFree) ?? middle) * 1000) / 1000 };
}

/** A header more, on the first bus that none has yet; where its pin 1 is and all else is still to be said. */
export function newHeader(
  kit: Pick<Kit, 'buses' | 'voltages'>,
  headers: readonly HeaderDraft[],
  edges: Edges,
  size: PanelSize,
): HeaderDraft {
  const used = new Set(headers.map(({ bus }) => bus));
  const link = kit.buses.find((bus) => !used.has(bus.id) && !isPowerBus(kit, bus));
  const bus = (link ?? kit.buses.find(({ id }) => !used.has(id)) ?? kit.buses[0])?.id ?? '';
  const id = unusedId(headers, bus || 'header');
  const taken = headers.flatMap((header) => placeOf(header, edges, size) ?? []);
  return {
    key: id,
    id,
    name: '',
    bus,
    role: 'member',
    ...typedPlace(measuredFrom(edges, size, freePlace(taken, size))),
    z: '',
    axis: '',
    pin1: '',
    keyed: '',
    passes: '',
    isolated: '',
    counts: '',
  };
}

/** How far a copy lies from what it is a copy of, mm: the pitch of two pins. */
const COPY_MM = 5.08;

/** A header like another, beside it. */
export function headerLike(
  header: HeaderDraft,
  headers: readonly HeaderDraft[],
  edges: Edges,
  size: PanelSize,
): HeaderDraft {
  const id = unusedId(headers, header.id.trim() || 'header');
  const place = placeOf(header, edges, size) ?? { xMm: 0, yMm: 0 };
  const { was: _, ...rest } = header;
  return placedAt({ ...rest, key: id, id }, edges, size, {
    xMm: Math.round((place.xMm + COPY_MM) * 1000) / 1000,
    yMm: place.yMm,
  });
}
