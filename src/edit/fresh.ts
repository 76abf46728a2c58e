import type { Layout, ModuleKind, RibbonKind, Take } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { remember } from '../layout/remember.ts';

/** The first name of a numbered family, counted from 1, that nobody bears. */
export function firstFree(taken: ReadonlySet<string>, nameOf: (number: number) => string): string {
  let number = 1;
  while (taken.has(nameOf(number))) number++;
  return nameOf(number);
}

const NUMBER_AT_END = / \d+$/;

/** Room for what is put after a stem, so that the whole can still be saved. */
const AFTER_STEM = 12;

/** A stem short enough to be numbered; half a character is not left at its end. */
const fitting = (stem: string): string =>
  stem.slice(0, OPEN_LIMITS.name.most - AFTER_STEM).replace(/[\ud800-\udbff]$/, '');

/** Names that somebody bears. Gives out others, and those it gave out are borne from then on. */
export class FreshNames {
  readonly #borne = new Set<string>();
  /** Every name, and every numbered name without its number. */
  readonly #series = new Set<string>();
  /** The number to try first: names are never given back. */
  readonly #next = new Map<string, number>();

  constructor(borne: Iterable<string>) {
    for (const name of borne) this.bear(name);
  }

  isBorne(name: string): boolean {
    return this.#borne.has(name);
  }

  bear(name: string): string {
    this.#borne.add(name);
    this.#series.add(name).add(name.replace(NUMBER_AT_END, ''));
    return name;
  }

  /** A stem and the smallest free number after it: `cobble-3`, `S3`. */
  numbered(stem: string, between: string): string {
    return this.#firstFree(fitting(stem) + between, () => false);
  }

  /**
   * The next name in a series: the stem alone while nobody bears it or a numbered form of it, else the stem and
   * the smallest free number. A bare stem is number 1.
   */
  inSeries(stem: string): string {
    if (!this.#series.has(stem)) return this.bear(stem);
    return this.#firstFree(`${fitting(stem)} `, (number) => number === 1 && this.#borne.has(stem));
  }

  /** The name for a copy. `family` is a name whose own last number does not count: a kind called "Mark 2". */
  copyOf(name: string, family = name.replace(NUMBER_AT_END, '')): string {
    return this.inSeries(isInSeries(name, family) ? family : name.replace(NUMBER_AT_END, ''));
  }

  #firstFree(start: string, isTaken: (number: number) => boolean): string {
    let number = this.#next.get(start) ?? 1;
    while (this.#borne.has(start + number) || isTaken(number)) number++;
    this.#next.set(start, number + 1);
    return this.bear(start + number);
  }
}

const isInSeries = (name: string, stem: string): boolean =>
  name === stem || (name.startsWith(`${stem} `) && name.replace(NUMBER_AT_END, '') === stem);

export const idsOf = (list: readonly { readonly id: string }[]): readonly string[] =>
  list.map(({ id }) => id);

const idSet = remember(
  (list: readonly { readonly id: string }[]): ReadonlySet<string> => new Set(idsOf(list)),
);

/** An id made from a stem and the smallest free number: `cobble-3`. */
function freshId(list: readonly { readonly id: string }[], stem: string): string {
  const start = `${fitting(stem)}-`;
  return firstFree(idSet(list), (number) => start + number);
}

/** The id that the next module of a kind gets in this take. */
export const freshModuleId = (take: Take, kindId: string): string => freshId(take.modules, kindId);

/** The id that the next ribbon of a kind gets in this take. */
export const freshRibbonId = (take: Take, kindId: string): string => freshId(take.ribbons, kindId);

/** The id that the next row gets in this take. */
export const freshRowId = ({ rows }: Pick<Take, 'rows'>): string => freshId(rows, 'row');

/** The id that the next supply gets in this take. */
export const freshSupplyId = ({ supplies }: Take): string => freshId(supplies, 'supply');

/** The id that the next board gets in this take; boards are named across all supplies. */
export const freshBoardId = ({ supplies }: Take): string =>
  freshId(
    supplies.flatMap(({ boards }) => boards),
    'board',
  );

/** The id that the next take gets in this layout. */
export const freshTakeId = (layout: Layout): string => freshId(layout.takes, 'take');

/** The next name in a series of names. */
export const nextInSeries = (names: readonly string[], stem: string): string =>
  new FreshNames(names).inSeries(stem);

/** The name for a copy among names. */
export const nameOfCopy = (names: readonly string[], name: string): string =>
  new FreshNames(names).copyOf(name);

/** Letters and the smallest free number: `S3`. */
export function nextMark(labels: readonly string[], letters: string): string {
  const start = fitting(letters);
  return firstFree(new Set(labels), (number) => start + number);
}

export const labelsOf = (labelled: readonly { readonly label?: string }[]): readonly string[] =>
  labelled.flatMap(({ label }) => label ?? []);

/** Longer ids would stand in every module of the kind. */
const LONGEST_STEM = 40;

/**
 * An id for a kind or bus of this name that nobody in the list has: the name in small letters, numbered on from 2
 * where it is taken; "kind" where the name has no letter or digit.
 */
export function freshKindId(list: readonly { readonly id: string }[], name: string): string {
  const words = name.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  const stem = [...words.join('-')].slice(0, LONGEST_STEM).join('') || 'kind';
  const taken = new Set(list.map(({ id }) => id));
  return taken.has(stem)
    ? firstFree(new Set([...taken, `${stem}-1`]), (number) => `${stem}-${number}`)
    : stem;
}

const COPY_AT_END = /, copy( \d+)?$/;

/** A copy of a kind under a name and id of its own, to be changed; it is not said that one owns any of it. */
export function copyOfKind<K extends ModuleKind | RibbonKind>(
  kinds: readonly K[],
  { owned: _, ...kind }: K,
): K {
  const names = kinds.map(({ name }) => name);
  const name = nextInSeries(names, `${kind.name.replace(COPY_AT_END, '')}, copy`);
  return { ...kind, id: freshKindId(kinds, name), name } as K;
}
