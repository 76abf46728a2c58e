import { isShort, type Rehearsal } from '../../src/index.ts';

/** Lines that belong apart and would be one. */
export interface Group {
  /** A, B, C …, the worst first. */
  readonly letter: string;
  /** Short: two voltages, or one and GND. Voltage: one meets another line. Wrong: signals and GND only. */
  readonly sort: 'short' | 'voltage' | 'wrong';
  readonly ribbon: readonly string[];
  /** Only those that a contact touches. */
  readonly module: readonly string[];
  /** Lines that a short joins: the ribbon's, and those under it where these are fed too. */
  readonly shorted: readonly string[];
  /** What touches what within it, each pair once. */
  readonly links: Rehearsal['links'];
}

/** Lines of one side that touch several of the other: these make them one. */
export function tiedThrough({ links }: Group, side: 'ribbon' | 'module'): string[] {
  const touching = links.map((link) => link[side]);
  return [...new Set(touching)].filter((line) => touching.filter((other) => other === line).length > 1);
}

const SEVERITY: readonly Group['sort'][] = ['short', 'voltage', 'wrong'];

export const levelOf = ({ sort }: Group): 'damage' | 'fault' => (sort === 'wrong' ? 'fault' : 'damage');

/**
 * Everything joined that belongs apart; what meets its own name alone is left out, and so are open pins.
 * @param isFed - what it sits on has its lines from elsewhere, as a board has: to join these is a short too
 */
export function groupsOf(
  { links, joined }: Rehearsal,
  isVoltage: (line: string) => boolean,
  isFed: boolean,
): Group[] {
  const groups = joined.flatMap(({ ribbon, module }) => {
    const within = links.filter((link) => ribbon.includes(link.ribbon));
    if (within.every((link) => link.ribbon === link.module)) return [];
    const isShorted = isShort(ribbon, isVoltage) || (isFed && isShort(module, isVoltage));
    const meetsVoltage = [...ribbon, ...module].some(isVoltage);
    const sort: Group['sort'] = isShorted ? 'short' : meetsVoltage ? 'voltage' : 'wrong';
    const shorted = isFed ? [...new Set([...ribbon, ...module])] : ribbon;
    return [{ sort, ribbon, module, shorted, links: within }];
  });
  const rank = ({ sort }: Pick<Group, 'sort'>): number => SEVERITY.indexOf(sort);
  return groups.toSorted((a, b) => rank(a) - rank(b)).map((group, i) => ({ ...group, letter: letterOf(i) }));
}

/** A … Z, AA, AB …: a wide connector can have very many. */
const letterOf = (i: number): string =>
  (i < 26 ? '' : letterOf(Math.floor(i / 26) - 1)) + String.fromCharCode(65 + (i % 26));
