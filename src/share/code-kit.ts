import type {
  Bus,
  Connector,
  Header,
  Kit,
  Limits,
  ModuleKind,
  RibbonKind,
  Voltage,
} from '../layout/layout.ts';
import { type Data, type Field, list, object } from './code-data.ts';
import type { Coder } from './coder.ts';
import { idOf, next, nextByFirst } from './series.ts';

/*
 * The kit, noun by noun. What stands here is part of the form of links: another order of fields, another guess or
 * another list of choices makes another form, with a prefix of its own.
 */

export const AXES = ['vertical', 'horizontal'] as const;
export const ENDS = ['down', 'up', 'left', 'right'] as const;
const ROLES = ['member', 'host'] as const;
const DEPTHS = ['with-plugs', 'without-plugs'] as const;
const KNOWN = ['measured', 'published', 'guessed'] as const;
const LAYS = ['flat', 'loose'] as const;
const TYPES = ['socket', 'plug'] as const;
const FACES = ['panel', 'rear'] as const;
const KEYS = ['none', 'with-stripe', 'against-stripe'] as const;

const VOLTAGES = ['+12', '-12', '+5'];

/** In the order in which they are told, with their defaults. */
const LIMITS: Readonly<Record<keyof Limits, number>> = {
  seatToleranceMm: 1,
  skewMm: 3,
  bendRadiusMm: 3,
  connectorBodyMm: 6,
  ribbonMm: 1,
  plugMm: 15,
  leadAllowanceMm: 40,
  headroom: 0.2,
  contactMa: 1000,
  contactMilliohm: 20,
  ambientC: 25,
  groundShiftMv: 5,
};

const HP_MM = 5.08;

/** One of a few words. */
export function oneOf<T extends string>(
  coder: Coder,
  value: T | undefined,
  words: readonly T[],
  slot: string,
  ...along: readonly unknown[]
): T {
  return words[
    coder.place(value === undefined ? 0 : words.indexOf(value), words.length, slot, ...along)
  ] as T;
}

/** One of a list of things, by its id. */
export function idIn(
  coder: Coder,
  id: string | undefined,
  ids: readonly string[],
  slot: string,
  guesses: readonly (string | undefined)[],
  ...along: readonly unknown[]
): string {
  const hit = id === undefined ? -1 : guesses.indexOf(id);
  const any = guesses.some((guess) => guess !== undefined);
  const told = any ? coder.whole(hit < 0 ? 1 : hit === 0 ? 0 : hit + 1, `${slot}?`, ...along) : 1;
  const guess = told === 1 ? undefined : guesses[told === 0 ? 0 : told - 1];
  if (guess !== undefined) return guess;
  return ids[coder.place(id === undefined ? 0 : ids.indexOf(id), ids.length, slot, ...along)] as string;
}

/** Currents by voltage. */
export function byVoltage<T extends Readonly<Record<string, number | null>>>(
  coder: Coder,
  value: T | undefined,
  voltages: readonly Voltage[],
  slot: string,
): T {
  const got: Record<string, number | null> = {};
  let before: number | undefined;
  for (const { id } of voltages) {
    coder.spend(1);
    if (!coder.flag(value && Object.hasOwn(value, id), `${slot}?`, id, before === undefined)) continue;
    const given = value?.[id];
    const isUnknown = coder.flag(given === null, `${slot}null`);
    const current = isUnknown
      ? null
      : coder.scalar(given ?? undefined, 'number', slot, { guesses: [before], with: [id] });
    Object.defineProperty(got, id, { value: current, enumerable: true, configurable: true, writable: true });
    before = current ?? before;
  }
  return got as T;
}

export function codeKit(coder: Coder, kit: Kit | undefined): Kit {
  let voltages: readonly Voltage[] = [];
  let buses: readonly Bus[] = [];
  return object(coder, kit, 'kit', [
    {
      key: 'voltages',
      code(value: Kit['voltages'] | undefined) {
        voltages = list(coder, value, 'voltages', (one, soFar) => codeVoltage(coder, one, soFar));
        return voltages;
      },
    },
    {
      key: 'buses',
      code(value: Kit['buses'] | undefined) {
        coder.expect('pin', 'GND');
        coder.expect('pin', '');
        for (const { id } of voltages) coder.expect('pin', id);
        buses = list(coder, value, 'buses', (one, soFar) => codeBus(coder, one, soFar));
        return buses;
      },
    },
    {
      key: 'modules',
      code: (value: Kit['modules'] | undefined) =>
        list(coder, value, 'kinds', (one, soFar) => codeModuleKind(coder, one, soFar, voltages, buses)),
    },
    {
      key: 'ribbons',
      code: (value: Kit['ribbons'] | undefined) =>
        list(coder, value, 'ribbonKinds', (one, soFar) => codeRibbonKind(coder, one, soFar, buses)),
    },
    {
      key: 'limits',
      optional: true,
      code: (value: Kit['limits']) =>
        object(
          coder,
          value,
          'limits',
          Object.entries(LIMITS).map(
            ([key, usual]): Field => ({
              key,
              optional: true,
              code: (limit: number | undefined) =>
                coder.scalar(limit, 'number', `limits.${key}`, { guesses: [usual], near: usual }),
            }),
          ),
        ),
    },
  ]);
}

const codeVoltage = (coder: Coder, voltage: Voltage | undefined, soFar: readonly Voltage[]): Voltage =>
  object(coder, voltage, 'voltage', [
    {
      key: 'id',
      code: (id: string | undefined) =>
        coder.scalar(id, 'text', 'voltage.id', { guesses: [VOLTAGES[soFar.length]], unique: true }),
    },
    {
      key: 'volts',
      code: (volts: number | undefined, { id }: Data) =>
        coder.scalar(volts, 'number', 'volts', { guesses: [Number(id) || undefined] }),
    },
    measure(coder, 'dropMv', 'voltage'),
  ]);

/** An optional number; the same one as often before. */
export const measure = (
  coder: Coder,
  key: string,
  noun: string,
  guesses: readonly (number | undefined)[] = [],
  ...along: readonly unknown[]
): Field => ({
  key,
  optional: true,
  code: (value: number | undefined) =>
    coder.scalar(value, 'number', `${noun}.${key}`, { guesses, with: along }),
});

const flag = (coder: Coder, key: string, noun: string): Field => ({
  key,
  optional: true,
  code: (value: boolean | undefined) => coder.flag(value, `${noun}.${key}`),
});

const word = <T extends string>(
  coder: Coder,
  key: string,
  noun: string,
  words: readonly T[],
  ...along: readonly unknown[]
): Field => ({
  key,
  optional: true,
  code: (value: T | undefined) => oneOf(coder, value, words, `${noun}.${key}`, ...along),
});

const prose = (coder: Coder, key: string): Field => ({
  key,
  optional: true,
  code: (value: string | undefined) => coder.scalar(value, 'text', key),
});

const codeBus = (coder: Coder, bus: Bus | undefined, soFar: readonly Bus[]): Bus => {
  const before = soFar.at(-1);
  return object(coder, bus, 'bus', [
    {
      key: 'name',
      code: (name: string | undefined) =>
        coder.scalar(name, 'text', 'bus.name', {
          unique: true,
          guesses: [next(before?.name)],
          like: [before?.name],
        }),
    },
    {
      key: 'id',
      code: (id: string | undefined, { name }: Data) => {
        const made = idOf(name as string);
        return coder.scalar(id, 'text', 'bus.id', {
          unique: true,
          guesses: [made, next(before?.id)],
          like: [made, before?.id],
        });
      },
    },
    {
      key: 'pinout',
      code: (value: Bus['pinout'] | undefined) => {
        const pairs = value && value.length / 2;
        const count = 2 * coder.whole(pairs, 'pins#');
        const pins: string[] = [];
        let agrees = true;
        for (let i = 0; i < count; i++) {
          coder.spend(1);
          const other = before?.pinout[i];
          const pin: string = coder.scalar(value?.[i], 'text', 'pin', {
            guesses: [pins[i - 1], agrees ? other : undefined],
            with: [`${pins[i - 1]} ${pins[i - 2]}`],
          });
          agrees &&= pin === other;
          pins.push(pin);
        }
        return pins;
      },
    },
    measure(coder, 'membersPerHost', 'bus'),
  ]);
};

const codeModuleKind = (
  coder: Coder,
  kind: ModuleKind | undefined,
  soFar: readonly ModuleKind[],
  voltages: readonly Voltage[],
  buses: readonly Bus[],
): ModuleKind => {
  const before = soFar.at(-1);
  return object(coder, kind, 'kind', [
    {
      key: 'name',
      code: (name: string | undefined) =>
        coder.scalar(name, 'text', 'kind.name', {
          unique: true,
          guesses: [next(before?.name)],
          like: [before?.name],
        }),
    },
    {
      key: 'id',
      code: (id: string | undefined, { name }: Data) => {
        const made = idOf(name as string);
        return coder.scalar(id, 'text', 'kind.id', {
          unique: true,
          guesses: [made, next(before?.id)],
          like: [made, before?.id],
        });
      },
    },
    { ...measure(coder, 'widthHp', 'kind'), optional: undefined as never },
    measure(coder, 'heightU', 'kind', [3]),
    measure(coder, 'depthMm', 'kind'),
    word(coder, 'depthIs', 'kind', DEPTHS),
    {
      key: 'draws',
      code: (value: ModuleKind['draws'] | undefined) => byVoltage(coder, value, voltages, 'draws'),
    },
    {
      key: 'headers',
      code: (value: ModuleKind['headers'] | undefined, { widthHp, depthMm }: Data) =>
        list(coder, value, 'headers', (one, others) =>
          codeHeader(coder, one, others, buses, (widthHp as number) * HP_MM, depthMm as number | undefined),
        ),
    },
    measure(coder, 'owned', 'kind'),
    measure(coder, 'price', 'kind'),
    { key: 'color', optional: true, code: (value: string | undefined) => codeColour(coder, value) },
    prose(coder, 'notes'),
    word(coder, 'known', 'kind', KNOWN, before?.known),
  ]);
};

const HEX_COLOUR = /^#[0-9a-f]{6}$/;

function codeColour(coder: Coder, colour: string | undefined): string {
  const isHex = coder.flag(colour !== undefined && HEX_COLOUR.test(colour), 'colour');
  if (!isHex) return coder.scalar(colour, 'text', 'color');
  const number = colour === undefined ? undefined : Number.parseInt(colour.slice(1), 16);
  const told = coder.whole(number === undefined ? undefined : coder.metAs('hex', number), 'hex@');
  const found = told > 0 ? coder.metAt('hex', told) : coder.place(number, 1 << 24, 'hex');
  coder.expect('hex', found);
  return `#${found.toString(16).padStart(6, '0')}`;
}

const codeHeader = (
  coder: Coder,
  header: Header | undefined,
  soFar: readonly Header[],
  buses: readonly Bus[],
  widthMm: number,
  depthMm: number | undefined,
): Header => {
  const before = soFar.at(-1);
  const ids = buses.map(({ id }) => id);
  const bus: Field = {
    key: 'bus',
    code: (value: string | undefined) => idIn(coder, value, ids, 'header.bus', [], before?.bus),
  };
  const id: Field = {
    key: 'id',
    code: (value: string | undefined, { bus: on }: Data) =>
      coder.scalar(value, 'text', 'header.id', {
        guesses: [on as string, next(before?.id)],
        with: [on],
        like: [on as string, before?.id],
      }),
  };
  return object(coder, header, 'header', [
    bus,
    id,
    {
      key: 'name',
      optional: true,
      code: (value: string | undefined, { bus: on }: Data) =>
        coder.scalar(value, 'text', 'header.name', { with: [on], like: [before?.name] }),
    },
    {
      key: 'role',
      code: (value: Header['role'] | undefined, { bus: on }: Data) => oneOf(coder, value, ROLES, 'role', on),
    },
    {
      key: 'xMm',
      code: (value: number | undefined, { bus: on }: Data) =>
        coder.scalar(value, 'number', 'header.x', {
          guesses: [Math.round(widthMm * 50) / 100, Math.round(widthMm / 2)],
          with: [`${on} ${widthMm}`],
          near: widthMm / 2,
        }),
    },
    {
      key: 'yMm',
      code: (value: number | undefined, { bus: on }: Data) =>
        coder.scalar(value, 'number', 'header.y', { with: [on], near: 64 }),
    },
    measure(coder, 'zMm', 'header', [depthMm]),
    word(coder, 'axis', 'header', AXES),
    {
      key: 'pin1',
      optional: true,
      code: (value: Header['pin1'], { axis }: Data) => oneOf(coder, value, ENDS, 'pin1', axis),
    },
    flag(coder, 'keyed', 'header'),
    flag(coder, 'passes', 'header'),
    flag(coder, 'isolated', 'header'),
    measure(coder, 'counts', 'header'),
  ]);
};

const codeRibbonKind = (
  coder: Coder,
  kind: RibbonKind | undefined,
  soFar: readonly RibbonKind[],
  buses: readonly Bus[],
): RibbonKind => {
  const before = soFar.at(-1);
  const earlier = soFar.at(-2);
  const ids = buses.map(({ id }) => id);
  return object(
    coder,
    kind,
    'ribbonKind',
    [
      {
        key: 'bus',
        code: (value: string | undefined) => idIn(coder, value, ids, 'ribbonKind.bus', [before?.bus]),
      },
      {
        key: 'lay',
        code: (value: RibbonKind['lay'] | undefined, { bus }: Data) => oneOf(coder, value, LAYS, 'lay', bus),
      },
      flag(coder, 'bends', 'ribbonKind'),
      {
        key: 'connectors',
        code: (value: RibbonKind['connectors'] | undefined, { bus, lay }: Data) =>
          list(
            coder,
            value,
            'connectors',
            (one, others) =>
              codeConnector(coder, one, others, `${bus} ${lay}`, before?.connectors, earlier?.connectors),
            `${bus} ${lay}`,
            before?.connectors.length,
          ),
      },
      {
        key: 'name',
        code: (name: string | undefined) =>
          coder.scalar(name, 'text', 'ribbonKind.name', {
            unique: true,
            guesses: [nextByFirst(before?.name), next(before?.name)],
            like: [before?.name, earlier?.name],
          }),
      },
      {
        key: 'id',
        code: (id: string | undefined, { name }: Data) => {
          const made = idOf(name as string);
          return coder.scalar(id, 'text', 'ribbonKind.id', {
            unique: true,
            guesses: [made, next(before?.id), nextByFirst(before?.id)],
            like: [made, before?.id],
          });
        },
      },
      measure(coder, 'awg', 'ribbonKind', [28]),
      measure(coder, 'owned', 'ribbonKind'),
      measure(coder, 'price', 'ribbonKind'),
    ],
    before?.lay,
  );
};

const codeConnector = (
  coder: Coder,
  connector: Connector | undefined,
  soFar: readonly Connector[],
  sort: string,
  before: readonly Connector[] | undefined,
  earlier: readonly Connector[] | undefined,
): Connector => {
  const i = soFar.length;
  const first = soFar[1]?.atMm;
  const last = soFar.at(-1)?.atMm ?? 0;
  const step = last - (soFar.at(-2)?.atMm ?? last);
  return object(
    coder,
    connector,
    'connector',
    [
      {
        key: 'atMm',
        code: (value: number | undefined) =>
          i === 0
            ? coder.scalar(value, 'number', 'at 0', { guesses: [0] })
            : coder.scalar(value, 'number', 'at', {
                guesses: [
                  first && i * first,
                  first && Math.round((last + step) * 1000) / 1000,
                  before?.[i]?.atMm,
                  earlier?.[i]?.atMm,
                ],
                with: [`${sort} ${i} ${last}`],
                near: last + step,
              }),
      },
      word(coder, 'type', 'connector', TYPES),
      measure(coder, 'ways', 'connector'),
      word(coder, 'face', 'connector', FACES),
      word(coder, 'key', 'connector', KEYS),
    ],
    `${sort} ${i}`,
  );
};
