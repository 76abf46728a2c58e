/**
 * The layout document, version 1: one JSON file that holds a kit (which kinds of module, bus and ribbon
 * exist) and one or more takes (arrangements of that kit).
 *
 * Units: lengths mm, widths on the mounting rail HP, currents mA, voltages V, contact resistances milliohm.
 * Positions are as seen from the front: x grows to the right, y upward from the bottom edge of the panel,
 * z backward from the panel. Indices count from 0. Layouts are immutable values.
 */
export interface Layout {
  readonly format: 'ribbonwright';
  readonly version: 1;
  readonly id?: string;
  /** Id of the layout that this one was copied from. */
  readonly parent?: string;
  readonly title: string;
  readonly notes?: string;
  readonly kit: Kit;
  readonly takes: readonly Take[];
}

export interface Kit {
  readonly voltages: readonly Voltage[];
  readonly buses: readonly Bus[];
  readonly modules: readonly ModuleKind[];
  readonly ribbons: readonly RibbonKind[];
  readonly limits?: Partial<Limits>;
}

export interface Voltage {
  readonly id: string;
  readonly volts: number;
  /** Loss allowed at a module, mV; default 250. */
  readonly dropMv?: number;
}

/** A link family, or a power connector pattern: what lies on each pin. */
export interface Bus {
  readonly id: string;
  readonly name: string;
  /** Pin 1 first; even length; each a voltage id, 'GND', '' (not connected) or a signal name. */
  readonly pinout: readonly string[];
  /** Absent: no limit. */
  readonly membersPerHost?: number;
}

export interface ModuleKind {
  readonly id: string;
  readonly name: string;
  readonly widthHp: number;
  readonly heightU?: number;
  /** Behind the panel; absent: unknown. */
  readonly depthMm?: number;
  readonly depthIs?: 'with-plugs' | 'without-plugs';
  /** Voltage id → mA; null: draws, but unknown how much; absent: draws none. */
  readonly draws: Readonly<Record<string, number | null>>;
  readonly headers: readonly Header[];
  readonly owned?: number;
  readonly price?: number;
  readonly color?: string;
  readonly notes?: string;
  readonly known?: 'measured' | 'published' | 'guessed';
}

export type Axis = 'vertical' | 'horizontal';
export type PinEnd = 'down' | 'up' | 'left' | 'right';
export type Role = 'host' | 'member';

export interface Header {
  readonly id: string;
  readonly name?: string;
  readonly bus: string;
  readonly role: Role;
  /** Centre of the pin field. */
  readonly xMm: number;
  readonly yMm: number;
  /** Where the mated ribbon lies; default depthMm, or 30 where that is unknown. */
  readonly zMm?: number;
  /** Long side of the pin field. */
  readonly axis?: Axis;
  /** End with pin 1, seen from the front; absent: unknown. */
  readonly pin1?: PinEnd;
  /** Boxed with a notch. */
  readonly keyed?: boolean;
  /** Headers of one module on one bus that both say so are joined inside. */
  readonly passes?: boolean;
  /** Its supply pins are not joined to the module's own supply. */
  readonly isolated?: boolean;
  /** Members that it counts for against the host's limit; default 1. */
  readonly counts?: number;
}

export interface RibbonKind {
  readonly id: string;
  readonly name: string;
  /** Names what each conductor carries: conductor k lies on contact k everywhere. */
  readonly bus: string;
  /** Flat: pressed on across neighbours, straight, in line. Loose: hangs freely, any route. */
  readonly lay: 'flat' | 'loose';
  /** Flat only: may arch between connectors. */
  readonly bends?: boolean;
  readonly awg?: number;
  /** In the order seen from the rear with the stripe down, left to right. */
  readonly connectors: readonly Connector[];
  readonly owned?: number;
  readonly price?: number;
}

export type Face = 'panel' | 'rear';
export type Key = 'none' | 'with-stripe' | 'against-stripe';

export interface Connector {
  /** Strictly rising from 0. */
  readonly atMm: number;
  readonly type?: 'socket' | 'plug';
  /** Contacts, on conductors 1…ways; default all. */
  readonly ways?: number;
  /** Where it opens to when the ribbon lies stripe down; default panel for a socket, rear for a plug. */
  readonly face?: Face;
  readonly key?: Key;
}

export interface Take {
  readonly id: string;
  readonly name: string;
  /** Top to bottom. */
  readonly rows: readonly Row[];
  readonly supplies: readonly Supply[];
  readonly modules: readonly Module[];
  readonly ribbons: readonly Ribbon[];
  /** Findings put away by the user, by key; damage cannot be. */
  readonly accepted?: readonly Acceptance[];
  readonly built?: Built;
}

/** What was done and found at the bench. Nothing in it has to fit the take any more: fingerprints tell what still holds. */
export interface Built {
  /** What newer programs note besides is kept. */
  readonly [key: string]: unknown;
  /** The take stands so in the case; of several that say so the first counts. */
  readonly inCase?: boolean;
  readonly harnessTests?: readonly HarnessTest[];
  readonly doneSteps?: readonly DoneStep[];
  readonly readings?: readonly MeterReading[];
}

/** A test that a harness has passed. */
export interface HarnessTest {
  /** Ids of all its ribbons, sorted. */
  readonly ribbons: readonly string[];
  /** 'stripe', 'continuity', 'no-short'; others are kept. */
  readonly test: string;
  /** Fingerprint of the harness as it was tested. */
  readonly of: string;
  /** Who, as typed. */
  readonly by?: string;
  /** When, as the program in front of the core tells it. */
  readonly at?: string;
}

/** A step of the work that was ticked. */
export interface DoneStep {
  /** Stable: what the step is about. */
  readonly step: string;
  readonly by?: string;
  readonly at?: string;
}

/** What a meter showed on one line. */
export interface MeterReading {
  readonly on: 'module' | 'supply';
  readonly id: string;
  /** Voltage id. */
  readonly line: string;
  /** Drawn, mA. */
  readonly ma?: number;
  /** Against ground beside it, V. */
  readonly volts?: number;
  readonly by?: string;
  readonly at?: string;
}

export interface Acceptance {
  readonly key: string;
  readonly why?: string;
  /** What was measured when it was put away; the finding returns when this changes. Absent: for good. */
  readonly facts?: string;
}

export interface Row {
  readonly id: string;
  readonly name?: string;
  readonly case?: string;
  readonly widthHp: number;
  readonly heightU: number;
  readonly depthMm: number;
  /** To the next row below. */
  readonly gapMm?: number;
}

export interface Supply {
  readonly id: string;
  readonly name: string;
  /** mA by voltage; absent or 0: does not give it. */
  readonly ratings: Readonly<Record<string, number>>;
  readonly boards: readonly Board[];
}

export interface Board {
  readonly id: string;
  readonly name: string;
  readonly row: string;
  readonly xMm: number;
  readonly yMm?: number;
  /** Covers xMm … xMm + widthMm. */
  readonly widthMm?: number;
  /** How far it stands up from the case floor. */
  readonly riseMm?: number;
  /** One wire per line from the supply; absent: 0 Ω. */
  readonly lead?: { readonly lengthMm: number; readonly awg: number };
  readonly headers: readonly BoardHeader[];
  readonly limits?: Readonly<Record<string, number>>;
}

export interface BoardHeader {
  readonly id: string;
  readonly bus: string;
  /** From the board's xMm and yMm. */
  readonly dxMm?: number;
  readonly dyMm?: number;
  readonly axis?: Axis;
  readonly pin1?: PinEnd;
  readonly keyed?: boolean;
}

export interface Module {
  readonly id: string;
  readonly kind: string;
  readonly row: string;
  readonly atHp: number;
  readonly label?: string;
  readonly pinned?: boolean;
}

export type StripeEdge = 'down' | 'up';

export interface Ribbon {
  readonly id: string;
  readonly kind: string;
  readonly label?: string;
  readonly locked?: boolean;
  /** At connector 0; flat only. */
  readonly stripe?: StripeEdge;
  /** Number of half-twists between connectors i and i + 1, by i; flat only. */
  readonly twists?: readonly number[];
  /** Where ribbons cross, it is drawn over those with a smaller number; default 0. It means nothing else. */
  readonly over?: number;
  readonly seats: readonly Seat[];
}

export interface Seat {
  readonly connector: number;
  readonly on: SeatedOn;
}

/** A plug is seated in another ribbon's socket: the seat stands on the ribbon that owns the plug. */
export type SeatedOn =
  | { readonly module: string; readonly header: string }
  | { readonly board: string; readonly header: string }
  | { readonly ribbon: string; readonly connector: number };

/** Figures that the checks hold the drawing to; every one may be changed in a kit. */
export interface Limits {
  readonly seatToleranceMm: number;
  /** Height difference that a bending ribbon takes. */
  readonly skewMm: number;
  readonly bendRadiusMm: number;
  readonly connectorBodyMm: number;
  readonly ribbonMm: number;
  /** A plug on a depth that was given without plugs. */
  readonly plugMm: number;
  readonly leadAllowanceMm: number;
  readonly headroom: number;
  readonly contactMa: number;
  readonly contactMilliohm: number;
  readonly ambientC: number;
  readonly groundShiftMv: number;
}
