import {
  type Berth,
  berthOn,
  connectorsFor,
  type DerivedTake,
  type Edit,
  isInStock,
  isSamePlace,
  isTaken,
  type JointTarget,
  type Laying,
  landed,
  layAlong,
  leadFor,
  ownedLeft,
  type PlacedHeader,
  type RibbonKind,
  type Seat,
  seatedOnOf,
  shortestLead,
  whyNotOn,
} from '../../src/index.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { figure } from '../panels/figures.ts';
import { markPrefix } from '../store/leads.ts';
import { connectorWords, placeWords } from '../store/seat-words.ts';
import { berthsThat } from '../tools/berths.ts';
import { layingLines, spokenOf } from '../tools/laying-words.ts';
import type { Choice, Page } from './choice.ts';

/** More are no help in choosing. */
const MOST = 24;

/** So many places, the nearest, are tried with every kind. */
const MOST_TRIED = 96;

const list = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** "2 of 3 left"; nothing where nobody counts. */
function stockWords(take: DerivedTake, kind: RibbonKind): string[] {
  const left = ownedLeft(take.take, kind);
  if (left === undefined) return [];
  return [left > 0 ? `${left} left in the stock` : 'none left in the stock'];
}

/** "3 of 5 connectors would land, on Jetty B, Cobble 3 and Cobble 4". */
function landingWords(laying: Laying, take: DerivedTake): string {
  const { landings, start } = laying;
  const along = landings
    .filter(({ lands }) => lands)
    .sort((a, b) => Math.abs(a.xMm - start.xMm) - Math.abs(b.xMm - start.xMm))
    .flatMap(({ on }) => (on ? [on.type === 'header' ? on.header.owner.name : placeWords(on)] : []));
  const troubles = layingLines(laying, null, take, undefined)
    .filter(({ isTrouble }) => isTrouble)
    .map(({ text }) => text);
  const lands = `${landed(laying)} of ${landings.length} connectors would land`;
  return [
    along.length > 0 ? `${lands}, on ${list(along)}` : lands,
    ...troubles,
    ...stockWords(take, laying.facts.kind),
  ].join('; ');
}

const newest = (editor: Editor): string => {
  const ribbon = shownTake(editor).ribbons.at(-1);
  return ribbon ? (ribbon.label ?? ribbon.id) : 'Nothing';
};

function addRibbon(
  editor: Editor,
  kind: RibbonKind,
  { seats, stripe }: { readonly seats: readonly Seat[]; readonly stripe?: 'up' | 'down' },
): Edit {
  const { kit } = editor.layouts.layout();
  return {
    type: 'add-ribbon',
    take: shownTake(editor).id,
    kind: kind.id,
    prefix: markPrefix(kind, kit),
    seats,
    ...(stripe && { stripe }),
  };
}

function layChoice(editor: Editor, laying: Laying, under: string): Choice {
  const { kind } = laying.facts;
  return {
    label: kind.name,
    under,
    words: landingWords(laying, shownAnalysis(editor).derived),
    deed: {
      type: 'edit',
      edit: addRibbon(editor, kind, laying),
      said: () => spokenOf(laying, newest(editor)),
    },
  };
}

const flawsOf = ({ landings, gaps }: Laying): number =>
  landings.filter(({ miss }) => miss).length + gaps.filter(({ flaws }) => flaws.length > 0).length;

const DIRECTIONS = [
  { towards: Number.POSITIVE_INFINITY, words: 'To the left, seen from the rear' },
  { towards: Number.NEGATIVE_INFINITY, words: 'To the right, seen from the rear' },
] as const;

interface Way {
  readonly laying: Laying;
  readonly under: string;
  readonly merits: readonly number[];
}

/** What is owned and lands most comes first, with no more connectors than it needs. */
const compare = (a: Way, b: Way): number => {
  const i = a.merits.findIndex((merit, at) => merit !== b.merits[at]);
  return i < 0 ? 0 : (b.merits[i] as number) - (a.merits[i] as number);
};

/** Every flat kind that can start at a place, each way along the row: those that join something, if any do. */
export function flatWays(take: DerivedTake, start: Berth): readonly Way[] {
  const ways = [...take.kit.ribbons.values()]
    .filter((facts) => facts.flat && !whyNotOn(take, facts, start.on))
    .flatMap((facts) =>
      DIRECTIONS.flatMap(({ towards, words }): Way[] => {
        const laid = layAlong(take, facts.kind.id, start, towards);
        if (!laid.ok) return [];
        const laying = laid.value;
        const inStock = isInStock(take.take, facts.kind) ? 1 : 0;
        const merits = [inStock, landed(laying), -flawsOf(laying), -laying.landings.length];
        return [{ laying, under: words, merits }];
      }),
    )
    .sort(compare);
  const joining = ways.filter(({ laying }) => laying.seats.length > 1);
  if (joining.length > 0) return joining;
  return ways.filter(({ under }) => under === DIRECTIONS[0].words);
}

/** Ways of one direction stand together; the direction with the best one first. */
function byDirection(ways: readonly Way[]): readonly Way[] {
  const [best] = ways;
  return [
    ...ways.filter(({ under }) => under === best?.under),
    ...ways.filter(({ under }) => under !== best?.under),
  ];
}

/** Flat ribbons from a free header, or for their plug from a free socket. */
export function layPage(editor: Editor, start: Berth): Page {
  const { derived } = shownAnalysis(editor);
  return {
    title: `Lay a ribbon from ${placeWords(start.on)}`,
    choices: byDirection(flatWays(derived, start))
      .slice(0, MOST)
      .map(({ laying, under }) => layChoice(editor, laying, under)),
    none: 'No ribbon in the stock fits here.',
  };
}

/** Where a free connector or header of the take lies; nothing for a connector of a ribbon that is seated nowhere. */
export function berthFor(editor: Editor, on: JointTarget): Berth | undefined {
  if (on.type === 'header') return berthOn(on.header);
  return berthsThat(editor, (berth) => isSamePlace(berth.on, on))[0];
}

/** How far apart two places are, along the row and up and down, mm. */
const apart = (a: Berth, b: Berth): number =>
  Math.abs(a.xMm - b.xMm) + Math.abs(a.row.bottomMm + a.yMm - b.row.bottomMm - b.yMm);

const isOnBoard = ({ on }: Pick<Berth, 'on'>): boolean =>
  on.type === 'header' && on.header.owner.type === 'board';

/** Leads and links from a place to others that are free: the shortest that reaches each, the nearest place first. */
export function leadPage(editor: Editor, start: Berth): Page {
  const { derived } = shownAnalysis(editor);
  const canEnd = ({ on }: Berth): boolean => {
    if (isSamePlace(on, start.on) || isTaken(derived, on)) return false;
    return !(isOnBoard(start) && isOnBoard({ on }));
  };
  const near = berthsThat(editor, canEnd).sort((a, b) => apart(a, start) - apart(b, start));
  // Boards are few and seldom near; a power header without them is of no use.
  const boards = near.filter(isOnBoard).slice(0, MOST);
  const others = near.filter((berth) => !isOnBoard(berth)).slice(0, MOST_TRIED);
  const choices = [...boards, ...others].flatMap((end): Choice[] => {
    const lead = shortestLead(derived, start, end);
    if (!lead.ok) return [];
    const { laying } = lead.value;
    const { kind } = laying.facts;
    return [
      {
        label: `To ${placeWords(end.on)}`,
        words: [kind.name, ...stockWords(derived, kind)].join('; '),
        deed: {
          type: 'edit',
          edit: addRibbon(editor, kind, laying),
          said: () => `${newest(editor)} laid to ${placeWords(end.on)}.`,
        },
      },
    ];
  });
  return {
    title: `Lead or link from ${placeWords(start.on)}`,
    choices: choices.slice(0, MOST),
    none: 'No lead or link in the stock reaches a free place from here.',
  };
}

const NO_LEAD = {
  'no kind fits': 'no lead in the stock fits',
  'no free header': 'no header of a board is free',
  'a line is missing': 'no lead brings all that it draws',
  'none reaches': 'no lead in the stock is long enough',
} as const;

/** The best lead for a module's power header; nothing for a header that is not for leads. */
export function feedChoice(editor: Editor, header: PlacedHeader): Choice | undefined {
  const { derived } = shownAnalysis(editor);
  if (
    header.owner.type === 'board' ||
    !header.bus.carriesVoltage ||
    isTaken(derived, { type: 'header', header })
  )
    return undefined;
  const choice = leadFor(derived, header);
  if (!choice.ok) {
    if (choice.reason.why === 'no kind fits') return undefined;
    return { label: 'Feed it', off: NO_LEAD[choice.reason.why], deed: { type: 'do', run: () => {} } };
  }
  const { facts, to, seats, neededMm, lengthMm } = choice.lead;
  const place = `${to.owner.name}, header ${to.name}`;
  return {
    label: `Feed it from ${place}`,
    words: [
      facts.kind.name,
      `${figure(neededMm, 0)} mm needed, ${figure(lengthMm, 0)} mm there`,
      ...stockWords(derived, facts.kind),
    ].join('; '),
    deed: {
      type: 'edit',
      edit: addRibbon(editor, facts.kind, { seats }),
      said: () => `${newest(editor)} laid from ${place} to ${header.owner.name}.`,
    },
  };
}

interface FreeEnd {
  readonly ribbon: string;
  readonly name: string;
  readonly connector: number;
  readonly off: number;
}

/** Free connectors of laid ribbons that could sit on something, the nearest first. */
export function freeEndsFor(editor: Editor, on: JointTarget): readonly FreeEnd[] {
  const { derived } = shownAnalysis(editor);
  const here = berthFor(editor, on);
  const fitting = new Map<Laying['facts'], readonly number[]>();
  const fits = (facts: Laying['facts']): readonly number[] => {
    const known =
      fitting.get(facts) ?? (whyNotOn(derived, facts, on) ? [] : connectorsFor(derived, facts, on));
    fitting.set(facts, known);
    return known;
  };
  const points = new Map<string, Berth>();
  for (const berth of berthsThat(editor, (one) => one.on.type === 'connector')) {
    if (berth.on.type === 'connector') points.set(`${berth.on.ribbon.id} ${berth.on.connector}`, berth);
  }
  const isOwn = (id: string): boolean => on.type === 'connector' && on.ribbon.id === id;
  return derived.wiring.ribbons
    .filter(({ id, ribbon }) => !isOwn(id) && !ribbon.locked)
    .flatMap((ribbon) =>
      fits(ribbon.facts)
        .filter((connector) => ribbon.uses[connector]?.length === 0)
        .map((connector): FreeEnd => {
          const point = points.get(`${ribbon.id} ${connector}`);
          const off = point && here ? apart(point, here) : Number.MAX_VALUE;
          return { ribbon: ribbon.id, name: ribbon.name, connector, off };
        }),
    )
    .sort((a, b) => a.off - b.off)
    .slice(0, MOST);
}

/** Seating a connector on something: shown before it is done, and told after. */
export function seatChoice(
  editor: Editor,
  label: string,
  { ribbon, connector }: { readonly ribbon: string; readonly connector: number },
  on: JointTarget,
): Choice {
  const words = (take: DerivedTake): string => {
    const laid = take.wiring.ribbonById.get(ribbon);
    return laid ? `${laid.name}, ${connectorWords(take, laid, connector)}` : '';
  };
  return {
    label,
    deed: {
      type: 'edit',
      edit: { type: 'seat-connector', take: shownTake(editor).id, ribbon, connector, on: seatedOnOf(on) },
      shows: ({ derived }) => words(derived),
      said: () => `${words(shownAnalysis(editor).derived)}.`,
    },
  };
}

/** Free connectors of ribbons that lie already, to be put on something. */
export function freeEndsPage(editor: Editor, on: JointTarget): Page {
  return {
    title: `Seat a free connector on ${placeWords(on)}`,
    choices: freeEndsFor(editor, on).map((end) =>
      seatChoice(editor, `Connector ${end.connector + 1} of ${end.name}`, end, on),
    ),
    none: 'No free connector fits here.',
  };
}
