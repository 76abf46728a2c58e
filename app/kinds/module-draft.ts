import {
  busesOfTemplate,
  freshKindId,
  type Header,
  isPowerBus,
  type Kit,
  MODULE_TEMPLATES,
  type ModuleKind,
  type ModuleTemplate,
  type TemplateBus,
  type TemplateChoice,
  templateHeaders,
  templateOf,
} from '../../src/index.ts';
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
  readonly heightU: string;
  /** kept: the headers that it has, which no template makes. */
  readonly template: ModuleTemplate['id'] | 'kept';
  readonly pin1: '' | 'down' | 'up';
  readonly keyed: boolean;
  readonly depth: string;
  readonly depthIs: NonNullable<ModuleKind['depthIs']>;
  readonly draws: Readonly<Record<string, DrawDraft>>;
  readonly owned: string;
  readonly price: string;
  readonly known: '' | NonNullable<ModuleKind['known']>;
}

type ModuleField = keyof Omit<ModuleDraft, 'draws'> | `draws ${string}`;

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
    heightU: '3',
    template: 'plain',
    bus: bus?.id ?? '',
    nextBus: nextBus?.id ?? '',
    powerBus: (power.find(({ pinout }) => pinout.length === 10) ?? power[0])?.id ?? '',
    pin1: '',
    keyed: false,
    depth: '',
    depthIs: 'with-plugs',
    draws: Object.fromEntries(draws),
    owned: '',
    price: '',
    known: '',
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
    heightU: typed(kind.heightU ?? 3),
    template: made?.template.id ?? 'kept',
    pin1: pin1 === 'down' || pin1 === 'up' ? pin1 : '',
    keyed,
    depth: typed(kind.depthMm),
    depthIs: kind.depthIs ?? 'with-plugs',
    draws: Object.fromEntries(kit.voltages.map(({ id }) => [id, drawDraft(kind.draws[id])])),
    owned: typed(kind.owned),
    price: typed(kind.price),
    known: kind.known ?? '',
  };
}

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

function readHeaders(
  read: Read,
  kit: Kit,
  draft: ModuleDraft,
  size: { readonly widthHp: number; readonly heightU: number },
  before: readonly Header[],
): readonly Header[] {
  const template = templateFor(draft);
  if (!template) return before;
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

/** @param before - the kind that is changed; what the form does not show stays as it is */
export function readModule(kit: Kit, draft: ModuleDraft, before?: ModuleKind): ReadModule {
  const read = startReading<ModuleField>();
  const name = readName(read, moduleName(kit, draft), kit.modules, before?.name);
  const widthWords = `A width is from 0.5 to ${MOST_HP} HP, in halves`;
  const isWidth = (hp: number): boolean => hp > 0 && hp <= MOST_HP && (hp * 2) % 1 === 0;
  const widthHp = read.number('widthHp', draft.widthHp, widthWords, isWidth);
  const heightWords = `A height is above 0 and at most ${MOST_U} U`;
  const heightU = read.number('heightU', draft.heightU, heightWords, (u) => u > 0 && u <= MOST_U);
  const depthWords = `A depth is from 0 to ${MOST_DEPTH_MM} mm; empty where it is not known`;
  const depthMm = read.maybe('depth', draft.depth, depthWords, (mm) => mm >= 0 && mm <= MOST_DEPTH_MM);
  const draws = readDraws(read, kit, draft);
  const owned = read.maybe('owned', draft.owned, OWNED_WORDS, isCount);
  const price = read.maybe('price', draft.price, PRICE_WORDS, isPrice);
  const size = { widthHp: widthHp ?? 5, heightU: heightU ?? 3 };
  const headers = readHeaders(read, kit, draft, size, before?.headers ?? []);

  const { problems } = read;
  if (hasProblems(problems)) return { kind: null, problems };
  const { depthMm: _, owned: __, price: ___, known: ____, ...rest } = before ?? {};
  const kind: ModuleKind = {
    ...rest,
    id: before?.id ?? freshKindId(kit.modules, name),
    name,
    widthHp: size.widthHp,
    ...((size.heightU !== 3 || before?.heightU !== undefined) && { heightU: size.heightU }),
    ...(depthMm !== undefined && { depthMm }),
    ...((draft.depthIs !== 'with-plugs' || before?.depthIs) && { depthIs: draft.depthIs }),
    draws,
    headers,
    ...(owned !== undefined && { owned }),
    ...(price !== undefined && { price }),
    ...(draft.known && { known: draft.known }),
  };
  return { kind, problems };
}
