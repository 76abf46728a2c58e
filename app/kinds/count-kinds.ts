import type { Layout } from '../../src/index.ts';

/** Where modules of a kind stand. */
export interface Uses {
  /** In each take that has some. */
  readonly takes: readonly { readonly name: string; readonly count: number }[];
}

export const NO_USE: Uses = { takes: [] };

/** How many modules of each kind stand in the takes; kinds of which there are none are left out. */
export function countKinds({ takes }: Pick<Layout, 'takes'>): ReadonlyMap<string, Uses> {
  const counts = new Map<string, Uses>();
  for (const { name, modules } of takes) {
    const here = new Map<string, number>();
    for (const { kind } of modules) here.set(kind, (here.get(kind) ?? 0) + 1);
    for (const [kind, count] of here) {
      const { takes: before } = counts.get(kind) ?? NO_USE;
      counts.set(kind, { takes: [...before, { name, count }] });
    }
  }
  return counts;
}

/** "6 modules in Three jetties, 1 module in Another". */
export const usesWords = (takes: Uses['takes'], noun = 'module'): string =>
  takes
    .map(({ name, count }) => `${count}${noun && ` ${noun}${count === 1 ? '' : 's'}`} in ${name}`)
    .join(', ');
