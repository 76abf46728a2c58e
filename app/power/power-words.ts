import { estimate, GND, type HowManyMore, MOST } from '../../src/index.ts';
import { figure, voltageName } from '../panels/figures.ts';
import type { Ground, ModuleRow } from './module-rows.ts';
import type { Bar } from './power-view.ts';

export const GROUND_WORDS: Readonly<Record<Ground, string>> = {
  measured: 'measured',
  published: 'published',
  guessed: 'guessed',
  'not said': 'not said where from',
};

export const lineWords = (line: string): string => (line === GND ? 'Ground' : voltageName(line));

export const percent = (share: number): string => `${figure(100 * share, 0)} %`;

/** Two or three figures, all that an estimate is good for; nothing less than a hundredth of a millivolt. */
export const millivolts = (mv: number): string =>
  figure(mv, Math.abs(mv) >= 10 ? 0 : Math.abs(mv) >= 1 ? 1 : 2);

export const watts = (value: number): string =>
  value === 0 || value >= 1 ? `${estimate(value)} W` : `${estimate(1000 * value)} mW`;

/** What is left of a supply's voltage, in words. */
export function leftWords({ ma, ratingMa, untilHeadroomMa }: Bar, headroom: number): string {
  const over = ma - ratingMa;
  if (over > 1e-6) return `Overloaded by ${estimate(over)} mA.`;
  const left = `${estimate(-over)} mA left`;
  const kept = percent(headroom);
  const before = untilHeadroomMa - ma;
  return before >= -1e-6
    ? `${left}; ${estimate(Math.max(0, before))} until less than ${kept} is left free.`
    : `${left}; less than the ${kept} that should be left free.`;
}

const ORDINAL = new Intl.PluralRules('en-GB', { type: 'ordinal' });
const ENDINGS: Partial<Record<Intl.LDMLPluralRule, string>> = { one: 'st', two: 'nd', few: 'rd' };

const ordinal = (n: number): string => `${n}${ENDINGS[ORDINAL.select(n)] ?? 'th'}`;

/** How many more of a kind, and what the next one would break. */
export function moreWords(kind: string, { most, breaks }: HowManyMore): string {
  if (most === undefined) return `More than ${MOST} of ${kind} would break nothing.`;
  const what = [...new Set(breaks.map(({ headline }) => headline))].join('; ');
  if (most === 0) return `Not one more of ${kind}. With it: ${what}.`;
  return `${most} more of ${kind}. With the ${ordinal(most + 1)}: ${what}.`;
}

/** The worst that a heat map shows, for those who do not see it. */
export function heatWords(line: string, rows: readonly ModuleRow[]): string {
  const missing = rows.filter(({ arrival }) => !arrival).length;
  const worst = rows.find(({ arrival }) => arrival);
  const said = [`Heat map of ${line === GND ? 'ground' : lineWords(line)}.`];
  if (worst?.arrival) {
    const { mv, allowedMv } = worst.arrival;
    const does = line === GND ? `is shifted most, ${millivolts(mv)} mV` : `loses most, ${millivolts(mv)} mV`;
    said.push(`${worst.name} ${does} of ${figure(allowedMv)} allowed.`);
  }
  if (missing > 0) said.push(`${missing} not reached.`);
  return said.join(' ');
}
