import { describe, expect, it } from 'vitest';
import { checkLayout } from '../../src/checks/check-layout.ts';
import { example, onModule, onRibbon, ribbon, ribbonKind } from '../../src/checks/example.ts';
import type { Layout } from '../../src/layout/layout.ts';

/** Findings of a check; drawings made to be slow have millions, and the program tells 20,000. */
const MOST = 20_000;

const countOf = (layout: Layout, check: string): number =>
  checkLayout(layout).flatMap(({ notes }) => notes.filter((note) => note.check === check)).length;

const voices = (n: number, atHp: (i: number) => number) =>
  Array.from({ length: n }, (_, i) => [`m${i}`, 'voice', atHp(i)] as const);

describe('a drawing made to be slow', () => {
  it('twenty thousand modules on one spot: 200 million pairs', () => {
    expect(countOf(example({ modules: voices(20_000, () => 0) }), 'overlap')).toBe(MOST);
  });

  it('thousands of ribbons on one another', () => {
    const layout = example({
      modules: voices(4000, (i) => (i % 2 ? 0 : 5)),
      ribbons: Array.from({ length: 2000 }, (_, i) =>
        ribbon(`r${i}`, 'stiff', [onModule(0, `m${2 * i}`), onModule(1, `m${2 * i + 1}`)]),
      ),
    });
    expect(countOf(layout, 'ribbons-clash')).toBe(MOST);
  });

  it('ribbons plugged into a tree with a module at every leaf ends', () => {
    const many = ribbonKind('many', []);
    const sockets = Array.from({ length: 100 }, (_, i) => ({ atMm: 5 + i }));
    const kind = { ...many, connectors: [{ atMm: 0, type: 'plug' as const }, ...sockets] };
    const parent = (i: number): string => (i < 100 ? 'root' : `r${Math.floor(i / 100) - 1}`);
    const layout = example({
      ribbonKinds: [kind],
      modules: voices(2000, (i) => i),
      ribbons: [
        ribbon('root', 'many', []),
        ...Array.from({ length: 2000 }, (_, i) =>
          ribbon(`r${i}`, 'many', [onRibbon(0, parent(i), (i % 100) + 1), onModule(50, `m${i}`)]),
        ),
      ],
    });
    expect(countOf(layout, 'short-ribbon')).toBeGreaterThan(1000);
  });
});
