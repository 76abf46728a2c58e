import type { Kit, Layout, Module, ModuleKind, Ribbon, RibbonKind, Row, Take } from '../layout/layout.ts';

/** What a difference is about. */
type DifferenceSort = 'layout' | 'take' | 'row' | 'supply' | 'module' | 'ribbon' | 'kind';

/** One thing that is not the same in two layouts, in words that tell what would be found in the other one. */
export interface Difference {
  readonly sort: DifferenceSort;
  readonly change: 'added' | 'removed' | 'changed';
  /** Id of the take that it lies in; absent: of the whole layout. */
  readonly take?: string;
  readonly id: string;
  readonly words: string;
}

interface Identified {
  readonly id: string;
}

interface Pairs<T> {
  readonly added: readonly T[];
  readonly removed: readonly T[];
  readonly both: readonly (readonly [mine: T, theirs: T])[];
}

/** What goes by the same id on both sides, and what stands on one only; in the order of the lists. */
function pairsOf<T extends Identified>(mine: readonly T[], theirs: readonly T[]): Pairs<T> {
  const byId = new Map(mine.map((thing) => [thing.id, thing]));
  const there = new Set(theirs.map(({ id }) => id));
  return {
    added: theirs.filter(({ id }) => !byId.has(id)),
    removed: mine.filter(({ id }) => !there.has(id)),
    both: theirs.flatMap((thing) => {
      const own = byId.get(thing.id);
      return own ? [[own, thing] as const] : [];
    }),
  };
}

type Data = Readonly<Record<string, unknown>>;

function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && isSame((a as Data)[key], (b as Data)[key]))
  );
}

/** Keys whose values differ, those that stand on one side only included. */
function changedKeys(mine: object, theirs: object): string[] {
  const keys = new Set([...Object.keys(mine), ...Object.keys(theirs)]);
  return [...keys].filter((key) => !isSame((mine as Data)[key], (theirs as Data)[key]));
}

const figure = (value: number): string => String(Math.round(value * 1000) / 1000);

const rowName = (rows: readonly Row[], id: string): string => {
  const at = rows.findIndex((row) => row.id === id);
  return rows[at]?.name ?? `row ${at + 1}`;
};

const kindName = (kit: Kit, id: string): string => kit.modules.find((kind) => kind.id === id)?.name ?? id;

const moduleName = (kit: Kit, { label, kind }: Module): string => label ?? kindName(kit, kind);

const ribbonName = (kit: Kit, { label, kind }: Ribbon): string =>
  label ?? kit.ribbons.find(({ id }) => id === kind)?.name ?? kind;

/** What people call the fields of a kind. */
const FIELDS: Readonly<Record<string, string>> = {
  name: 'name',
  widthHp: 'width',
  heightU: 'height',
  depthMm: 'depth',
  depthIs: 'depth',
  draws: 'currents',
  headers: 'headers',
  owned: 'how many are owned',
  price: 'price',
  color: 'colour',
  notes: 'notes',
  known: 'how its data are known',
  bus: 'bus',
  lay: 'how it lies',
  bends: 'whether it bends',
  awg: 'gauge',
  connectors: 'connectors',
};

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

const fieldWords = (keys: readonly string[]): string =>
  listed([...new Set(keys.map((key) => FIELDS[key] ?? `“${key.slice(0, 40)}”`))]);

function compareKinds<T extends ModuleKind | RibbonKind>(
  mine: readonly T[],
  theirs: readonly T[],
  noun: string,
): Difference[] {
  const { added, removed, both } = pairsOf(mine, theirs);
  const sort = 'kind';
  return [
    ...added.map(
      ({ id, name }): Difference => ({ sort, change: 'added', id, words: `New kind of ${noun}: ${name}.` }),
    ),
    ...removed.map(
      ({ id, name }): Difference => ({
        sort,
        change: 'removed',
        id,
        words: `Without the kind of ${noun} ${name}.`,
      }),
    ),
    ...both.flatMap(([own, other]): Difference[] => {
      const keys = changedKeys(own, other);
      if (keys.length === 0) return [];
      return [{ sort, change: 'changed', id: own.id, words: `${own.name} has another ${fieldWords(keys)}.` }];
    }),
  ];
}

const KIT_PARTS: readonly (readonly [key: 'voltages' | 'buses' | 'limits', words: string])[] = [
  ['voltages', 'The voltages differ.'],
  ['buses', 'The buses differ.'],
  ['limits', 'The limits of the checks differ.'],
];

function compareKits(mine: Kit, theirs: Kit): Difference[] {
  return [
    ...KIT_PARTS.flatMap(([id, words]): Difference[] =>
      isSame(mine[id], theirs[id]) ? [] : [{ sort: 'layout', change: 'changed', id, words }],
    ),
    ...compareKinds(mine.modules, theirs.modules, 'module'),
    ...compareKinds(mine.ribbons, theirs.ribbons, 'ribbon'),
  ];
}

/** A take with the kit that its parts are made of. */
export interface TakeOfKit {
  readonly kit: Kit;
  readonly take: Take;
}

function moduleChanges(mine: TakeOfKit, theirs: TakeOfKit, own: Module, other: Module): string[] {
  const changes: string[] = [];
  const isMoved = own.row !== other.row || own.atHp !== other.atHp;
  if (isMoved) {
    const row = own.row === other.row ? '' : `${rowName(theirs.take.rows, other.row)}, `;
    changes.push(`moved from ${figure(own.atHp)} to ${row}${figure(other.atHp)} HP`);
  }
  if (own.kind !== other.kind) changes.push(`now a ${kindName(theirs.kit, other.kind)}`);
  if (moduleName(mine.kit, own) !== moduleName(theirs.kit, other))
    changes.push(`called ${moduleName(theirs.kit, other)}`);
  if (Boolean(own.pinned) !== Boolean(other.pinned))
    changes.push(other.pinned ? 'pinned' : 'no longer pinned');
  return changes;
}

function compareModules(mine: TakeOfKit, theirs: TakeOfKit): Difference[] {
  const { added, removed, both } = pairsOf(mine.take.modules, theirs.take.modules);
  const sort = 'module';
  return [
    ...added.map(
      (module): Difference => ({
        sort,
        change: 'added',
        id: module.id,
        words: `${moduleName(theirs.kit, module)} added, ${rowName(theirs.take.rows, module.row)}, ${figure(module.atHp)} HP.`,
      }),
    ),
    ...removed.map(
      (module): Difference => ({
        sort,
        change: 'removed',
        id: module.id,
        words: `${moduleName(mine.kit, module)} removed.`,
      }),
    ),
    ...both.flatMap(([own, other]): Difference[] => {
      const changes = moduleChanges(mine, theirs, own, other);
      if (changes.length === 0) return [];
      return [
        { sort, change: 'changed', id: own.id, words: `${moduleName(mine.kit, own)} ${listed(changes)}.` },
      ];
    }),
  ];
}

function ribbonChanges(theirs: TakeOfKit, own: Ribbon, other: Ribbon, name: string): string[] {
  const changes: string[] = [];
  if (own.kind !== other.kind) {
    changes.push(
      `is of another kind: ${theirs.kit.ribbons.find(({ id }) => id === other.kind)?.name ?? other.kind}`,
    );
  }
  if (!isSame(own.seats, other.seats)) {
    const [before, after] = [own.seats.length, other.seats.length];
    changes.push(
      before === after ? 'sits on other headers' : `has ${after} of its connectors seated, not ${before}`,
    );
  }
  if ((own.stripe ?? 'down') !== (other.stripe ?? 'down')) changes.push('lies the other way round');
  if (!isSame(own.twists?.filter(Boolean) ?? [], other.twists?.filter(Boolean) ?? []))
    changes.push('is twisted otherwise');
  if (ribbonName(theirs.kit, other) !== name) changes.push(`is called ${ribbonName(theirs.kit, other)}`);
  return changes;
}

function compareRibbons(mine: TakeOfKit, theirs: TakeOfKit): Difference[] {
  const { added, removed, both } = pairsOf(mine.take.ribbons, theirs.take.ribbons);
  const sort = 'ribbon';
  return [
    ...added.map(
      (ribbon): Difference => ({
        sort,
        change: 'added',
        id: ribbon.id,
        words: `${ribbonName(theirs.kit, ribbon)} laid.`,
      }),
    ),
    ...removed.map(
      (ribbon): Difference => ({
        sort,
        change: 'removed',
        id: ribbon.id,
        words: `${ribbonName(mine.kit, ribbon)} taken out.`,
      }),
    ),
    ...both.flatMap(([own, other]): Difference[] => {
      const name = ribbonName(mine.kit, own);
      const changes = ribbonChanges(theirs, own, other, name);
      return changes.length > 0
        ? [{ sort, change: 'changed', id: own.id, words: `${name} ${listed(changes)}.` }]
        : [];
    }),
  ];
}

function compareRows(mine: readonly Row[], theirs: readonly Row[]): Difference[] {
  const { added, removed, both } = pairsOf(mine, theirs);
  const sort = 'row';
  return [
    ...added.map(
      (row): Difference => ({
        sort,
        change: 'added',
        id: row.id,
        words: `${rowName(theirs, row.id)} added, ${figure(row.widthHp)} HP.`,
      }),
    ),
    ...removed.map(
      (row): Difference => ({
        sort,
        change: 'removed',
        id: row.id,
        words: `${rowName(mine, row.id)} removed.`,
      }),
    ),
    ...both.flatMap(([own, other]): Difference[] => {
      if (changedKeys(own, other).length === 0) return [];
      const width =
        own.widthHp === other.widthHp ? '' : `: ${figure(other.widthHp)} HP wide, not ${figure(own.widthHp)}`;
      return [{ sort, change: 'changed', id: own.id, words: `${rowName(mine, own.id)} differs${width}.` }];
    }),
  ];
}

function compareSupplies({ take: mine }: TakeOfKit, { take: theirs }: TakeOfKit): Difference[] {
  const { added, removed, both } = pairsOf(mine.supplies, theirs.supplies);
  const sort = 'supply';
  return [
    ...added.map(({ id, name }): Difference => ({ sort, change: 'added', id, words: `${name} added.` })),
    ...removed.map(
      ({ id, name }): Difference => ({ sort, change: 'removed', id, words: `${name} removed.` }),
    ),
    ...both.flatMap(([own, other]): Difference[] => {
      const keys = changedKeys(own, other);
      if (keys.length === 0) return [];
      const what = listed(
        keys.map((key) => ({ boards: 'boards', ratings: 'ratings', name: 'a name' })[key] ?? 'data'),
      );
      return [{ sort, change: 'changed', id: own.id, words: `${own.name} has other ${what}.` }];
    }),
  ];
}

/** What one would find in their take that is not so in mine. */
export function compareTakes(mine: TakeOfKit, theirs: TakeOfKit): readonly Difference[] {
  const found = [
    ...compareRows(mine.take.rows, theirs.take.rows),
    ...compareSupplies(mine, theirs),
    ...compareModules(mine, theirs),
    ...compareRibbons(mine, theirs),
  ];
  return found.map((difference) => ({ ...difference, take: theirs.take.id }));
}

/** What one would find in their layout that is not so in mine: of the whole first, then take by take. */
export function compareLayouts(mine: Layout, theirs: Layout): readonly Difference[] {
  const { added, removed, both } = pairsOf(mine.takes, theirs.takes);
  const title: Difference[] =
    mine.title === theirs.title
      ? []
      : [{ sort: 'layout', change: 'changed', id: 'title', words: `It is called ${theirs.title}.` }];
  return [
    ...title,
    ...compareKits(mine.kit, theirs.kit),
    ...added.map(
      ({ id, name }): Difference => ({ sort: 'take', change: 'added', id, words: `One take more: ${name}.` }),
    ),
    ...removed.map(
      ({ id, name }): Difference => ({
        sort: 'take',
        change: 'removed',
        id,
        words: `Without the take ${name}.`,
      }),
    ),
    ...both.flatMap(([own, other]) =>
      compareTakes({ kit: mine.kit, take: own }, { kit: theirs.kit, take: other }),
    ),
  ];
}

/** Whether one was made from the other, or both from a third: then it makes sense to ask what differs. */
export function isKin(mine: Layout, theirs: Layout): boolean {
  const names = [mine.id, mine.parent].filter((name) => name !== undefined);
  return [theirs.id, theirs.parent].some((name) => name !== undefined && names.includes(name));
}
