import type { Layout, Module, Row } from '../../src/layout/layout.ts';
import { bigLayout } from '../../tests/support/big-take.ts';

/** So many connectors has the ribbon that is laid, and so many modules stand ready for it. */
const LAID = 7;

const PITCH_HP = 5;
const FIRST_HP = 40;

const row: Row = { id: 'lay-row', widthHp: 168, heightU: 3, depthMm: 56 };

/** A host at the left, seen from the front, and voices beside it: nothing joins them yet. */
const modules: readonly Module[] = Array.from({ length: LAID }, (_, i) => ({
  id: `lay-${i}`,
  kind: i === 0 ? 'jetty' : 'cobble',
  row: row.id,
  atHp: FIRST_HP + PITCH_HP * i,
  label: `Free ${i + 1}`,
}));

/** So many modules, all linked and fed, and above them a row in which a long ribbon can be laid. */
export function layingLayout(count: number): Layout {
  const big = bigLayout(count);
  const [take] = big.takes;
  if (!take) throw new Error('no take');
  const { kit } = big;
  return {
    ...big,
    kit: { ...kit, ribbons: kit.ribbons.map((kind) => ({ ...kind, owned: 9999 })) },
    takes: [{ ...take, rows: [row, ...take.rows], modules: [...take.modules, ...modules] }],
  };
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where on the rear a laying starts and where it ends, from the boxes of the first and the last module. */
export function layingWay(first: Box, last: Box) {
  // Links of the demo's kinds are 38 mm above the lower edge of a panel of 128.4 mm.
  const y = first.y + first.height * (1 - 38 / 128.4);
  const middle = (box: Box): number => box.x + box.width / 2;
  return { y, fromX: middle(first), toX: middle(last), stepX: (middle(last) - middle(first)) / (LAID - 1) };
}
