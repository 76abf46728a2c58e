import { describe, expect, it } from 'vitest';
import { HEAT_STEPS, heatColours } from '../../../app/canvas/draw/heat.ts';
import { THEMES, type Theme } from '../../../app/canvas/theme.ts';

/** Relative luminance of a colour such as #0a3c7f (WCAG 2.2, definition of relative luminance). */
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio (WCAG 2.2, definition of contrast ratio). */
function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

/** Least contrast of text (WCAG 2.2, success criterion 1.4.3, level AA). */
const AA = 4.5;

/** Least contrast of what is not text (WCAG 2.2, success criterion 1.4.11). */
const AA_SHAPE = 3;

const TEXTS: readonly (readonly [ink: keyof Theme, ground: keyof Theme])[] = [
  ['ink', 'bench'],
  ['ink', 'sheet'],
  ['inkSoft', 'bench'],
  ['inkSoft', 'sheet'],
  ['inkFaint', 'bench'],
  ['inkFaint', 'sheet'],
  ['brass', 'bench'],
  ['ink', 'panel'],
  ['boardInk', 'board'],
  ['connector', 'callout'],
  ['markInk', 'mark'],
  ['markInk', 'fault'],
];

const isRed = (colour: string): boolean => {
  const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16)) as [
    number,
    number,
    number,
  ];
  return r > 90 && g < r / 2 && b < r / 2;
};

describe.each(Object.entries(THEMES))('the %s theme', (_, theme) => {
  it.each(TEXTS)('lets %s be read on %s', (ink, ground) => {
    expect(contrast(theme[ink] as string, theme[ground] as string)).toBeGreaterThanOrEqual(AA);
  });

  it('lets letters of buses be read', () => {
    for (const { fill, ink } of theme.buses) expect(contrast(fill, ink)).toBeGreaterThanOrEqual(AA);
  });

  it('lets names be read on every step of the heat map, and the first step be as if there were none', () => {
    for (const [side, ink, cold] of [
      ['rear', theme.boardInk, theme.board],
      ['front', theme.ink, theme.panel],
    ] as const) {
      const colours = heatColours(theme, side);
      expect(colours).toHaveLength(HEAT_STEPS.length + 1);
      expect(new Set(colours).size).toBe(colours.length);
      expect(colours[0]).toBe(cold);
      for (const ground of colours) {
        expect(contrast(ink, ground), ground).toBeGreaterThanOrEqual(AA);
        expect(isRed(ground), ground).toBe(false);
      }
    }
  });

  it('lets marks stand out from what they lie on', () => {
    expect(contrast(theme.markInk, theme.mark)).toBeGreaterThanOrEqual(AA_SHAPE);
    expect(contrast(theme.markInk, theme.fault)).toBeGreaterThanOrEqual(AA_SHAPE);
  });

  it('keeps red for the stripe', () => {
    const { buses, veil, ...colours } = theme;
    const reds = Object.entries(colours).filter(([, colour]) => isRed(colour));
    expect(reds.map(([name]) => name)).toEqual(['stripe']);
    expect(buses.filter(({ fill }) => isRed(fill))).toEqual([]);
    expect(veil).toMatch(/^rgba/);
  });
});

it('is dim on stage: nothing brighter than a third of white but what must be read', () => {
  const { buses, veil, ...colours } = THEMES.dim;
  for (const [name, colour] of Object.entries(colours)) expect(luminance(colour), name).toBeLessThan(0.4);
  expect(buses.every(({ fill }) => luminance(fill) < 0.1)).toBe(true);
  expect(veil).toMatch(/^rgba/);
});
