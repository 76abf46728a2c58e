export type Unit = 'HP' | 'U' | 'mm' | 'mA' | 'V' | 'AWG';

/** What a figure may be typed in, and how much of the unit that is. */
const TYPED_IN: Readonly<Record<Unit, Readonly<Record<string, number>>>> = {
  HP: { hp: 1 },
  U: { u: 1 },
  mm: { mm: 1, cm: 10, m: 1000, in: 25.4, '"': 25.4 },
  mA: { ma: 1, a: 1000 },
  V: { v: 1, mv: 0.001 },
  AWG: { awg: 1 },
};

const FIGURE = /^([+-]?(?:\d+\.?\d*|\.\d+))\s*([a-z"]*)$/;

/** Thousandths are as fine as anything is measured; float arithmetic would leave crumbs. */
const tidy = (value: number): number => Math.round(value * 1000) / 1000;

/** A figure that someone typed, with or without its unit, in that unit; `null` where it is none. */
export function parseMeasure(text: string, unit: Unit): number | null {
  const plain = text.trim().toLowerCase().replace(',', '.').replace('\u2212', '-').replace('½', '.5');
  const [, digits, typed = ''] = FIGURE.exec(plain) ?? [];
  const units = TYPED_IN[unit];
  const factor = typed === '' ? 1 : Object.hasOwn(units, typed) ? units[typed] : undefined;
  return digits === undefined || factor === undefined ? null : tidy(Number(digits) * factor);
}
