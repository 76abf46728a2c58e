import { describe, expect, test } from 'vitest';
import { shownAnalysis } from '../../../app/editor.ts';
import { connectorWords, gapsOf } from '../../../app/store/seat-words.ts';
import type { DerivedTake } from '../../../src/index.ts';
import { gapOf } from '../../../src/index.ts';
import { Driver } from '../driver.ts';

function takeAt(index: number): DerivedTake {
  const driver = new Driver();
  const id = driver.editor.layouts.layout().takes[index]?.id ?? '';
  driver.editor.session.setState({ take: id });
  return shownAnalysis(driver.editor).derived;
}

const ribbonOf = (take: DerivedTake, id: string) => {
  const ribbon = take.wiring.ribbonById.get(id);
  if (!ribbon) throw new Error(`no ribbon ${id}`);
  return ribbon;
};

describe('a connector in words', () => {
  const [first, second] = [takeAt(0), takeAt(1)];

  test('says what it sits on and whether it lands, or by how much it misses', () => {
    expect(connectorWords(first, ribbonOf(first, 's1'), 3)).toBe('connector 4, Cobble 1, shore, lands');
    expect(connectorWords(first, ribbonOf(first, 's1'), 1)).toBe('connector 2, free');
    // Cobble 3 stands half an HP off: 2.54 mm.
    expect(connectorWords(second, ribbonOf(second, 's1'), 3)).toBe(
      'connector 4, Cobble 3, shore, 2.5 mm off',
    );
  });

  test('says of joints which ribbon they join', () => {
    expect(connectorWords(first, ribbonOf(first, 't2'), 2)).toBe('connector 3, connector 1 of T1, lands');
    expect(connectorWords(first, ribbonOf(first, 't1'), 0)).toBe(
      'connector 1, carries connector 3 of T2, lands',
    );
  });
});

describe('a gap in words', () => {
  const first = takeAt(0);

  test('of a ribbon that bends tells distance, height and radius of its arch', () => {
    const s2 = ribbonOf(first, 's2');
    const pair = first.neighbours.find(({ a, b }) => a.ribbon === s2 && b.connector + a.connector === 1);
    const arch = pair && gapOf(pair, first).arch;
    if (arch?.kind !== 'arch') throw new Error('no arch');
    const [high, radius] = [arch.heightMm, arch.radiusMm].map((mm) => Number(mm.toFixed(1)));
    expect(gapsOf(first, s2).get(0)).toEqual({
      to: 1,
      words: `over 25.4, ${high} high, radius ${radius}`,
      isGood: true,
    });
  });

  test('over a free connector reaches to the next seat', () => {
    expect(gapsOf(first, ribbonOf(first, 's1')).get(0)?.to).toBe(2);
  });

  test('of a lead tells how much of it its way needs', () => {
    // Board header 1 at 379 mm and 60 mm up, Harbour's power header at 38 and 64: 341 + 4, and 40 to spare.
    expect(gapsOf(first, ribbonOf(first, 'l1')).get(0)).toEqual({
      to: 1,
      words: 'needs 385 mm of 400 mm',
      isGood: true,
    });
  });
});
