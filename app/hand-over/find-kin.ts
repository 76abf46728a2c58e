import type { Layout } from '../../src/index.ts';
import { isKin, nearestTo } from '../../src/share.ts';
import { isKept, lastUsed } from '../keep/kept-layout.ts';
import { openKept } from '../keep/open-kept.ts';
import type { Shelf } from '../platform/storage.ts';
import type { States } from '../store/keep.ts';

/** The layout of mine that another one is best held against. */
export interface Kin {
  readonly layout: Layout;
  readonly isOpen: boolean;
  /** What mine was when the other one was made from it, as far as that can be told from the states that are kept. */
  readonly before?: Layout;
}

/** How near a layout of mine is to another: the very one first, then the one it was made from, then what was made from it. */
function nearness({ id, parent }: Layout, theirs: Layout): number {
  if (id !== undefined && id === theirs.id) return 0;
  if (id !== undefined && id === theirs.parent) return 1;
  return parent !== undefined && parent === theirs.id ? 2 : 3;
}

interface Places {
  readonly shelf?: Shelf | undefined;
  readonly states?: States | null;
}

/** What both most likely come from: of all that mine was, what the other differs from in the fewest parts. */
async function commonLayout(
  mine: Layout,
  states: States | null | undefined,
  theirs: Layout,
): Promise<Layout | undefined> {
  const id = mine.id ?? '';
  const kept = await states?.of(id);
  if (!kept?.ok || kept.value.length === 0) return undefined;
  const opened = await Promise.all(kept.value.map(({ text }) => openKept({ id, text })));
  return nearestTo(theirs, [mine, ...opened.flatMap((one) => (one.ok ? [one.value] : []))]);
}

/** Of all that is kept what was made from the other, or the other from it, or both from a third; the one open where it is as near. */
export async function findKin(mine: Layout, { shelf, states }: Places, theirs: Layout): Promise<Kin | null> {
  const names = [theirs.id, theirs.parent].filter((name) => name !== undefined);
  const found = names.length > 0 ? await shelf?.all() : undefined;
  const kept = found?.ok ? found.value.filter(isKept) : [];
  const others = kept
    // Most need not be opened to see that they have nothing to do with it.
    .filter(({ id, text }) => id !== mine.id && names.some((name) => text.includes(JSON.stringify(name))))
    .sort((a, b) => lastUsed(b) - lastUsed(a));
  // One that is open itself is held against the others.
  const all: Kin[] = mine === theirs ? [] : [{ layout: mine, isOpen: true }];
  for (const record of others) {
    const opened = await openKept(record);
    if (opened.ok) all.push({ layout: opened.value, isOpen: false });
  }
  const kin = all.filter(({ layout }) => isKin(layout, theirs));
  const nearest = kin.reduce<Kin | null>(
    (best, one) => (best && nearness(best.layout, theirs) <= nearness(one.layout, theirs) ? best : one),
    null,
  );
  const before = nearest && (await commonLayout(nearest.layout, states, theirs));
  return nearest && { ...nearest, ...(before && { before }) };
}
