import type { Connector, Face, Header, Kit, Limits, ModuleKind, Row, Voltage } from './layout.ts';

/** The ground line that every pinout may name; implied, never listed among the voltages. */
export const GND = 'GND';

/** What a limit means to its user, and where its default comes from. */
export interface LimitFact {
  readonly value: number;
  readonly unit: string;
  readonly means: string;
  readonly source: string;
}

const PRACTICE = 'common practice, no source';

export const LIMIT_FACTS: Readonly<Record<keyof Limits, LimitFact>> = {
  seatToleranceMm: { value: 1, unit: 'mm', means: 'play that a seated connector takes', source: PRACTICE },
  skewMm: { value: 3, unit: 'mm', means: 'height difference that a bending ribbon takes', source: PRACTICE },
  bendRadiusMm: {
    value: 3,
    unit: 'mm',
    means: 'smallest bend of a ribbon',
    source: 'NASA-STD-8739.4 [7.3.21], three insulated-wire diameters, short-term',
  },
  connectorBodyMm: { value: 6, unit: 'mm', means: 'width of a connector along the ribbon', source: PRACTICE },
  ribbonMm: { value: 1, unit: 'mm', means: 'thickness of a ribbon', source: PRACTICE },
  plugMm: { value: 15, unit: 'mm', means: 'a seated plug on a depth given without', source: PRACTICE },
  leadAllowanceMm: {
    value: 40,
    unit: 'mm',
    means: 'length that a lead needs beyond its way',
    source: PRACTICE,
  },
  headroom: { value: 0.2, unit: '', means: 'share of a rating kept free', source: PRACTICE },
  contactMa: { value: 1000, unit: 'mA', means: 'current that a contact carries', source: PRACTICE },
  contactMilliohm: { value: 20, unit: 'mΩ', means: 'resistance of a mated contact', source: PRACTICE },
  ambientC: { value: 25, unit: '°C', means: 'temperature in the case', source: PRACTICE },
  groundShiftMv: { value: 5, unit: 'mV', means: 'ground difference worth knowing', source: PRACTICE },
};

const LIMIT_NAMES = Object.keys(LIMIT_FACTS) as (keyof Limits)[];

/** The kit's limits with defaults filled in. */
export function limitsOf(kit: Kit): Limits {
  const own = kit.limits ?? {};
  return Object.fromEntries(
    LIMIT_NAMES.map((name) => [name, own[name] ?? LIMIT_FACTS[name].value]),
  ) as unknown as Limits;
}

export const dropMvOf = (voltage: Voltage): number => voltage.dropMv ?? 250;

export const heightUOf = (kind: ModuleKind): number => kind.heightU ?? 3;

export const gapMmOf = (row: Row): number => row.gapMm ?? 0;

/** Where the mated ribbon lies behind the panel, mm. */
export const zMmOf = (kind: Pick<ModuleKind, 'depthMm'>, header: Pick<Header, 'zMm'>): number =>
  header.zMm ?? kind.depthMm ?? 30;

export const typeOf = (connector: Connector): 'socket' | 'plug' => connector.type ?? 'socket';

export const faceOf = (connector: Connector): Face =>
  connector.face ?? (typeOf(connector) === 'plug' ? 'rear' : 'panel');

/** A board's height in its row where none is given, mm. */
export const BOARD_Y_MM = 60;
