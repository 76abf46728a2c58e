import type {
  Board,
  Bus,
  Connector,
  Header,
  Kit,
  Layout,
  Limits,
  ModuleKind,
  Ribbon,
  RibbonKind,
  Row,
  Seat,
  Supply,
} from '../layout/layout.ts';

/**
 * The small world in which every check shows a drawing just inside its rule and one just outside: voices of
 * 5 HP that a ribbon links to a collector, a plain module with a power header of its own, one row, one board.
 */
export const SHORE: Bus = {
  id: 'shore',
  name: 'Shore',
  pinout: ['-12', '-12', 'GND', 'GND', 'GND', 'GND', '+12', '+12', 'mix', 'strike'],
  membersPerHost: 6,
};

const POWER: Bus = {
  id: 'power',
  name: 'Power',
  pinout: ['-12', '-12', 'GND', 'GND', 'GND', 'GND', 'GND', 'GND', '+12', '+12'],
};

export const POWER16: Bus = {
  id: 'power16',
  name: 'Power, 16-way',
  pinout: [...POWER.pinout, '+5', '+5', 'pitch', 'pitch', 'gate', 'gate'],
};

export const shoreHeader = (more: Partial<Header> = {}): Header => ({
  id: 'shore',
  bus: 'shore',
  role: 'member',
  xMm: 12.7,
  yMm: 38,
  pin1: 'down',
  ...more,
});

export const powerHeader = (more: Partial<Header> = {}): Header => ({
  id: 'power',
  bus: 'power',
  role: 'member',
  xMm: 20,
  yMm: 90,
  pin1: 'down',
  ...more,
});

export const kind = (id: string, more: Partial<ModuleKind> = {}): ModuleKind => ({
  id,
  name: id,
  widthHp: 5,
  depthMm: 30,
  draws: {},
  headers: [],
  ...more,
});

const VOICE = kind('voice', { draws: { '+12': 40 }, headers: [shoreHeader()] });
const COLLECTOR = kind('collector', { headers: [shoreHeader({ role: 'host' })] });
const PLAIN = kind('plain', { widthHp: 8, draws: { '+12': 60 }, headers: [powerHeader()] });

/** A ribbon kind from the places of its connectors, mm. */
export const ribbonKind = (
  id: string,
  at: readonly number[],
  more: Partial<RibbonKind> = {},
): RibbonKind => ({
  id,
  name: id,
  bus: 'shore',
  lay: 'flat',
  connectors: at.map((atMm): Connector => ({ atMm })),
  ...more,
});

const STIFF = ribbonKind('stiff', [0, 25.4]);
const STIFF3 = ribbonKind('stiff3', [0, 25.4, 50.8]);
const BENDING = ribbonKind('bending', [0, 40], { bends: true });
const LEAD = ribbonKind('lead', [0, 300], { bus: 'power', lay: 'loose' });

export const onModule = (connector: number, module: string, header = 'shore'): Seat => ({
  connector,
  on: { module, header },
});
export const onBoard = (connector: number, header: string, board = 'board'): Seat => ({
  connector,
  on: { board, header },
});
export const onRibbon = (connector: number, ribbon: string, socket: number): Seat => ({
  connector,
  on: { ribbon, connector: socket },
});

export const ribbon = (
  id: string,
  kindId: string,
  seats: readonly Seat[],
  more: Partial<Ribbon> = {},
): Ribbon => ({
  id,
  kind: kindId,
  seats,
  ...more,
});

/** Seats connector i of a flat ribbon on the i-th module, rear view left to right. */
export const along = (...modules: readonly string[]): Seat[] =>
  modules.map((module, connector) => onModule(connector, module));

export const ROW: Row = { id: 'row', widthHp: 84, heightU: 3, depthMm: 60 };

export const BOARD: Board = {
  id: 'board',
  name: 'Board',
  row: 'row',
  xMm: 300,
  headers: [
    { id: 'p1', bus: 'power', pin1: 'down' },
    { id: 'p2', bus: 'power', pin1: 'down', dxMm: 12 },
  ],
};

export const SUPPLY: Supply = {
  id: 'supply',
  name: 'Supply',
  ratings: { '+12': 1000, '-12': 1000 },
  boards: [BOARD],
};

interface Parts {
  readonly kinds?: readonly ModuleKind[];
  readonly ribbonKinds?: readonly RibbonKind[];
  readonly buses?: readonly Bus[];
  readonly limits?: Partial<Limits>;
  readonly rows?: readonly Row[];
  readonly supplies?: readonly Supply[];
  /** Id, kind, place in HP, and the row where it is not the first. */
  readonly modules?: readonly (readonly [id: string, kind: string, atHp: number, row?: string])[];
  readonly ribbons?: readonly Ribbon[];
}

/** A layout of one take from the parts that matter; everything else as above. */
export function example(parts: Parts): Layout {
  const { kinds = [], ribbonKinds = [], buses = [], limits, rows = [ROW], supplies = [SUPPLY] } = parts;
  const kit: Kit = {
    voltages: [
      { id: '+12', volts: 12 },
      { id: '-12', volts: -12 },
      { id: '+5', volts: 5 },
    ],
    buses: [SHORE, POWER, POWER16, ...buses],
    modules: [VOICE, COLLECTOR, PLAIN, ...kinds],
    ribbons: [STIFF, STIFF3, BENDING, LEAD, ...ribbonKinds],
    ...(limits && { limits }),
  };
  const firstRow = rows[0]?.id ?? '';
  const modules = (parts.modules ?? []).map(([id, kindId, atHp, row = firstRow]) => ({
    id,
    kind: kindId,
    row,
    atHp,
  }));
  const take = { id: 'take', name: 'Take', rows, supplies, modules, ribbons: parts.ribbons ?? [] };
  return { format: 'ribbonwright', version: 1, title: 'Example', kit, takes: [take] };
}
