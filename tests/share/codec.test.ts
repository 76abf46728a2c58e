import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { openDocument } from '../../src/layout/open.ts';
import { emptyKit, emptyLayout } from '../../src/layout/starter.ts';
import { writeLayout } from '../../src/layout/write.ts';
import { pack, unpack } from '../../src/share/codec.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { bigLayout } from '../support/big-take.ts';
import { deepFreeze } from '../support/deep-freeze.ts';
import { FIXTURE } from '../support/fixture.ts';
import { fortyModules } from '../support/forty-modules.ts';
import { anyLayout } from '../support/little-layout.ts';
import { runs } from '../support/runs.ts';
import { strangeLayout } from '../support/strange-layout.ts';

/** Packs and unpacks; what comes out must be what went in, to the last digit and the sign of zero. */
function expectSame(layout: Layout): void {
  const packed = pack(deepFreeze(layout));
  if (!packed.ok) throw new Error(packed.error);
  const unpacked = unpack(packed.value);
  if (!unpacked.ok) throw new Error(unpacked.error);
  const { value } = unpacked;
  if (!isDeepStrictEqual(value, layout)) expect(value).toEqual(layout);
  expect(writeLayout(value as Layout)).toBe(writeLayout(layout));
  expect(openDocument(value).ok).toBe(true);
}

const own = <T>(value: T): T => JSON.parse(JSON.stringify(value));

describe('packing and unpacking', () => {
  it.each<[string, Layout]>([
    ['the demo', demoLayout()],
    ['a file with every field', JSON.parse(FIXTURE)],
    ['an empty case', emptyLayout()],
    ['an empty stock', emptyLayout(emptyKit())],
    ['forty modules', fortyModules()],
    ['150 modules', bigLayout(150)],
  ])('gives back %s', (_, layout) => {
    expectSame(own(layout));
  });

  it('gives back any layout', () => {
    fc.assert(
      fc.property(arbitraryLayout, (layout) => expectSame(own(layout))),
      runs(60),
    );
  });

  it('gives back any little layout', () => {
    fc.assert(
      fc.property(anyLayout, (layout) => expectSame(own(layout))),
      runs(60),
    );
  });

  it('gives back the strangest layouts: unknown keys anywhere, any text, any figure', () => {
    let opened = 0;
    fc.assert(
      fc.property(strangeLayout, (layout) => {
        if (!openDocument(layout).ok) return;
        opened++;
        expectSame(layout);
      }),
      runs(100),
    );
    expect(opened).toBeGreaterThan(50);
  });

  it.each(['', '\u0000', '\ud83e', '\udd41\ud83e', '🥁', '\uffff', 'ﬁ\u0301', ' '.repeat(500)])(
    'gives back the text %j to the last unit',
    (notes) => {
      expectSame({ ...own(emptyLayout()), notes });
    },
  );

  it.each([-0, 0.1 + 0.2, 1e-9, 5e-324, 2 ** 29 + 0.5, -999_999_999.999, 76.19999999999999])(
    'gives back the figure %d to the last digit',
    (atHp) => {
      const layout = own(demoLayout());
      const [take] = layout.takes;
      const modules = take?.modules.map((module) => ({ ...module, atHp })) ?? [];
      expectSame({ ...layout, takes: [{ ...take, modules }] } as Layout);
    },
  );

  it('keeps what stands in the first take and the second apart', () => {
    const layout = own(demoLayout());
    const [first] = layout.takes;
    if (!first) throw new Error('no take');
    const turned = {
      ...own(first),
      id: 'b',
      modules: [...own(first.modules)].reverse(),
      ribbons: [...own(first.ribbons)].reverse(),
    };
    const some = { ...own(first), id: 'c', modules: first.modules.slice(3), ribbons: [] };
    expectSame({ ...layout, takes: [first, turned, some, { ...own(first), id: 'd' }] });
  });

  it('gives the same bytes for the same layout, whatever the order of its keys', () => {
    const turn = (value: unknown): unknown => {
      if (typeof value !== 'object' || value === null) return value;
      if (Array.isArray(value)) return value.map(turn);
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([key, item]) => [key, turn(item)]),
      );
    };
    const layout = JSON.parse(FIXTURE);
    expect(pack(turn(layout) as Layout)).toEqual(pack(layout));
  });
});
