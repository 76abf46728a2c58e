import { faceOf, GND, heightUOf, limitsOf, typeOf } from './defaults.ts';
import type { Bus, Connector, Kit, Limits, ModuleKind, RibbonKind, Voltage } from './layout.ts';

/** A bus with its supply lines sorted out: voltages and GND, by the pins that carry them. */
export interface BusFacts {
  readonly bus: Bus;
  readonly pins: number;
  /** Supply line → pin indices that carry it, rising. */
  readonly supplyPins: ReadonlyMap<string, readonly number[]>;
  readonly carriesVoltage: boolean;
}

/** A module kind with its headers resolved. */
export interface ModuleFacts {
  readonly kind: ModuleKind;
  readonly heightU: number;
  /** Voltages drawn, null where unknown; draws of 0 mA are none. */
  readonly draws: readonly (readonly [voltage: string, ma: number | null])[];
  /** Voltages drawn though no header of the kind carries them. */
  readonly foreign: readonly string[];
  /** Supply lines that it needs and a header brings: the other voltages drawn, then GND; none where it draws none. */
  readonly needs: readonly string[];
  readonly unknownDraws: readonly string[];
}

/** A ribbon kind with its defaults filled in. */
export interface RibbonFacts {
  readonly kind: RibbonKind;
  readonly bus: BusFacts;
  readonly conductors: number;
  readonly connectors: readonly Connector[];
  /** Contacts of each connector. */
  readonly ways: readonly number[];
  readonly flat: boolean;
  readonly bends: boolean;
  /** Reads the same from both ends: mirror-image spacing, equal connectors. */
  readonly symmetric: boolean;
}

/** What a kit says, by id. */
export interface KitIndex {
  readonly kit: Kit;
  readonly limits: Limits;
  readonly voltages: ReadonlyMap<string, Voltage>;
  /** Every supply line: the voltages in the kit's order, then GND. */
  readonly supplyLines: readonly string[];
  readonly buses: ReadonlyMap<string, BusFacts>;
  readonly modules: ReadonlyMap<string, ModuleFacts>;
  readonly ribbons: ReadonlyMap<string, RibbonFacts>;
}

const SAME_PLACE_MM = 1e-6;

function isSymmetric(kind: RibbonKind, ways: readonly number[]): boolean {
  const { connectors } = kind;
  const last = connectors.length - 1;
  const span = connectors[last]?.atMm ?? 0;
  return connectors.every((one, i) => {
    const other = connectors[last - i] as Connector;
    return (
      Math.abs(one.atMm - (span - other.atMm)) <= SAME_PLACE_MM &&
      typeOf(one) === typeOf(other) &&
      ways[i] === ways[last - i] &&
      (one.key ?? 'none') === (other.key ?? 'none') &&
      faceOf(one) === faceOf(other)
    );
  });
}

function busFacts(bus: Bus, voltages: ReadonlyMap<string, Voltage>): BusFacts {
  const supplyPins = new Map<string, number[]>();
  bus.pinout.forEach((line, pin) => {
    if (line !== GND && !voltages.has(line)) return;
    const pins = supplyPins.get(line);
    if (pins) pins.push(pin);
    else supplyPins.set(line, [pin]);
  });
  const carriesVoltage = [...supplyPins.keys()].some((line) => line !== GND);
  return { bus, pins: bus.pinout.length, supplyPins, carriesVoltage };
}

function moduleFacts(kind: ModuleKind, buses: ReadonlyMap<string, BusFacts>): ModuleFacts {
  const draws = Object.entries(kind.draws).filter(([, ma]) => ma !== 0);
  const drawn = draws.map(([voltage]) => voltage);
  const carried = new Set(kind.headers.flatMap(({ bus }) => [...resolve(buses, bus).supplyPins.keys()]));
  const brought = drawn.filter((voltage) => carried.has(voltage));
  return {
    kind,
    heightU: heightUOf(kind),
    draws,
    foreign: drawn.filter((voltage) => !carried.has(voltage)),
    needs: draws.length > 0 ? [...brought, GND] : [],
    unknownDraws: draws.filter(([, ma]) => ma === null).map(([voltage]) => voltage),
  };
}

function ribbonFacts(kind: RibbonKind, bus: BusFacts): RibbonFacts {
  const ways = kind.connectors.map((connector) => connector.ways ?? bus.pins);
  return {
    kind,
    bus,
    conductors: bus.pins,
    connectors: kind.connectors,
    ways,
    flat: kind.lay === 'flat',
    bends: kind.lay === 'flat' && kind.bends === true,
    symmetric: isSymmetric(kind, ways),
  };
}

const indexed = new WeakMap<Kit, KitIndex>();

/** The index of a kit; made once per kit object, since a drag changes places and never the kit. */
export function indexKit(kit: Kit): KitIndex {
  const known = indexed.get(kit);
  if (known) return known;
  const voltages = new Map(kit.voltages.map((voltage) => [voltage.id, voltage]));
  const buses = new Map(kit.buses.map((bus) => [bus.id, busFacts(bus, voltages)]));
  const index: KitIndex = {
    kit,
    limits: limitsOf(kit),
    voltages,
    supplyLines: [...voltages.keys(), GND],
    buses,
    modules: new Map(kit.modules.map((kind) => [kind.id, moduleFacts(kind, buses)])),
    ribbons: new Map(kit.ribbons.map((kind) => [kind.id, ribbonFacts(kind, resolve(buses, kind.bus))])),
  };
  indexed.set(kit, index);
  return index;
}

/**
 * A reference of an opened layout. Opening refuses references to nothing, so a miss is a fault of the
 * program and not of the file.
 */
export function resolve<T>(map: ReadonlyMap<string, T>, id: string): T {
  const found = map.get(id);
  if (found === undefined) throw new Error(`nothing is called "${id}"`);
  return found;
}
