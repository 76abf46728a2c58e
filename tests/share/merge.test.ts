import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/edit/apply.ts';
import type { Edit } from '../../src/edit/edit.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { changedBy, differingKeys, isSameContent, merge, nearestTo } from '../../src/share/merge.ts';
import { differingParts } from '../../src/share/merge-parts.ts';
import { partWords } from '../../src/share/merge-words.ts';
import { anyDraw, editFrom } from '../edit/any-edit.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { deepFreeze } from '../support/deep-freeze.ts';
import { whyNotOpened } from '../support/opened.ts';
import { runs } from '../support/runs.ts';

/** What random hands make of a layout. */
function worked(layout: Layout, draws: readonly (readonly number[])[]): Layout {
  return draws.reduce((before, draw) => {
    const done = applyEdit(before, editFrom(before, draw));
    return done.ok ? done.value : before;
  }, layout);
}

const draws = fc.array(anyDraw, { maxLength: 12 });

/** Two layouts of which one descends from the other, or both from a third; now and then two strangers. */
const pair = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .tuple(arbitraryLayout, draws, draws)
      .map(([base, a, b]) => [worked(base, a), worked(base, b)] as const),
  },
  { weight: 1, arbitrary: fc.tuple(arbitraryLayout, arbitraryLayout) },
);

const named = (layout: Layout, of: Layout): Layout => {
  const { id, parent, ...rest } = layout;
  return {
    ...rest,
    ...(of.id !== undefined && { id: of.id }),
    ...(of.parent !== undefined && { parent: of.parent }),
  };
};

describe('a mixture of two layouts', () => {
  it('of all that is theirs says what theirs says, of all that is mine is mine', () => {
    fc.assert(
      fc.property(pair, ([mine, theirs]) => {
        deepFreeze(mine);
        deepFreeze(theirs);
        const all = merge(mine, theirs, differingKeys(mine, theirs), 'theirs');
        expect(all.layout).toEqual(named(theirs, mine));
        expect(isSameContent(all.layout, theirs)).toBe(true);
        const none = merge(mine, theirs, new Set(), 'mine');
        expect(none.layout).toEqual(mine);
        expect([...all.along, ...none.along]).toEqual([]);
      }),
      runs(60),
    );
  });

  it('of any parts opens, and every part comes from where it is said to come from', () => {
    fc.assert(
      fc.property(
        pair,
        fc.infiniteStream(fc.boolean()),
        fc.constantFrom('mine' as const, 'theirs' as const),
        ([mine, theirs], coin, toward) => {
          const wanted = new Set([...differingKeys(mine, theirs)].filter(() => coin.next().value));
          const { layout, chosen, along } = merge(mine, theirs, wanted, toward);
          expect(whyNotOpened(layout)).toBeUndefined();
          // What came along came from that side, and nothing else was turned.
          const turned = new Set(along);
          for (const key of differingKeys(mine, theirs)) {
            if (turned.has(key)) expect(chosen.has(key)).toBe(toward === 'theirs');
            else expect(chosen.has(key)).toBe(wanted.has(key));
          }
          // Held against mine it differs in what was chosen, and in nothing else; order aside, which a mixture may have of its own.
          const orders = (keys: Iterable<string>) =>
            [...keys].filter((key) => !key.includes('order/')).sort();
          expect(orders(differingKeys(mine, layout))).toEqual(orders(chosen));
        },
      ),
      runs(80),
    );
  });

  it('is told in words, part by part', () => {
    fc.assert(
      fc.property(pair, ([mine, theirs]) => {
        const parts = differingParts(mine, theirs);
        expect(new Set(parts.map(({ key }) => key)).size).toBe(parts.length);
        for (const words of partWords(mine, theirs, parts).values()) expect(words).toMatch(/\S\.$/);
        expect(partWords(mine, theirs, parts).size).toBe(parts.length);
      }),
      runs(30),
    );
  });
});

const base = demoLayout();
const take = 'three-jetties';

function edited(layout: Layout, ...edits: Edit[]): Layout {
  return edits.reduce((before, edit) => {
    const done = applyEdit(before, edit);
    if (!done.ok) throw new Error(done.error.message);
    return done.value;
  }, layout);
}

describe('what depends on what', () => {
  const theirs = edited(
    base,
    { type: 'remove-modules', take, modules: ['kelp'] },
    { type: 'rename-layout', title: 'Tour' },
  );
  const key = (room: string, id: string, of = take): string => JSON.stringify([of, room, id]);

  it('a module that they took out takes the lead along that hangs on it', () => {
    const { layout, along } = merge(base, theirs, new Set([key('take/modules', 'kelp')]), 'theirs');
    const words = partWords(base, theirs, differingParts(base, theirs));
    expect(along.map((each) => words.get(each))).toEqual(['L7 taken out.']);
    expect(layout.title).toBe(base.title);
  });

  it('kept after all, the lead keeps the module', () => {
    const all = differingKeys(base, theirs);
    const lead = [...all].find((each) => each.includes('take/ribbons')) ?? '';
    const { along, layout } = merge(base, theirs, new Set([...all].filter((each) => each !== lead)), 'mine');
    expect(along).toEqual([key('take/modules', 'kelp')]);
    expect(layout.title).toBe('Tour');
  });

  it('the other way round, a ribbon takes along the module that only they have', () => {
    const ribbon = [...differingKeys(theirs, base)].find((each) => each.includes('take/ribbons')) ?? '';
    const { along } = merge(theirs, base, new Set([ribbon]), 'theirs');
    expect(along).toEqual([key('take/modules', 'kelp')]);
  });

  it('of what both come from it is known who changed what', () => {
    const mine = edited(
      base,
      { type: 'rename-layout', title: 'Home' },
      { type: 'label-ribbon', take, ribbon: 's3', label: 'Low' },
    );
    const parts = differingParts(mine, theirs);
    const [sinceMine, sinceTheirs] = [differingKeys(base, mine), differingKeys(base, theirs)];
    const by = parts.map((part) => [part.id, changedBy(part, sinceMine, sinceTheirs)]);
    expect(by).toEqual(
      expect.arrayContaining([
        ['title', 'both'],
        ['s3', 'mine'],
        ['kelp', 'theirs'],
      ]),
    );
    expect(nearestTo(theirs, [mine, base])).toBe(base);
  });
});
