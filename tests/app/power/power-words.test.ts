import { describe, expect, test } from 'vitest';
import type { ModuleRow } from '../../../app/power/module-rows.ts';
import { heatWords, leftWords, millivolts, moreWords, watts } from '../../../app/power/power-words.ts';
import type { Note } from '../../../src/index.ts';

const bar = (ma: number) => ({
  voltage: '+12',
  ma,
  ratingMa: 1000,
  untilHeadroomMa: 800,
  eaters: [],
  unknown: [],
});

const note = (headline: string): Note => ({
  check: 'overload',
  level: 'damage',
  take: 't',
  key: headline,
  subjects: [],
  message: '',
  remedy: '',
  headline,
  detail: '',
  facts: '',
});

describe('words of the power panel', () => {
  test('say what is left, and of it what is kept free', () => {
    expect(leftWords(bar(300), 0.2)).toBe('700 mA left; 500 until less than 20 % is left free.');
    expect(leftWords(bar(900), 0.2)).toBe('100 mA left; less than the 20 % that should be left free.');
    expect(leftWords(bar(1100), 0.2)).toBe('Overloaded by 100 mA.');
    expect(leftWords(bar(1000), 0)).toBe('0 mA left; less than the 0 % that should be left free.');
  });

  test('say how many more, and what the next one breaks', () => {
    const breaks = [note('Supply is overloaded on +12 V')];
    expect(moreWords('Cobble', { most: 7, breaks })).toBe(
      '7 more of Cobble. With the 8th: Supply is overloaded on +12 V.',
    );
    expect(moreWords('Cobble', { most: 20, breaks })).toContain('With the 21st:');
    expect(moreWords('Cobble', { most: 0, breaks })).toBe(
      'Not one more of Cobble. With it: Supply is overloaded on +12 V.',
    );
    expect(moreWords('Cobble', { breaks: [] })).toBe('More than 1000 of Cobble would break nothing.');
  });

  test('give two or three figures', () => {
    expect([123.4, 21.09, 5.23, 0.274, -3.16, 0].map(millivolts)).toEqual([
      '123',
      '21',
      '5.2',
      '0.27',
      '−3.2',
      '0',
    ]);
    expect([18.39, 1, 0.0164, 0].map(watts)).toEqual(['18.4 W', '1 W', '16.4 mW', '0 W']);
  });

  test('say the worst of a heat map', () => {
    const row = (name: string, mv?: number): ModuleRow => ({
      id: name,
      name,
      isDrawUnknown: false,
      atLeast: false,
      known: 'measured',
      ...(mv !== undefined && { arrival: { mv, groundMv: 1, allowedMv: 250 } }),
    });
    expect(heatWords('+12', [row('Gull'), row('Cobble', 21)])).toBe(
      'Heat map of +12 V. Cobble loses most, 21 mV of 250 allowed. 1 not reached.',
    );
    expect(heatWords('GND', [row('Cobble', 3)])).toContain(
      'Heat map of ground. Cobble is shifted most, 3 mV',
    );
  });
});
