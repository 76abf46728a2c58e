import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkTake } from '../../src/checks/run.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import { solveTake } from '../../src/electrical/solution.ts';
import type { Layout, Take } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { partsOf } from '../../src/wiring/parts.ts';
import { anyDraw, editFrom } from '../edit/any-edit.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { bigLayout } from '../support/big-take.ts';
import { loopedLayout } from '../support/looped-layout.ts';
import { runs } from '../support/runs.ts';

const judge = ({ kit, takes }: Layout) =>
  takes.map((take) => {
    const derived = deriveTake(kit, take);
    // As text: to compare thousands of currents field by field takes longer than to work them out.
    return JSON.stringify([checkTake(derived), solveTake(derived)], null, 1);
  });

/** The same document without anything that a cache could know it by. */
const afresh = (layout: Layout): Layout => structuredClone(layout);

describe('what is kept from one layout to the next', () => {
  it.each([
    ['any layout', arbitraryLayout, 250],
    ['one with loops', loopedLayout, 90],
  ])(
    'never changes a note or a current of %s: after any edits they are those of the same document read afresh',
    (_, layouts, times) => {
      let changes = 0;
      const property = fc.property(
        layouts,
        fc.array(anyDraw, { minLength: 1, maxLength: 6 }),
        (layout, draws) => {
          let now = layout;
          judge(now);
          for (const draw of draws) {
            const done = applyEdit(now, editFrom(now, draw));
            if (!done.ok) continue;
            if (done.value !== now) changes++;
            now = done.value;
            expect(judge(now)).toEqual(judge(afresh(now)));
          }
          expect(judge(layout)).toEqual(judge(afresh(layout)));
        },
      );
      fc.assert(property, runs(times));
      expect(changes).toBeGreaterThan(100);
    },
  );

  it('is all but the part of the module that moves', () => {
    const { kit, takes } = bigLayout(60);
    const [take] = takes as readonly [Take];
    const [first, ...others] = take.modules;
    if (!first) throw new Error('no module');
    const before = deriveTake(kit, take);
    const after = deriveTake(kit, { ...take, modules: [{ ...first, atHp: first.atHp + 0.5 }, ...others] });
    const changed = after.parts.filter((part) => !before.parts.includes(part));
    expect(before.parts.length).toBe(10);
    expect(changed.map(({ places }) => places.modules[0]?.id)).toEqual([first.id]);
    const notes = new Set(checkTake(before).filter(({ level }) => level !== 'reminder'));
    const stay = checkTake(after).filter((note) => notes.has(note));
    expect(stay.length).toBe(notes.size);
  });
});

describe('parts', () => {
  it('hold every module and ribbon once, and all that a ribbon sits on with it', () => {
    const property = fc.property(arbitraryLayout, ({ takes }) => {
      for (const take of takes) {
        const parts = partsOf(take);
        const all = (list: 'modules' | 'ribbons') =>
          parts.flatMap((part) => [...part[list]]).sort((a, b) => a - b);
        expect(all('modules')).toEqual(take.modules.map((_, i) => i));
        expect(all('ribbons')).toEqual(take.ribbons.map((_, i) => i));
        const headers = new Map<string, number>();
        parts.forEach((part, at) => {
          const ids = new Set(part.modules.map((i) => take.modules[i]?.id));
          const ribbons = new Set(part.ribbons.map((i) => take.ribbons[i]?.id));
          for (const { on } of part.ribbons.flatMap((i) => take.ribbons[i]?.seats ?? [])) {
            if ('module' in on) expect(ids).toContain(on.module);
            else if ('ribbon' in on) expect(ribbons).toContain(on.ribbon);
            else {
              const key = JSON.stringify(on);
              expect(headers.get(key) ?? at).toBe(at);
              headers.set(key, at);
            }
          }
        });
      }
    });
    fc.assert(property, runs(200));
  });
});
