import { type JsonSchema, toJsonSchema } from '@valibot/to-json-schema';
import { layoutSchema, nouns } from './schema.ts';

type Objects = typeof nouns & { readonly Layout: typeof layoutSchema };
type Noun = keyof Objects;
type Meanings = { readonly [N in Noun]?: { readonly [F in keyof Objects[N]['entries']]?: string } };

/** What the names and types of fields leave open: defaults, and what is counted from where. */
const MEANINGS: Meanings = {
  Layout: {
    parent: 'id of the layout that this one was copied from',
  },
  Voltage: {
    id: 'ASCII such as +12; GND is implied and never listed',
    dropMv: 'loss allowed at a module; default 250',
  },
  Bus: {
    pinout: "pin 1 first; even length; each a voltage id, 'GND', '' for not connected, or a signal",
    membersPerHost: 'absent: no limit',
  },
  ModuleKind: {
    heightU: 'default 3',
    depthMm: 'behind the panel; absent: unknown',
    depthIs: 'default with-plugs',
    draws: 'mA by voltage id; null: draws, but unknown how much; absent: draws none',
  },
  Header: {
    xMm: 'centre of the pin field, from the left edge of the module',
    yMm: 'centre of the pin field, from the bottom edge of the panel',
    zMm: 'where the mated ribbon lies behind the panel; default depthMm, or 30 where that is unknown',
    axis: 'long side of the pin field; default vertical',
    pin1: 'end with pin 1; up or down when vertical, left or right when horizontal; absent: unknown',
    keyed: 'boxed with a notch; default false',
    passes: 'headers of one module on one bus that both say so are joined inside',
    isolated: "its supply pins are not joined to the module's own supply",
    counts: "members that it counts for against the host's limit; default 1",
  },
  RibbonKind: {
    bus: 'names what each conductor carries: conductor k lies on contact k everywhere',
    lay: 'flat: pressed on across neighbours, straight, in line; loose: hangs freely',
    bends: 'flat only: may arch between connectors; default false',
    awg: 'default 28',
    connectors: 'in the order seen from the rear with the stripe down, left to right',
  },
  Connector: {
    atMm: 'strictly rising from 0',
    type: 'default socket',
    ways: 'contacts, on conductors 1 to ways; default all',
    face: 'opens to, with the stripe down; default panel for a socket, rear for a plug',
    key: 'its bump; default none',
  },
  Take: {
    rows: 'top to bottom',
    accepted: 'findings put away by the user, by key',
    built: 'the record of what was built',
  },
  Built: {
    inCase: 'the take stands so in the case; the first take that says so counts; default false',
  },
  HarnessTest: {
    ribbons: 'ids of all ribbons of the harness',
    test: 'stripe, continuity or no-short',
    of: 'fingerprint of what was tested',
    by: 'who, as typed',
    at: 'when',
  },
  MeterReading: {
    line: 'voltage id',
    ma: 'drawn',
    volts: 'against ground beside it',
  },
  Acceptance: {
    facts: 'what was measured when it was put away; absent: put away for good',
  },
  Row: {
    gapMm: 'to the next row below; default 0',
  },
  Supply: {
    ratings: 'mA by voltage id; absent or 0: does not give it',
  },
  Board: {
    yMm: 'default 60',
    widthMm: 'covers xMm to xMm + widthMm; default 0',
    riseMm: 'how far it stands up from the case floor; default 0',
    lead: 'one wire per line from the supply; absent: no resistance',
    limits: 'mA by voltage id',
  },
  BoardHeader: {
    dxMm: "from the board's xMm; default 0",
    dyMm: "from the board's yMm; default 0",
  },
  Ribbon: {
    stripe: 'at connector 0; default down; flat only',
    twists: 'half-twists between connectors i and i + 1, by i; default none; flat only',
  },
  Seat: {
    on: "a plug is seated in another ribbon's socket: the seat stands on the ribbon that owns the plug",
  },
};

/** Units by the ends of fields' names. */
const UNITS: Readonly<Record<string, string>> = {
  Mm: 'mm',
  Hp: 'HP (5.08 mm)',
  U: 'U (44.45 mm)',
  Ma: 'mA',
  Mv: 'mV',
  Milliohm: 'mΩ',
  C: '°C',
  volts: 'V',
};

const DESCRIPTION =
  'A kit (which kinds of module, bus and ribbon exist) and one or more takes (arrangements of that kit). ' +
  'Positions are as seen from the front: x grows to the right, y upward, z backward from the panel. ' +
  'Keys that a program does not know are kept. Not expressed here: ids are unique within their list (modules, ' +
  'ribbons, boards, supplies and rows within the take), what is named exists, pinouts are even, places of ' +
  'connectors rise, pin 1 suits its axis.';

/** The JSON Schema (draft 2020-12) of a layout document. */
export function layoutJsonSchema(): object {
  const {
    $schema,
    $defs = {},
    ...layout
  } = toJsonSchema(layoutSchema, {
    target: 'draft-2020-12',
    definitions: nouns,
    ignoreActions: ['check'],
  });
  return {
    $schema,
    title: 'Ribbonwright layout, version 1',
    description: DESCRIPTION,
    ...described('Layout', layout),
    $defs: Object.fromEntries(
      Object.entries($defs).map(([noun, schema]) => [noun, described(noun as Noun, schema as JsonSchema)]),
    ),
  };
}

function described(noun: Noun, schema: JsonSchema): JsonSchema {
  const meanings: Readonly<Record<string, string>> = MEANINGS[noun] ?? {};
  const fields = Object.entries(schema.properties ?? {}).map(([field, its]) => {
    const words = [unitOf(field), meanings[field]].filter((part) => part !== undefined);
    return [field, words.length > 0 ? { description: words.join('; '), ...(its as JsonSchema) } : its];
  });
  return { ...schema, properties: Object.fromEntries(fields) };
}

function unitOf(field: string): string | undefined {
  const suffix = /([A-Z][a-z]*|^volts)$/.exec(field)?.[0];
  return suffix === undefined ? undefined : UNITS[suffix];
}
