import { describe, expect, it } from 'vitest';
import { openDocument } from '../../src/layout/open.ts';
import { emptyKit, emptyLayout } from '../../src/layout/starter.ts';

describe('an empty case', () => {
  it.each([
    ['with the kit of the demo', emptyLayout()],
    ['with an empty stock', emptyLayout(emptyKit())],
  ])('%s opens', (_, layout) => {
    expect(openDocument(structuredClone(layout))).toMatchObject({ ok: true });
    expect(layout.takes[0]?.modules).toEqual([]);
  });

  it('may have nothing in stock but voltages and the two power headers (common practice, no source)', () => {
    const { voltages, buses, modules, ribbons } = emptyKit();
    expect(voltages.map(({ volts }) => volts)).toEqual([12, -12, 5]);
    expect(buses.map(({ pinout }) => pinout.length)).toEqual([10, 16]);
    expect([...modules, ...ribbons]).toEqual([]);
  });
});
