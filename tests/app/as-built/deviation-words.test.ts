import { describe, expect, it } from 'vitest';
import { currentWords, voltageWords } from '../../../app/as-built/deviation-words.ts';

/* 2 % of 12 V, 3 % of 5 V: common practice, no source. */
describe('what a meter shows, in words', () => {
  it.each([
    [40, 40, 'as expected'],
    [42, 40, 'as expected'],
    [43, 40, '3 mA more than expected'],
    [190, 200, 'as expected'],
    [189, 200, '11 mA less than expected'],
    [5, undefined, 'was unknown'],
  ])('of %s mA where %s were expected: %s', (measured, expected, words) => {
    expect(currentWords(measured, expected)).toBe(words);
  });

  it.each([
    [11.77, 12, 12, 'as expected'],
    [11.7, 12, 12, '0.3 V too little: power off, look why'],
    [-12.2, -12, -12, 'as expected'],
    [-12.5, -12, -12, '0.5 V too much: power off, look why'],
    [12, -12, -12, 'the wrong sign: power off'],
    [0, 12, 12, '12 V too little: power off, look why'],
    [4.86, 5, 5, 'as expected'],
    [4.8, 5, 5, '0.2 V too little: power off, look why'],
  ])('of %s V where %s V of %s V were expected: %s', (measured, expected, nominal, words) => {
    expect(voltageWords(measured, expected, nominal)).toBe(words);
  });
});
