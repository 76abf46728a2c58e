import type { Layout, Take } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';

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

/** An id made from a stem and the smallest free number: `cobble-3`. */
const freshId = (list: readonly { readonly id: string }[], stem: string): string =>
  new FreshNames(idsOf(list)).numbered(stem, '-');

/** The id that the next module of a kind gets in this take. */
export const freshModuleId = (take: Take, kindId: string): string => freshId(take.modules, kindId);

/** The id that the next ribbon of a kind gets in this take. */
export const freshRibbonId = (take: Take, kindId: string): string => freshId(take.ribbons, kindId);

/** The id that the next take gets in this layout. */
export const freshTakeId = (layout: Layout): string => freshId(layout.takes, 'take');

/** The next name in a series of names. */
export const nextInSeries = (names: readonly string[], stem: string): string =>
  new FreshNames(names).inSeries(stem);

/** The name for a copy among names. */
export const nameOfCopy = (names: readonly string[], name: string): string =>
  new FreshNames(names).copyOf(name);

/** Letters and the smallest free number: `S3`. */
export const nextMark = (labels: readonly string[], letters: string): string =>
  new FreshNames(labels).numbered(letters, '');

export const labelsOf = (labelled: readonly { readonly label?: string }[]): readonly string[] =>
  labelled.flatMap(({ label }) => label ?? []);
