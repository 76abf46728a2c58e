import type { Kit, Layout, Take } from '../layout/layout.ts';
import { saysTheSame } from '../layout/says-the-same.ts';

/** Lists of things with ids: of the kit, and of a take. */
export const KIT_LISTS = [
  'voltages',
  'buses',
  'modules',
  'ribbons',
] as const satisfies readonly (keyof Kit)[];
export const TAKE_LISTS = [
  'rows',
  'supplies',
  'modules',
  'ribbons',
] as const satisfies readonly (keyof Take)[];

type KitList = (typeof KIT_LISTS)[number];
type TakeList = (typeof TAKE_LISTS)[number];

/** Where a part lies: a field of the layout, the kit or a take; a thing of a list; a whole take; the order of a list. */
export type Room =
  | 'layout'
  | 'kit'
  | 'take'
  | 'takes'
  | `kit/${KitList}`
  | `take/${TakeList}`
  | `order/${'takes' | `kit/${KitList}` | `take/${TakeList}`}`;

/** The smallest piece that is taken from one side as a whole. */
export interface Part {
  /** Names it among all parts. */
  readonly key: string;
  readonly room: Room;
  /** Id of the take that it lies in. */
  readonly take?: string;
  /** Of the thing, or the name of the field. */
  readonly id: string;
  /** `undefined`: not there. */
  readonly mine: unknown;
  readonly theirs: unknown;
}

export interface Identified {
  readonly id: string;
}

type Fields = Readonly<Record<string, unknown>>;

/** What a layout is, rather than what it says; and what is looked at piece by piece. */
export const SPLIT: Readonly<Record<'layout' | 'kit' | 'take', ReadonlySet<string>>> = {
  layout: new Set(['format', 'version', 'id', 'parent', 'kit', 'takes']),
  kit: new Set(KIT_LISTS),
  take: new Set(['id', ...TAKE_LISTS]),
};

export const keyOf = (room: Room, id: string, take = ''): string => JSON.stringify([take, room, id]);

const partOf = (room: Room, id: string, take: string | undefined, mine: unknown, theirs: unknown): Part => ({
  key: keyOf(room, id, take),
  room,
  id,
  ...(take !== undefined && { take }),
  mine,
  theirs,
});

function fieldsOf(
  room: 'layout' | 'kit' | 'take',
  take: string | undefined,
  mine: object,
  theirs: object,
): Part[] {
  const names = new Set([...Object.keys(mine), ...Object.keys(theirs)]);
  return [...names].flatMap((name) =>
    SPLIT[room].has(name) ? [] : [partOf(room, name, take, (mine as Fields)[name], (theirs as Fields)[name])],
  );
}

/** Ids that stand in both lists, in the order of the first. */
function commonIds(list: readonly Identified[], other: readonly Identified[]): readonly string[] {
  const there = new Set(other.map(({ id }) => id));
  return list.flatMap(({ id }) => (there.has(id) ? [id] : []));
}

function listParts(
  room: 'takes' | `kit/${KitList}` | `take/${TakeList}`,
  take: string | undefined,
  mine: readonly Identified[],
  theirs: readonly Identified[],
): Part[] {
  const own = new Map(mine.map((thing) => [thing.id, thing]));
  const other = new Map(theirs.map((thing) => [thing.id, thing]));
  return [
    ...[...new Set([...own.keys(), ...other.keys()])].map((id) =>
      partOf(room, id, take, own.get(id), other.get(id)),
    ),
    partOf(`order/${room}`, '', take, commonIds(mine, theirs), commonIds(theirs, mine)),
  ];
}

function takeParts(mine: Take, theirs: Take): Part[] {
  return [
    ...fieldsOf('take', mine.id, mine, theirs),
    ...TAKE_LISTS.flatMap((list) => listParts(`take/${list}`, mine.id, mine[list], theirs[list])),
  ];
}

const differs = ({ mine, theirs }: Part): boolean => !saysTheSame(mine, theirs);

/** All parts that are not the same on both sides: of the whole first, then take by take. */
export function differingParts(mine: Layout, theirs: Layout): readonly Part[] {
  const other = new Map(theirs.takes.map((take) => [take.id, take]));
  const onOneSide = listParts('takes', undefined, mine.takes, theirs.takes).filter(
    ({ room, mine: own, theirs: others }) => room !== 'takes' || own === undefined || others === undefined,
  );
  return [
    ...fieldsOf('layout', undefined, mine, theirs),
    ...fieldsOf('kit', undefined, mine.kit, theirs.kit),
    ...KIT_LISTS.flatMap((list) => listParts(`kit/${list}`, undefined, mine.kit[list], theirs.kit[list])),
    ...onOneSide,
    ...mine.takes.flatMap((take) => {
      const others = other.get(take.id);
      return others ? takeParts(take, others) : [];
    }),
  ].filter(differs);
}
