import { figure } from '../checks/words.ts';
import { exceeds } from '../geometry/exceeds.ts';
import { type MarkupPart, markup } from '../sheet/markup.ts';
import { INK, line, PALE, polygon, rect, SOFT, text } from '../sheet/svg.ts';
import { type InsetBody, LETTERS, MARGIN, WIDE } from './inset.ts';

/** What there is of something, beside what there may be of it. */
export interface Gauge {
  readonly title: string;
  /** One after the other; together they are what is compared. */
  readonly parts: readonly { readonly value: number; readonly words: string }[];
  /** What they are together: "drawn". */
  readonly words: string;
  readonly limit: number;
  /** It must be so much at least, not at most. */
  readonly isLeast?: true;
  /** What the limit is: "rated". */
  readonly limitWords: string;
  readonly unit: string;
  /** What else is on the scale. */
  readonly mark?: { readonly value: number; readonly words: string };
}

/** Nearer to the limit than this share of it, a bar alone does not tell. */
const SHOWN_SHARE = 0.05;
/** Across the glass, how far from the limit the end of the bar is. */
const IN_GLASS = 0.22;

const BAR = { top: 44, bottom: 62 };
const GLASS = { top: 96, bottom: 118 };

/** Both ends and the space between them: a window on the scale. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/** What lies round the limit, so near that the end of the bar is seen to be there, before it or beyond it. */
function glassOf(total: number, limit: number): Span {
  const off = Math.abs(total - limit);
  // At the very limit there is no distance to show: a thousandth of it then.
  const half = (off < limit * 1e-9 ? limit / 1000 : off) / IN_GLASS / 2;
  return { from: limit - half, to: limit + half };
}

/** As few decimals as tell two figures apart, three at least of a small one. */
function apart(a: number, b: number): readonly [string, string] {
  for (let decimals = 0; decimals < 7; decimals++) {
    const words = [figure(a, decimals), figure(b, decimals)] as const;
    const isRough = Math.abs(Number(a.toFixed(decimals)) - a) > Math.abs(a) * 0.005;
    if (!isRough && (words[0] !== words[1] || Math.abs(a - b) < 1e-7)) return words;
  }
  return [figure(a, 7), figure(b, 7)];
}

/** Diagonals, for what is beyond the limit: told without colour. */
function hatched(left: number, right: number, { top, bottom }: typeof BAR): MarkupPart {
  if (right - left < 0.4) return '';
  const high = bottom - top;
  const lines = [];
  for (let x = left - high; x < right; x += 5) {
    const [from, to] = [Math.max(left, x), Math.min(right, x + high)];
    lines.push(
      line(
        [
          { x: from, y: bottom - (from - x) },
          { x: to, y: bottom - (to - x) },
        ],
        { line: INK, width: 1.4 },
      ),
    );
  }
  return [rect({ left, right, top, bottom }, { fill: '#fff', line: INK, width: 1.4 }), lines];
}

/** A bar of what there is on a scale with the limit, and a glass over the limit where that is not enough to see. */
export function gaugeBody({
  title,
  parts,
  words: what,
  limit,
  isLeast,
  limitWords,
  unit,
  mark,
}: Gauge): InsetBody {
  const total = parts.reduce((sum, { value }) => sum + value, 0);
  const beyond = isLeast ? exceeds(limit, total) : exceeds(total, limit);
  const [totalWords, limitFigure] = apart(total, limit);
  const whole: Span = { from: 0, to: Math.max(total, limit, mark?.value ?? 0) * 1.12 };
  const xOn =
    ({ from, to }: Span) =>
    (value: number): number =>
      MARGIN + Math.min(1, Math.max(0, (value - from) / (to - from))) * (WIDE - 2 * MARGIN);
  const xOf = xOn(whole);
  const bars = (x: (value: number) => number, room: typeof BAR): MarkupPart => {
    let sum = 0;
    return [
      rect({ left: MARGIN, right: WIDE - MARGIN, ...room }, { fill: PALE }),
      parts.map(({ value }, i) => {
        const from = sum;
        sum += value;
        const box = { left: x(from), right: x(isLeast ? sum : Math.min(sum, limit)), ...room };
        return box.right > box.left && rect(box, { fill: i % 2 ? '#8a9097' : SOFT });
      }),
      beyond && hatched(x(Math.min(limit, total)), x(Math.max(limit, total)), room),
      line(
        [
          { x: x(limit), y: room.top - 6 },
          { x: x(limit), y: room.bottom + 6 },
        ],
        { line: INK, width: 2.2 },
      ),
    ];
  };
  const words = `${totalWords} ${unit} ${what}, ${limitFigure} ${unit} ${limitWords}`;
  const off = apart(Math.abs(total - limit), 0)[0];
  const verdict = beyond
    ? `${off} ${unit} too ${isLeast ? 'little' : 'much'}`
    : Math.abs(total - limit) < 1e-7
      ? isLeast
        ? 'just as much as wanted'
        : 'just as much as allowed'
      : `${off} ${unit} to spare`;
  const small = { size: LETTERS * 0.92 };
  const named =
    parts.length > 1 ? parts.map(({ value, words: part }) => `${part} ${apart(value, 0)[0]}`) : [];
  const isNear = Math.abs(total - limit) < limit * SHOWN_SHARE;
  const glass = glassOf(total, limit);
  const times = Math.round((whole.to - whole.from) / (glass.to - glass.from));
  const body: MarkupPart = [
    text(title, MARGIN, 16, { size: LETTERS, bold: true }),
    text(words, MARGIN, 34, small),
    bars(xOf, BAR),
    mark && [
      line(
        [
          { x: xOf(mark.value), y: BAR.top - 4 },
          { x: xOf(mark.value), y: BAR.bottom + 4 },
        ],
        { line: INK, width: 1.2, dash: '3 2' },
      ),
      text(mark.words, xOf(mark.value), BAR.top - 8, { ...small, anchor: 'end', ink: SOFT }),
    ],
    isNear && [
      polygon(
        [
          { x: xOf(limit) - 1.5, y: BAR.bottom + 6 },
          { x: xOf(limit) + 1.5, y: BAR.bottom + 6 },
          { x: WIDE - MARGIN, y: GLASS.top },
          { x: MARGIN, y: GLASS.top },
        ],
        { fill: '#f1f2f4' },
      ),
      bars(xOn(glass), GLASS),
    ],
    text(verdict, MARGIN, isNear ? 138 : 82, { ...small, bold: true }),
    isNear &&
      text(`round the limit, ${times} times as large`, WIDE - MARGIN, 138, {
        ...small,
        anchor: 'end',
        ink: SOFT,
      }),
    named.length > 0 &&
      text(`${named.join(' + ')} ${unit}`, WIDE - MARGIN, 34, { ...small, anchor: 'end', ink: SOFT }),
  ];
  return {
    high: isNear ? 148 : 92,
    body: markup`${body}`,
    seen: `${title}: ${words}${named.length > 0 ? ` (${named.join(', ')})` : ''}; ${verdict}.`,
  };
}
