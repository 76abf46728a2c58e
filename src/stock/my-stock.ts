import { applyEdit } from '../edit/apply.ts';
import { isSameBus, isSameKind, MY_OWN, mergeKit } from '../edit/merge-kit.ts';
import type { TakenKind } from '../edit/take-kinds.ts';
import type { Bus, Kit, Layout, ModuleKind, RibbonKind } from '../layout/layout.ts';
import { fail, ok, type Result } from '../layout/result.ts';
import { emptyKit } from '../layout/starter.ts';
import { crc32 } from '../share/checksum.ts';

export type KindSort = TakenKind['sort'];
export type AnyKind = ModuleKind | RibbonKind | Bus;

/** The kinds and buses that somebody has, whatever layout is on the screen. */
export interface MyStock {
  /** A layout with nothing in its case, so that it is opened, judged and saved like any other. */
  readonly layout: Layout;
  /** Marks of what each kind has been before, by `kindKey`: how a copy in a layout is told to be an older one. */
  readonly earlier: Readonly<Record<string, readonly string[]>>;
  /** Offers that were left, by their keys. */
  readonly left: readonly string[];
}

/** A stock with nothing in it; it says nothing of voltages and buses that nobody has put there. */
export const emptyStock = (): MyStock => ({
  layout: {
    format: 'ribbonwright',
    version: 1,
    title: 'My stock',
    kit: { voltages: [], buses: [], modules: [], ribbons: [] },
    takes: [{ id: 'stock', name: 'Stock', rows: [], supplies: [], modules: [], ribbons: [] }],
  },
  earlier: {},
  left: [],
});

export const listIn = (kit: Kit, sort: KindSort): readonly AnyKind[] =>
  ({ module: kit.modules, ribbon: kit.ribbons, bus: kit.buses })[sort];

const isSame = (sort: KindSort, a: AnyKind, b: AnyKind): boolean =>
  sort === 'bus' ? isSameBus(a as Bus, b as Bus) : isSameKind(a, b);

export const kindKey = (sort: KindSort, id: string): string => `${sort} ${id}`;

/** Text that is the same for the same data, whatever the order of its keys. */
function canonical(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  if (Array.isArray(value)) return `[${value.map(canonical).join()}]`;
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, each]) => `${JSON.stringify(key)}:${canonical(each)}`).join()}}`;
}

const bytesOf = (text: string): Uint8Array =>
  Uint8Array.from(
    [...text].flatMap((letter) => {
      const code = letter.codePointAt(0) ?? 0;
      return [code & 255, (code >> 8) & 255, code >> 16];
    }),
  );

const markOfText = (text: string): string => `${text.length}-${crc32(bytesOf(text)).toString(36)}`;

/** A short mark of what a kind is: what somebody owns, pays and notes of it aside. */
export function markOf(sort: KindSort, kind: AnyKind): string {
  const rest: Record<string, unknown> = { ...kind };
  for (const key of sort === 'bus' ? ['id', 'name'] : MY_OWN) delete rest[key];
  return markOfText(canonical(rest));
}

/** A short mark of all that a kind says. */
export const wholeMarkOf = (kind: AnyKind): string => markOfText(canonical(kind));

/** What is done to a stock. Data, so that it can be done to what another tab has made of the stock meanwhile. */
export type StockDeed =
  | {
      readonly do: 'keep';
      readonly from: Kit;
      readonly kinds: readonly TakenKind[];
      /** `wholeMarkOf` of the kinds whose place is taken, as they were when that was asked for; by id. */
      readonly seen?: Readonly<Record<string, string>>;
      /** Those whose id or name is taken stay out. */
      readonly onlyNew?: true;
    }
  | { readonly do: 'remove'; readonly sort: KindSort; readonly id: string }
  | { readonly do: 'leave'; readonly key: string }
  | { readonly do: 'look again' };

const MOST_EARLIER = 24;
const MOST_LEFT = 1000;

const SORTS: readonly KindSort[] = ['module', 'ribbon', 'bus'];

/** The marks of what has changed go to those of earlier days. */
function withEarlier({ earlier }: MyStock, before: Kit, after: Kit): MyStock['earlier'] {
  const added: Record<string, readonly string[]> = {};
  for (const sort of SORTS) {
    const now = new Map(listIn(after, sort).map((kind) => [kind.id, kind]));
    for (const kind of listIn(before, sort)) {
      const other = now.get(kind.id);
      if (!other || other === kind || isSame(sort, kind, other)) continue;
      const key = kindKey(sort, kind.id);
      const marks = [...(earlier[key] ?? []), markOf(sort, kind)];
      // One that it has gone back to is none of earlier days.
      const mark = markOf(sort, other);
      added[key] = [...new Set(marks)].filter((each) => each !== mark).slice(-MOST_EARLIER);
    }
  }
  return { ...earlier, ...added };
}

function withKit(stock: MyStock, layout: Layout): MyStock {
  if (layout === stock.layout) return stock;
  return { ...stock, layout, earlier: withEarlier(stock, stock.layout.kit, layout.kit) };
}

function changedMeanwhile({ layout }: MyStock, { kinds, seen = {} }: Extract<StockDeed, { do: 'keep' }>) {
  return kinds.find(({ sort, instead }) => {
    if (instead === undefined) return false;
    const now = listIn(layout.kit, sort).find(({ id }) => id === instead);
    return !now || (seen[instead] !== undefined && wholeMarkOf(now) !== seen[instead]);
  });
}

function keep(stock: MyStock, deed: Extract<StockDeed, { do: 'keep' }>): Result<MyStock, string> {
  const stale = changedMeanwhile(stock, deed);
  if (stale) return fail('It has changed in your stock meanwhile: look again');
  const isNew = ({ sort, id }: TakenKind): boolean => {
    const kind = listIn(deed.from, sort).find((each) => each.id === id);
    return !listIn(stock.layout.kit, sort).some((each) => each.id === id || each.name === kind?.name);
  };
  const kinds = deed.onlyNew ? deed.kinds.filter(isNew) : deed.kinds;
  const done = applyEdit(stock.layout, { type: 'take-kinds', from: deed.from, kinds });
  return done.ok ? ok(withKit(stock, done.value)) : fail(done.error.message);
}

const isUsed = ({ modules, ribbons }: Kit, bus: string): boolean =>
  ribbons.some((kind) => kind.bus === bus) ||
  modules.some(({ headers }) => headers.some((header) => header.bus === bus));

function remove(stock: MyStock, sort: KindSort, id: string): Result<MyStock, string> {
  const { layout } = stock;
  const { kit } = layout;
  if (sort === 'bus' && isUsed(kit, id)) return fail('Kinds in your stock use this bus');
  const without = <T extends { readonly id: string }>(list: readonly T[]): readonly T[] =>
    list.filter((kind) => kind.id !== id);
  const lists = {
    module: { modules: without(kit.modules) },
    ribbon: { ribbons: without(kit.ribbons) },
    bus: { buses: without(kit.buses) },
  };
  return ok({ ...stock, layout: { ...layout, kit: { ...kit, ...lists[sort] } } });
}

/** The stock after a deed, or why it was not done. */
export function changeStock(stock: MyStock, deed: StockDeed): Result<MyStock, string> {
  switch (deed.do) {
    case 'keep':
      return keep(stock, deed);
    case 'remove':
      return remove(stock, deed.sort, deed.id);
    case 'leave':
      return ok({ ...stock, left: [...new Set([...stock.left, deed.key])].slice(-MOST_LEFT) });
    case 'look again':
      return ok({ ...stock, left: [] });
  }
}

/** A kit for a new case: my stock, and the usual power headers that a board has. */
export const kitFromStock = ({ layout }: MyStock): Kit => mergeKit(layout.kit, emptyKit()).kit;

/** All kinds and buses of a kit. */
export const allOf = (kit: Kit): readonly TakenKind[] =>
  SORTS.flatMap((sort) => listIn(kit, sort).map(({ id }): TakenKind => ({ sort, id })));
