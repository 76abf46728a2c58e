import type { Branch, Tree } from './tree.ts';

/** Where the keys stand in the list, and what of it is open. */
export interface Standing {
  readonly at: string;
  readonly open: ReadonlySet<string>;
}

/** What shows, top to bottom. */
export function shownIn({ roots }: Tree, open: ReadonlySet<string>): readonly Branch[] {
  const shown: Branch[] = [];
  const add = (branches: readonly Branch[]): void => {
    for (const branch of branches) {
      shown.push(branch);
      if (open.has(branch.id)) add(branch.children);
    }
  };
  add(roots);
  return shown;
}

const withOpen = (open: ReadonlySet<string>, ids: readonly string[]): ReadonlySet<string> =>
  ids.every((id) => open.has(id)) ? open : new Set([...open, ...ids]);

export function withShut(open: ReadonlySet<string>, id: string): ReadonlySet<string> {
  const less = new Set(open);
  less.delete(id);
  return less;
}

/** Stands on an item, with all open that it lies in. */
export function standOn({ open }: Standing, branch: Branch): Standing {
  const over: string[] = [];
  for (let up = branch.parent; up; up = up.parent) over.push(up.id);
  return { at: branch.id, open: withOpen(open, over) };
}

/** Keys as trees on a page have them; nothing for a key that means nothing to a tree. */
export function stepBy(tree: Tree, shown: readonly Branch[], now: Standing, key: string): Standing | null {
  const { open } = now;
  const here = tree.byId.get(now.at);
  if (!here) return null;
  const go = (to: Branch | null | undefined): Standing => (to ? { at: to.id, open } : now);
  const isOpen = here.children.length > 0 && open.has(here.id);
  switch (key) {
    case 'ArrowDown':
      return go(shown[shown.indexOf(here) + 1]);
    case 'ArrowUp':
      return go(shown[shown.indexOf(here) - 1]);
    case 'Home':
      return go(shown[0]);
    case 'End':
      return go(shown.at(-1));
    case 'ArrowRight':
      if (isOpen) return go(here.children[0]);
      return here.children.length > 0 ? { at: here.id, open: withOpen(open, [here.id]) } : now;
    case 'ArrowLeft':
      return isOpen ? { at: here.id, open: withShut(open, here.id) } : go(here.parent);
    case '*': {
      const siblings = here.parent?.children ?? tree.roots;
      const full = siblings.filter(({ children }) => children.length > 0).map(({ id }) => id);
      return { at: here.id, open: withOpen(open, full) };
    }
    default:
      return null;
  }
}

/**
 * The next item that shows and begins with what was typed, round again from the start; the same letter over and over
 * goes from one to the next.
 */
export function typeTo(
  shown: readonly Branch[],
  at: string,
  typed: string,
  nameOf: (branch: Branch) => string,
): Branch | undefined {
  const wanted = typed.toLowerCase();
  const [first = ''] = wanted;
  const isOneLetter = [...wanted].every((letter) => letter === first);
  const find = isOneLetter ? first : wanted;
  const here = shown.findIndex(({ id }) => id === at);
  const from = isOneLetter ? here + 1 : Math.max(0, here);
  for (let i = 0; i < shown.length; i++) {
    const branch = shown[(from + i) % shown.length] as Branch;
    if (nameOf(branch).toLowerCase().startsWith(find)) return branch;
  }
  return undefined;
}

/** Ids to stand on when an item is gone, the nearest first: those after it, those before it, then what it lay in. */
export function trailOf({ byId, roots }: Tree, id: string): readonly string[] {
  const trail: string[] = [];
  for (let branch = byId.get(id) ?? null; branch; branch = branch.parent) {
    const siblings = branch.parent?.children ?? roots;
    trail.push(branch.id);
    for (let i = branch.place + 1; i < siblings.length; i++) trail.push((siblings[i] as Branch).id);
    for (let i = branch.place - 1; i >= 0; i--) trail.push((siblings[i] as Branch).id);
  }
  return trail;
}

/** The first of a trail that is still there; else the first of all. */
export const survivorOf = ({ byId, roots }: Tree, trail: readonly string[]): Branch | undefined => {
  const id = trail.find((one) => byId.has(one));
  return id === undefined ? roots[0] : byId.get(id);
};
