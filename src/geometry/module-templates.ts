import { GND } from '../layout/defaults.ts';
import type { Bus, Header, Kit, ModuleKind, PinEnd, Role } from '../layout/layout.ts';
import { PIN_MM, ribbonWidthMm, socketBodyMm } from './connector.ts';
import { hpToMm, panelHeightMm } from './rack.ts';

/*
 * Headers by template: the usual sorts of module, so that a kind is made of its width and a few choices. A template
 * says which headers there are; where they lie follows from the panel and from the kit. One bus has one height all
 * over a kit, so that flat ribbons lie in line, and a lone header stands on the panel's centre line: the header of a
 * wide module is then where the middle one of an odd number of narrow ones would have it.
 */

/** The buses that a template may ask for: the one it is named by, that of the next level, and power. */
export type TemplateBus = 'bus' | 'nextBus' | 'powerBus';

interface TemplateHeader {
  readonly on: TemplateBus;
  readonly role: Role;
  /** Absent: named after its bus; power headers are called "power". */
  readonly id?: string;
  readonly passes?: true;
}

/** A usual sort of module. */
export interface ModuleTemplate {
  readonly id: 'voice' | 'collector' | 'main' | 'plain' | 'expander' | 'blank';
  readonly name: string;
  /** What it has, in half a line. */
  readonly means: string;
  readonly headers: readonly TemplateHeader[];
  /** Buses that may be left out, and their headers with them. */
  readonly optional: readonly TemplateBus[];
}

const member = (on: TemplateBus): TemplateHeader => ({ on, role: 'member' });
const host = (on: TemplateBus): TemplateHeader => ({ on, role: 'host' });

export const MODULE_TEMPLATES: readonly ModuleTemplate[] = [
  {
    id: 'plain',
    name: 'Plain module',
    means: 'a power header only',
    headers: [member('powerBus')],
    optional: [],
  },
  {
    id: 'voice',
    name: 'Voice',
    means: 'joins a collector',
    headers: [member('bus'), member('powerBus')],
    optional: ['powerBus'],
  },
  {
    id: 'collector',
    name: 'Collector',
    means: 'hosts voices and joins a main unit',
    headers: [host('bus'), member('nextBus'), member('powerBus')],
    optional: ['nextBus', 'powerBus'],
  },
  {
    id: 'main',
    name: 'Main unit',
    means: 'hosts collectors, with power of its own',
    headers: [host('bus'), member('powerBus')],
    optional: [],
  },
  {
    id: 'expander',
    name: 'Expander',
    means: 'two headers joined inside, for the way on',
    headers: [
      { on: 'bus', role: 'member', id: 'in', passes: true },
      { on: 'bus', role: 'member', id: 'out', passes: true },
    ],
    optional: [],
  },
  { id: 'blank', name: 'Blank panel', means: 'no headers, draws nothing', headers: [], optional: [] },
];

/** What is chosen of a module made by a template. */
export interface TemplateChoice extends Readonly<Partial<Record<TemplateBus, string>>> {
  readonly widthHp: number;
  readonly heightU?: number;
  /** Absent: unknown, of every header. */
  readonly pin1?: PinEnd;
  readonly keyed?: boolean;
}

type Stock = Pick<Kit, 'voltages' | 'buses' | 'modules'>;

/** The buses that a template asks for, each once. */
export const busesOfTemplate = ({ headers }: ModuleTemplate): readonly TemplateBus[] => [
  ...new Set(headers.map(({ on }) => on)),
];

/** A bus of supply lines and no signal that anything else could be on, or one that is named after power. */
export function isPowerBus({ voltages }: Pick<Kit, 'voltages'>, { id, pinout }: Bus): boolean {
  const supply = pinout.filter((line) => line === GND || voltages.some((voltage) => voltage.id === line));
  const carriesVoltage = supply.some((line) => line !== GND);
  return carriesVoltage && (/^power\b/i.test(id) || supply.length === pinout.filter(Boolean).length);
}

/** Heights of link headers on a panel of 3 U, mm: where a new bus of a kit goes first, and so on. */
const LEVELS_MM = [38, 74, 100, 20] as const;
/** A power header's height above link headers on 3 U, clear of a second level of ribbons, mm. */
const POWER_MM = 91;
const USUAL_HEIGHT_MM = panelHeightMm(3);

/** What rails and the edge of the circuit board take at the top and at the bottom, mm. */
const EDGE_MM = 11;

/** Room that a header and the connector on it take along the rail, mm. */
const BODY_MM = 10;

const tidyMm = (mm: number): number => Math.round(mm * 1000) / 1000;

/** A stretch of a panel that something covers, from its middle, mm. */
interface Cover {
  readonly yMm: number;
  readonly halfMm: number;
}

const meet = (a: Cover, b: Cover): boolean => Math.abs(a.yMm - b.yMm) < a.halfMm + b.halfMm - 1e-9;

/** The place nearest to the wanted one that is clear of all others; the wanted one where there is none. */
function clearMm(wanted: Cover, taken: readonly Cover[], heightMm: number): number {
  const edge = EDGE_MM + wanted.halfMm;
  const beside = taken.flatMap(({ yMm, halfMm }) =>
    [-1, 1].map((way) => yMm + way * (halfMm + wanted.halfMm)),
  );
  const clear = [wanted.yMm, ...beside].filter(
    (yMm) =>
      yMm >= edge &&
      yMm <= heightMm - edge &&
      !taken.some((other) => meet(other, { yMm, halfMm: wanted.halfMm })),
  );
  const byNearness = clear.sort((a, b) => Math.abs(a - wanted.yMm) - Math.abs(b - wanted.yMm));
  return byNearness[0] ?? wanted.yMm;
}

/** Where most of a kit's modules of that height have the headers of a bus, mm; undefined where none has one. */
function usualMm({ modules }: Stock, bus: string, heightU: number): number | undefined {
  const counts = new Map<number, number>();
  for (const kind of modules) {
    if ((kind.heightU ?? 3) !== heightU) continue;
    for (const { yMm } of kind.headers.filter((header) => header.bus === bus)) {
      counts.set(yMm, (counts.get(yMm) ?? 0) + 1);
    }
  }
  const [most] = [...counts].sort(([, a], [, b]) => b - a);
  return most?.[0];
}

/** Mounts headers on one panel, from the lowest level up, and remembers what they cover. */
class Panel {
  readonly #stock: Stock;
  readonly #heightU: number;
  readonly #heightMm: number;
  readonly #covers: Cover[] = [];

  constructor(stock: Stock, heightU: number) {
    this.#stock = stock;
    this.#heightU = heightU;
    this.#heightMm = panelHeightMm(heightU);
  }

  /** Too low for headers one above the other. */
  get isLow(): boolean {
    return this.#heightMm < 2 * EDGE_MM + 2 * BODY_MM + 2 * PIN_MM * 8;
  }

  /** The height for the headers of a bus on this panel, mm. */
  levelOf(busId: string): number {
    if (this.isLow) return tidyMm(this.#heightMm / 2);
    const bus = this.#stock.buses.find(({ id }) => id === busId);
    const pins = bus?.pinout.length ?? 10;
    const halfMm = socketBodyMm(pins).longMm / 2;
    const yMm =
      bus && isPowerBus(this.#stock, bus) ? this.#powerLevel(halfMm) : this.#linkLevel(busId, halfMm);
    this.#covers.push({ yMm, halfMm });
    return tidyMm(yMm);
  }

  #scaled(mm: number): number {
    return (mm * this.#heightMm) / USUAL_HEIGHT_MM;
  }

  /** The link buses of the kit that have a height already, as their ribbons pass over any panel. */
  #passing(except?: string): Cover[] {
    return this.#stock.buses.flatMap((bus) => {
      if (bus.id === except || isPowerBus(this.#stock, bus)) return [];
      const yMm = usualMm(this.#stock, bus.id, this.#heightU);
      return yMm === undefined ? [] : [{ yMm, halfMm: ribbonWidthMm(bus.pinout.length) / 2 }];
    });
  }

  #linkLevel(bus: string, halfMm: number): number {
    const usual = usualMm(this.#stock, bus, this.#heightU);
    if (usual !== undefined) return usual;
    const taken = [...this.#covers, ...this.#passing(bus)];
    const levels = LEVELS_MM.map((mm) => this.#scaled(mm));
    const free = levels.find((yMm) => !taken.some((cover) => meet(cover, { yMm, halfMm })));
    return free ?? clearMm({ yMm: levels[0] as number, halfMm }, taken, this.#heightMm);
  }

  #powerLevel(halfMm: number): number {
    if (this.#covers.length === 0) return this.#heightMm / 2;
    const wanted = { yMm: this.#scaled(POWER_MM), halfMm };
    return clearMm(wanted, [...this.#covers, ...this.#passing()], this.#heightMm);
  }
}

/**
 * Places for some headers of one level: side by side about the centre line, or one above the other on a panel that is
 * too narrow for that and high enough.
 */
function placesOnLevel(
  count: number,
  yMm: number,
  widthMm: number,
  { isLow }: Panel,
  longMm: number,
): readonly Pick<Header, 'xMm' | 'yMm'>[] {
  const middle = widthMm / 2;
  const fits = widthMm >= count * BODY_MM;
  return Array.from({ length: count }, (_, i) =>
    fits || isLow
      ? { xMm: tidyMm(middle + ((i - (count - 1) / 2) * widthMm) / count), yMm }
      : { xMm: tidyMm(middle), yMm: tidyMm(yMm + i * longMm) },
  );
}

function freshId(wanted: string, taken: ReadonlySet<string>): string {
  let id = wanted;
  for (let number = 2; taken.has(id); number++) id = `${wanted}-${number}`;
  return id;
}

/** A header of a template with the bus that was chosen for it. */
interface Chosen extends TemplateHeader {
  readonly bus: string;
}

function chosenHeaders({ headers }: ModuleTemplate, choice: TemplateChoice): readonly Chosen[] {
  return headers.flatMap((header) => {
    const bus = choice[header.on];
    return bus ? [{ ...header, bus }] : [];
  });
}

/**
 * The headers of a module made by a template; those of buses that were not chosen are left out. Headers that a low
 * panel has no room for one above the other stand side by side.
 */
export function templateHeaders(stock: Stock, template: ModuleTemplate, choice: TemplateChoice): Header[] {
  const { widthHp, heightU = 3, pin1, keyed } = choice;
  const panel = new Panel(stock, heightU);
  const widthMm = hpToMm(widthHp);
  const chosen = chosenHeaders(template, choice);
  const buses = [...new Set(chosen.map(({ bus }) => bus))];
  const levels = new Map(buses.map((bus) => [bus, panel.levelOf(bus)]));
  const ids = new Set<string>();
  return chosen.map(({ bus, role, on, id, passes }) => {
    const height = levels.get(bus) as number;
    const level = chosen.filter((other) => levels.get(other.bus) === height);
    const at = level.findIndex((other) => other.bus === bus && other.on === on && other.id === id);
    const pins = stock.buses.find((known) => known.id === bus)?.pinout.length ?? 0;
    const places = placesOnLevel(level.length, height, widthMm, panel, socketBodyMm(pins).longMm);
    const own = freshId(id ?? (on === 'powerBus' ? 'power' : bus), ids);
    ids.add(own);
    return {
      id: own,
      bus,
      role,
      ...(places[at] as Pick<Header, 'xMm' | 'yMm'>),
      ...(pin1 && { pin1 }),
      ...(keyed && { keyed }),
      ...(passes && { passes }),
    };
  });
}

const sameHeaders = (a: readonly Header[], b: readonly Header[]): boolean =>
  a.length === b.length &&
  a.every((header, i) => {
    const other = b[i] as Header;
    const keys = new Set([...Object.keys(header), ...Object.keys(other)]) as Set<keyof Header>;
    return [...keys].every((key) =>
      key === 'xMm' || key === 'yMm' ? Math.abs(header[key] - other[key]) < 0.01 : header[key] === other[key],
    );
  });

/**
 * The template and choice that give a kind exactly the headers that it has; undefined where none does. Such a kind
 * can be made wider, or higher, without its headers losing their places. A template that is used as a whole comes
 * before one that is used in part.
 */
export function templateOf(
  stock: Stock,
  kind: ModuleKind,
): { readonly template: ModuleTemplate; readonly choice: TemplateChoice } | undefined {
  const { widthHp, heightU, headers } = kind;
  const [first] = headers;
  const isWhole = (template: ModuleTemplate): number => Number(template.headers.length === headers.length);
  for (const template of [...MODULE_TEMPLATES].sort((a, b) => isWhole(b) - isWhole(a))) {
    const choice: TemplateChoice = {
      widthHp,
      ...(heightU !== undefined && { heightU }),
      ...(first?.pin1 && { pin1: first.pin1 }),
      ...(first?.keyed && { keyed: true }),
      ...busesFrom(template, headers),
    };
    if (sameHeaders(templateHeaders(stock, template, choice), headers)) return { template, choice };
  }
  return undefined;
}

/** The buses that a template would have been given, read off headers in its order; optional ones may lack. */
function busesFrom(
  template: ModuleTemplate,
  headers: readonly Header[],
): Partial<Record<TemplateBus, string>> {
  const buses: Partial<Record<TemplateBus, string>> = {};
  const left = [...headers];
  for (const { on, role } of template.headers) {
    const at = left.findIndex(
      (header) => header.role === role && (on === 'powerBus') === header.id.startsWith('power'),
    );
    const [found] = at < 0 ? [] : left.splice(at, 1);
    if (found) buses[on] = found.bus;
  }
  return buses;
}

/** Places of so many connectors at one distance, mm: the very decimals, without the noise of adding floats. */
export const evenPlaces = (count: number, pitchMm: number): number[] =>
  Array.from({ length: count }, (_, i) => Math.round(i * pitchMm * 1e6) / 1e6);
