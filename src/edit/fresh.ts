import type { Layout, ModuleKind, RibbonKind, Take } from '../layout/layout.ts';

/** The first name of a numbered family, counted from 1, that nobody bears. */
export function firstFree(taken: ReadonlySet<string>, nameOf: (number: number) => string): string {
  let number = 1;
  while (taken.has(nameOf(number))) number++;
  return nameOf(number);
}

/** An id made from a stem and the smallest free number: `cobble-3`. */
export const freshId = (list: readonly { readonly id: string }[], stem: string): string =>
  firstFree(new Set(list.map(({ id }) => id)), (number) => `${stem}-${number}`);

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

const NUMBER_AT_END = / \d+$/;

const isInSeries = (name: string, stem: string): boolean =>
  name === stem || (name.startsWith(`${stem} `) && name.replace(NUMBER_AT_END, '') === stem);

/**
 * The next name in a series: the stem alone while nobody bears it or a numbered form of it, else the stem and
 * the smallest free number. A bare stem is number 1.
 */
export function nextInSeries(names: readonly string[], stem: string): string {
  const series = names.filter((name) => isInSeries(name, stem));
  if (series.length === 0) return stem;
  const taken = new Set(series.map((name) => (name === stem ? `${stem} 1` : name)));
  return firstFree(taken, (number) => `${stem} ${number}`);
}

/** The name for a copy. `family` is a name whose own last number does not count: a kind called "Mark 2". */
export function nameOfCopy(
  names: readonly string[],
  name: string,
  family = name.replace(NUMBER_AT_END, ''),
): string {
  return nextInSeries(names, isInSeries(name, family) ? family : name.replace(NUMBER_AT_END, ''));
}

/** Letters and the smallest free number: `S3`. */
export const nextMark = (labels: readonly string[], letters: string): string =>
  firstFree(new Set(labels), (number) => `${letters}${number}`);

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
