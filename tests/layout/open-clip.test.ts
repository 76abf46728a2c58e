import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openClip } from '../../src/document.ts';
import { clipOf } from '../../src/edit/clip-of.ts';
import { clipText } from '../../src/layout/clip.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { runs } from '../support/runs.ts';

const { kit, takes } = demoLayout();
const [take] = takes;
if (!take) throw new Error('no take');
const clip = clipOf(kit, take, take.modules.slice(1, 5));
const data = JSON.parse(clipText(clip));

const why = (text: string): string | null => {
  const opened = openClip(text);
  if (opened.ok) return null;
  return opened.error.kind === 'unusable' ? opened.error.why : opened.error.kind;
};
const whyNot = (change: object): string | null => why(JSON.stringify({ ...data, ...change }));

describe('the text of a clip', () => {
  it('opens as what it was', () => {
    expect(openClip(clipText(clip))).toEqual({ ok: true, value: clip });
    const property = fc.property(arbitraryLayout, (layout) => {
      for (const each of layout.takes) {
        if (each.modules.length === 0) continue;
        const any = clipOf(layout.kit, each, each.modules);
        // Text has no −0: a key that this program does not know may hold one.
        expect(openClip(clipText(any))).toEqual({ ok: true, value: JSON.parse(JSON.stringify(any)) });
      }
    });
    fc.assert(property, runs(60));
  });

  it.each([
    '',
    'a shopping list',
    '{',
    'null',
    '[1, 2]',
    '"ribbonwright-clip"',
    '{"format":"ribbonwright"}',
    '[['.repeat(50_000),
    'x'.repeat(8_000_001),
  ])('is told from any other text', (text) => {
    expect(why(text)).toBe('not-a-clip');
  });

  it('is judged as a file is', () => {
    expect(whyNot({ version: 2 })).toContain('newer program');
    expect(whyNot({ version: undefined })).toContain('version');
    expect(whyNot({ modules: undefined })).toContain('modules');
    expect(whyNot({ modules: 7 })).toContain('modules');
    expect(whyNot({ modules: [], ribbons: [] })).toBe('there is no module in it');
    expect(whyNot({ rows: [] })).toContain('no row');
    expect(whyNot({ kit: { ...data.kit, modules: [] } })).toContain('no module kind');
    expect(whyNot({ kit: { ...data.kit, buses: [] } })).toContain('no bus');
    expect(whyNot({ modules: data.modules.slice(1) })).toContain('no module');
    expect(whyNot({ modules: [{ ...data.modules[0], atHp: '5' }] })).toContain('atHp');
    const onBoard = { ...data.ribbons[0], seats: [{ connector: 0, on: { board: 'b', header: '1' } }] };
    expect(whyNot({ ribbons: [onBoard] })).toContain('no board');
    expect(why(clipText(clip).replace('"kit":{', '"kit":{"__proto__":{},'))).toContain('__proto__');
  });

  it('is refused where it holds more than can be pasted at once', () => {
    const [one] = data.modules;
    const modules = Array.from({ length: 2001 }, (_, i) => ({ ...one, id: `m${i}` }));
    expect(whyNot({ modules, ribbons: [] })).toBe('more than 2000 modules at once');
    const ribbons = Array.from({ length: 4001 }, (_, i) => ({ ...data.ribbons[0], id: `r${i}`, seats: [] }));
    expect(whyNot({ ribbons })).toBe('more than 4000 ribbons at once');
  });

  it('never throws, whatever is broken in it', () => {
    const text = clipText(clip);
    const property = fc.property(
      fc.nat({ max: text.length - 1 }),
      fc.nat({ max: 40 }),
      fc.constantFrom('', '"', '}', ']', '9', 'null', ',', '{"a":1}'),
      (at, length, put) => {
        const opened = openClip(text.slice(0, at) + put + text.slice(at + length));
        if (!opened.ok && opened.error.kind === 'unusable') expect(opened.error.why).toMatch(/\S/);
      },
    );
    fc.assert(property, runs(300));
  });
});
