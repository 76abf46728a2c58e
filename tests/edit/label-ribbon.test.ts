import { describe, expect, it } from 'vitest';
import { applied, littleLayout, refusalOf, ribbon, takeOf } from '../support/little-layout.ts';

const label = (text: string | null) =>
  ({ type: 'label-ribbon', take: 'take', ribbon: 'r', label: text }) as const;

const layout = littleLayout({ ribbons: [ribbon('r', 'shore3', [], { label: 'S1', locked: true })] });

describe('label-ribbon', () => {
  it('gives a label without the blanks around it, to a locked ribbon too', () => {
    expect(takeOf(applied(layout, label('  Left hand '))).ribbons[0]?.label).toBe('Left hand');
  });

  it('takes the label away for nothing and for blanks', () => {
    for (const none of [null, '', '  '])
      expect('label' in (takeOf(applied(layout, label(none))).ribbons[0] ?? {})).toBe(false);
  });

  it('gives back the very layout for the same label', () => {
    expect(applied(layout, label(' S1'))).toBe(layout);
  });

  it('is refused where it could not be opened again', () => {
    expect(refusalOf(layout, label('x'.repeat(1001)))).toBe('A label may have 1000 characters at most');
  });
});
