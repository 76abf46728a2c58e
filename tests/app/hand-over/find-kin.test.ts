import { describe, expect, it } from 'vitest';
import { findKin } from '../../../app/hand-over/find-kin.ts';
import { firstRecord } from '../../../app/keep/kept-layout.ts';
import { demoLayout, type Layout } from '../../../src/index.ts';
import { fakeShelf } from '../fakes.ts';

const made = (id: string, parent?: string): Layout => ({
  ...demoLayout(),
  id,
  title: id,
  ...(parent && { parent }),
});

const shelfOf = (...layouts: readonly Layout[]) =>
  fakeShelf(new Map(layouts.map((layout, i) => [layout.id ?? '', firstRecord(layout, layout.id ?? '', i)])));

const found = async (mine: Layout, theirs: Layout, ...kept: readonly Layout[]) => {
  const kin = await findKin(mine, { shelf: shelfOf(...kept) }, theirs);
  return kin && [kin.layout.title, kin.isOpen];
};

describe('what another layout is held against', () => {
  it('is the layout that it was made from, wherever that is kept', async () => {
    expect(await found(made('open'), made('theirs', 'a'), made('b'), made('a'))).toEqual(['a', false]);
    expect(await found(made('a'), made('theirs', 'a'), made('a'))).toEqual(['a', true]);
  });

  it('is the very one before its parent, and this before what else has the same parent', async () => {
    const theirs = made('theirs', 'a');
    const [sibling, child] = [made('s', 'a'), made('c', 'theirs')];
    expect(await found(sibling, theirs, made('a'), child)).toEqual(['a', false]);
    expect(await found(sibling, theirs, child)).toEqual(['c', false]);
    expect(await found(sibling, theirs, made('b'))).toEqual(['s', true]);
    expect(await found(sibling, theirs, made('a'), made('theirs'))).toEqual(['theirs', false]);
  });

  it('is none where nothing is of its kin, or it has no name', async () => {
    expect(await found(made('open'), made('theirs', 'x'), made('a'), made('b'))).toBeNull();
    const { id: _, ...nameless } = made('x');
    expect(await found(made('open'), nameless, made('a'))).toBeNull();
  });

  it('is looked for in what is open alone where the shelf does not answer', async () => {
    const shelf = shelfOf(made('a'));
    shelf.fault = 'blocked';
    const theirs = made('theirs', 'a');
    expect(await findKin(made('open'), { shelf }, theirs)).toBeNull();
    expect((await findKin(made('a'), {}, theirs))?.isOpen).toBe(true);
  });
});
