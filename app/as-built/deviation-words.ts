import { voltsAllowed } from '../../src/sheet.ts';
import { figure } from '../panels/figures.ts';

/** What currents may be off before it is said: 5 %, and no less than a meter's last figure. Common practice, no source. */
const MA_SHARE = 0.05;
const MA_LEAST = 2;

const AS_EXPECTED = 'as expected';

/** How a current that was measured differs from the one expected. */
export function currentWords(measured: number, expected: number | undefined): string {
  if (expected === undefined) return 'was unknown';
  const more = measured - expected;
  if (Math.abs(more) <= Math.max(MA_LEAST, expected * MA_SHARE)) return AS_EXPECTED;
  return `${figure(Math.abs(more), 1)} mA ${more > 0 ? 'more' : 'less'} than expected`;
}

/** How a voltage that was measured differs from the one expected. Of −12 V, −13 V is too much. */
export function voltageWords(measured: number, expected: number, nominal: number): string {
  if (measured !== 0 && Math.sign(measured) !== Math.sign(nominal)) return 'the wrong sign: power off';
  const more = Math.abs(measured) - Math.abs(expected);
  if (Math.abs(more) <= voltsAllowed(nominal)) return AS_EXPECTED;
  return `${figure(Math.abs(more), 2)} V too ${more > 0 ? 'much' : 'little'}: power off, look why`;
}

export const isAsExpected = (words: string): boolean => words === AS_EXPECTED;
