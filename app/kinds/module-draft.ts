import {
  busesOfTemplate,
  DOCUMENT_EDGES,
  type Edges,
  freshKindId,
  type Header,
  isPowerBus,
  type Kit,
  MODULE_TEMPLATES,
  type ModuleKind,
  type ModuleTemplate,
  OPEN_LIMITS,
  type PanelSize,
  panelSizeMm,
  type TemplateBus,
  type TemplateChoice,
  templateHeaders,
  templateOf,
} from '../../src/index.ts';
import { parseHp } from '../panels/figures.ts';
import { NEW_BUS } from './bus-draft.ts';
import {
  type HeaderDraft,
  type HeaderField,
  headerDraftOf,
  measuredAnew,
  readHeader,
} from './header-draft.ts';
import {
  hasProblems,
  isCount,
  isPrice,
  keptText,
  OWNED_WORDS,
  PRICE_WORDS,
  type Problems,
  type Reading,
  readName,
  startReading,
  typed,
  unusedName,
} from './typed.ts';

/** Draws none, draws nobody knows how much, or draws so much: three states, never mixed up. */
export interface DrawDraft {
  readonly is: 'none' | 'unknown' | 'known';
  readonly ma: string;
}

/** A kind of module as it stands in the form. */
export interface ModuleDraft extends Readonly<Record<TemplateBus, string>> {
  /** `null`: as suggested. */
  readonly name: string | null;
  readonly widthHp: string;
  /** Empty: not said, which is read as 3. */
  readonly heightU: string;
  /** kept: the headers below, whatever template might make them. */
  readonly template: ModuleTemplate['id'] | 'kept';
  readonly headers: readonly HeaderDraft[];
  /** What places of headers are measured from. */
  readonly edges: Edges;
  readonly pin1: '' | 'down' | 'up';
  readonly keyed: boolean;
  readonly depth: string;
  readonly depthIs: '' | NonNullable<ModuleKind['depthIs']>;
  readonly draws: Readonly<Record<string, DrawDraft>>;
  readonly owned: string;
  readonly price: string;
  readonly known: '' | NonNullable<ModuleKind['known']>;
  readonly color: string;
  readonly notes: string;
}

export type ModuleField =
  | keyof Omit<ModuleDraft, 'draws' | 'headers' | 'edges'>
  | `draws ${string}`
  | HeaderField;

/** What the form says so far: a kind, or what keeps it from being one. */
export interface ReadModule {
  readonly kind: ModuleKind | null;
  readonly problems: Problems<ModuleField>;
}

export const templateFor = (draft: ModuleDraft): ModuleTemplate | undefined =>
  MODULE_TEMPLATES.find(({ id }) => id === draft.template);

const linkBuses = (kit: Kit) => kit.buses.filter((bus) => !isPowerBus(kit, bus));

/** Power is drawn from these by nearly every module; from others only by those that say so. */
const MAIN_VOLTAGES = ['+12', '-12'];

/** A new module: nothing is claimed that the user has not said. */
export function newModuleDraft(kit: Kit): ModuleDraft {
  const [bus, nextBus] = linkBuses(kit);
  const power = kit.buses.filter((each) => isPowerBus(kit, each));
  const draws = kit.voltages.map(({ id }): [string, DrawDraft] => [
    id,
    { is: MAIN_VOLTAGES.includes(id) ? 'unknown' : 'none', ma: '' },
  ]);
  return {
    name: null,
    widthHp: '5',
    heightU: '',
    template: 'plain',
    headers: [],
    edges: DOCUMENT_EDGES,
    bus: bus?.id ?? '',
    nextBus: nextBus?.id ?? '',
    powerBus: (power.find(({ pinout }) => pinout.length === 10) ?? power[0])?.id ?? '',
    pin1: '',
    keyed: false,
    depth: '',
    depthIs: '',
    draws: Object.fromEntries(draws),
    owned: '',
    price: '',
    known: '',
    color: '',
    notes: '',
  };
}

function drawDraft(ma: number | null | undefined): DrawDraft {
  if (ma === undefined) return { is: 'none', ma: '' };
  return ma === null ? { is: 'unknown', ma: '' } : { is: 'known', ma: typed(ma) };
}

/** A kind that there is, to be changed. */
export function moduleDraftOf(kit: Kit, kind: ModuleKind): ModuleDraft {
  const made = templateOf(kit, kind);
  const { pin1, keyed = false, bus = '', nextBus = '', powerBus = '' } = made?.choice ?? {};
  return {
    ...newModuleDraft(kit),
    ...(made && { bus, nextBus, powerBus }),
    name: kind.name,
    widthHp: typed(kind.widthHp),
    heightU: typed(kind.heightU),
    template: made?.template.id ?? 'kept',
    headers: headerDraftsOf(kind.headers, DOCUMENT_EDGES, sizeOf(kind)),
    pin1: pin1 === 'down' || pin1 === 'up' ? pin1 : '',
    keyed,
    depth: typed(kind.depthMm),
    depthIs: kind.depthIs ?? '',
    draws: Object.fromEntries(kit.voltages.map(({ id }) => [id, drawDraft(kind.draws[id])])),
    owned: typed(kind.owned),
    price: typed(kind.price),
    known: kind.known ?? '',
    color: kind.color ?? '',
    notes: kind.notes ?? '',
  };
}

const headerDraftsOf = (headers: readonly Header[], edges: Edges, size: PanelSize): readonly HeaderDraft[] =>
  headers.map((header) => headerDraftOf(header, edges, size));

const sizeOf = ({ widthHp, heightU = 3 }: Pick<ModuleKind, 'widthHp' | 'heightU'>): PanelSize =>
  panelSizeMm(widthHp, heightU);

/** What it would be called: its sort and its width. */
function suggestedModuleName(kit: Kit, draft: ModuleDraft): string {
  const sort = templateFor(draft)?.name ?? 'Module';
  return unusedName(kit.modules, `${sort}, ${draft.widthHp.trim() || '?'} HP`);
}

export const moduleName = (kit: Kit, draft: ModuleDraft): string =>
  draft.name ?? suggestedModuleName(kit, draft);

const MOST_HP = 1000;
const MOST_U = 48;
const MOST_DEPTH_MM = 2000;
const MOST_MA = 100_000;
const { most: LONGEST_COLOUR } = OPEN_LIMITS.name;

const isWidth = (hp: number): boolean => hp > 0 && hp <= MOST_HP && (hp * 2) % 1 === 0;
const isHeight = (units: number): boolean => units > 0 && units <= MOST_U;

/** Headers are measured where they are seen: from the left edge of the rear. */
export const REAR_EDGES: Edges = { across: 'rear-left', up: 'bottom' };

/** What is read where nothing sensible is typed. */
const USUAL = { widthHp: 5, heightU: 3 } as const;

/** The panel as far as it is typed. */
export function drawnSize({ widthHp, heightU }: ModuleDraft): {
  readonly widthHp: number;
  readonly heightU: number;
} {
  const width = parseHp(widthHp);
  const height = parseHp(heightU.replace(/\s*u\s*$/i, ''));
  return {
    widthHp: width !== null && isWidth(width) ? width : USUAL.widthHp,
    heightU: height !== null && isHeight(height) ? height : USUAL.heightU,
  };
}

type Read = Reading<ModuleField>;

function readDraws(read: Read, kit: Kit, draft: ModuleDraft): ModuleKind['draws'] {
  const draws: Record<string, number | null> = {};
  if (draft.template === 'blank') return draws;
  for (const { id } of kit.voltages) {
    const { is, ma } = draft.draws[id] ?? { is: 'none', ma: '' };
    if (is === 'none') continue;
    const words = `A current is from 0 to ${MOST_MA} mA; where it is not known, choose that`;
    const known =
      is === 'known' && read.number(`draws ${id}`, ma, words, (value) => value >= 0 && value <= MOST_MA);
    draws[id] = typeof known === 'number' ? known : null;
  }
  return draws;
}

/** The headers that a template makes of what is chosen; what is missing is noted as a problem. */
function readTemplate(
  read: Read,
  kit: Kit,
  draft: ModuleDraft,
  template: ModuleTemplate,
  size: { readonly widthHp: number; readonly heightU: number },
): readonly Header[] {
  const chosen: Partial<Record<TemplateBus, string>> = {};
  for (const on of busesOfTemplate(template)) {
    const bus = draft[on];
    if (bus === NEW_BUS) read.wrong(on, 'Finish the new bus, or choose another');
    else if (bus) chosen[on] = bus;
    else if (!template.optional.includes(on)) read.wrong(on, 'Choose a bus, or make a new one');
  }
  const choice: TemplateChoice = {
    ...size,
    ...chosen,
    ...(draft.pin1 && { pin1: draft.pin1 }),
    ...(draft.keyed && { keyed: true }),
  };
  return templateHeaders(kit, template, choice);
}

function readHeaders(
  read: Read,
  kit: Kit,
  draft: ModuleDraft,
  size: { readonly widthHp: number; readonly heightU: number },
  before: readonly Header[],
): readonly Header[] {
  const template = templateFor(draft);
  // A header that a template makes as it was keeps what the form does not know of it, by its id, in the edit.
  if (template) return readTemplate(read, kit, draft, template, size);
  const headers = draft.headers.map((header) =>
    readHeader(read, kit, header, draft.headers, draft.edges, sizeOf(size)),
  );
  const isSame = headers.length === before.length && headers.every((header, i) => isEqual(header, before[i]));
  return isSame ? before : headers;
}

const isEqual = (a: object, b: object | undefined): boolean => {
  const [x, y] = [a, b ?? {}].map((header) => new Map<string, unknown>(Object.entries(header)));
  return x?.size === y?.size && [...(x ?? [])].every(([key, value]) => y?.get(key) === value);
};

/** The headers as they can be taken hold of: those of the form, or those that its template makes, with its problems left aside. */
export function headersShown(kit: Kit, draft: ModuleDraft): readonly HeaderDraft[] {
  const template = templateFor(draft);
  if (!template) return draft.headers;
  const size = drawnSize(draft);
  const made = readTemplate(startReading<ModuleField>(), kit, draft, template, size);
  return headerDraftsOf(made, draft.edges, sizeOf(size)).map(({ was: _, ...header }) => header);
}

/** The draft with headers of its own, whatever template they came from. */
export const withHeaders = (draft: ModuleDraft, headers: readonly HeaderDraft[]): ModuleDraft => ({
  ...draft,
  template: 'kept',
  headers,
});

/** The same headers in the same places, measured from other edges. */
export function withEdges(draft: ModuleDraft, edges: Edges): ModuleDraft {
  const size = sizeOf(drawnSize(draft));
  const headers = draft.headers.map((header) => measuredAnew(header, draft.edges, edges, size));
  return { ...draft, edges, headers };
}

/** @param before - the kind that is changed; what the form does not show stays as it is */
export function readModule(kit: Kit, draft: ModuleDraft, before?: ModuleKind): ReadModule {
  const read = startReading<ModuleField>();
  const name = readName(read, moduleName(kit, draft), kit.modules, before?.name);
  const widthWords = `A width is from 0.5 to ${MOST_HP} HP, in halves`;
  const widthHp = read.number('widthHp', draft.widthHp, widthWords, isWidth) ?? USUAL.widthHp;
  const heightWords = `A height is above 0 and at most ${MOST_U} U; empty for ${USUAL.heightU}`;
  const heightU = read.maybe('heightU', draft.heightU, heightWords, isHeight);
  const depthWords = `A depth is from 0 to ${MOST_DEPTH_MM} mm; empty where it is not known`;
  const depthMm = read.maybe('depth', draft.depth, depthWords, (mm) => mm >= 0 && mm <= MOST_DEPTH_MM);
  const draws = readDraws(read, kit, draft);
  const owned = read.maybe('owned', draft.owned, OWNED_WORDS, isCount);
  const price = read.maybe('price', draft.price, PRICE_WORDS, isPrice);
  const color = keptText(before?.color, draft.color);
  const notes = keptText(before?.notes, draft.notes);
  if (draft.color.length > LONGEST_COLOUR) read.wrong('color', `At most ${LONGEST_COLOUR} characters`);
  if (draft.notes.length > OPEN_LIMITS.note.most)
    read.wrong('notes', `At most ${OPEN_LIMITS.note.most} characters`);
  const size = { widthHp, heightU: heightU ?? USUAL.heightU };
  const headers = readHeaders(read, kit, draft, size, before?.headers ?? []);

  const { problems } = read;
  if (hasProblems(problems)) return { kind: null, problems };
  const {
    heightU: _1,
    depthMm: _2,
    depthIs: _3,
    owned: _4,
    price: _5,
    known: _6,
    color: _7,
    notes: _8,
    ...rest
  } = before ?? {};
  const kind: ModuleKind = {
    ...rest,
    id: before?.id ?? freshKindId(kit.modules, name),
    name,
    widthHp,
    ...(heightU !== undefined && { heightU }),
    ...(depthMm !== undefined && { depthMm }),
    ...(draft.depthIs && { depthIs: draft.depthIs }),
    draws,
    headers,
    ...(owned !== undefined && { owned }),
    ...(price !== undefined && { price }),
    ...(color !== undefined && { color }),
    ...(notes !== undefined && { notes }),
    ...(draft.known && { known: draft.known }),
  };
  return { kind, problems };
}
