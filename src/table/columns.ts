import type { Header, Kit } from '../layout/layout.ts';
import { type Field, fieldsFor, HEADER_SPELLINGS, headerKey } from './field.ts';
import { restored } from './neutral.ts';

/** A column of a table, and which fact it tells. */
export interface Column {
  /** From 0. */
  readonly at: number;
  /** As a spreadsheet names it: A, B … AA. */
  readonly letter: string;
  /** What stands over it; empty where there is no row of headings. */
  readonly heading: string;
  readonly field: Field | undefined;
  /** Unit over the column; absent: that of the field. */
  readonly unit?: string;
}

/** The name of a column in a spreadsheet. */
function letterOf(at: number): string {
  const last = String.fromCharCode(65 + (at % 26));
  return at < 26 ? last : letterOf(Math.floor(at / 26) - 1) + last;
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll('−', '-')
    .replace(/[\s\u00a0_:/]+|\.(?!\d)/g, ' ')
    .replace(/ +/g, ' ')
    .trim();

const UNIT_WORDS = new Set([
  'mm',
  'cm',
  'm',
  'in',
  'inch',
  'inches',
  '"',
  '″',
  'hp',
  'te',
  'u',
  'he',
  'ma',
  'a',
]);

interface ReadHeading {
  readonly words: string;
  readonly unit?: string;
}

/** The words of a heading, and the unit that it names: "Depth (mm)", "Depth, mm", "Depth in mm". */
function readHeading(heading: string): ReadHeading {
  const text = plain(restored(heading.trim()));
  const inBrackets = /^(.+?)\s*[([]\s*([^)\]]*?)\s*[)\]]$/.exec(text);
  if (inBrackets) {
    const [, words = '', aside = ''] = inBrackets;
    const [first = ''] = aside.split(' ');
    if (UNIT_WORDS.has(first)) return { words, unit: first };
    // Too short to be an explanation: a unit, and none of those that are known.
    return /^\p{L}{1,4}$/u.test(aside) ? { words, unit: aside } : { words };
  }
  const [, words = '', unit = ''] = /^(.+?)(?: ?, ?| in | )(\p{L}+|["″])$/u.exec(text) ?? [];
  return UNIT_WORDS.has(unit) ? { words, unit } : { words: text };
}

/** Words around a voltage that say nothing else. */
const CURRENT_WORDS = /\b(?:currents?|draws?|drawn|consumption|at|on|from|of|the|rail|line)\b/g;

function voltageIn(kit: Kit, words: string): string | undefined {
  const bare = words
    .replace(CURRENT_WORDS, '')
    .replace(/\s+/g, '')
    .replace(/(?<=\d)v$/, '');
  // A bare number is one, and no voltage.
  if (/^\d+$/.test(words)) return undefined;
  const ids = kit.voltages.map(({ id }) => id);
  const same = (id: string): string => id.toLowerCase().replace(/\s+/g, '');
  return ids.find((id) => same(id) === bare) ?? ids.find((id) => same(id) === `+${bare}`);
}

const headerFieldIn = (words: string): keyof Header | undefined =>
  HEADER_SPELLINGS.find(([, spellings]) => spellings.includes(words))?.[0];

/** The header and its fact that words name: "header 2 x", "h2 pin 1", "pin 1 of header 2", "bus". */
function headerIn(words: string): string | undefined {
  const behind = /^(.+?) (?:of |at )?header ?(\d+)?$/.exec(words);
  const before = /^(?:header ?(\d+)?|h ?(\d+))(?: (.*))?$/.exec(words);
  const bare = /^(bus|role|x|y|z|pin ?1|axis)$/.exec(words);
  const number = Number(before?.[1] ?? before?.[2] ?? behind?.[2] ?? 1);
  const rest = before ? (before[3] ?? '') : (behind?.[1] ?? bare?.[1]);
  const field = rest === undefined ? undefined : headerFieldIn(rest);
  return field && number >= 1 ? headerKey(number, field) : undefined;
}

function keyIn(
  kit: Kit,
  fields: readonly Field[],
  { words }: ReadHeading,
  heading: string,
): string | undefined {
  const exact = fields.find(({ label }) => plain(label) === words || plain(label) === plain(heading));
  const known = exact ?? fields.find(({ spellings }) => spellings.includes(words));
  if (known) return known.key;
  const header = headerIn(words);
  if (header) return header;
  const voltage = voltageIn(kit, words);
  return voltage === undefined ? undefined : `draws ${voltage}`;
}

/** More headers than a kind may have are not looked for. */
const MOST_HEADERS = 60;

/** What somebody chose for a column: the key of a field, or nothing at all. */
export type ByHand = ReadonlyMap<number, string | null>;

/**
 * Which fact each column tells: as chosen by hand, else by its heading. A fact that two columns would tell is told by
 * the first.
 */
export function matchColumns(
  kit: Kit,
  headings: readonly string[],
  width: number,
  byHand: ByHand,
): readonly Column[] {
  const fields = new Map(fieldsFor(kit, MOST_HEADERS).map((field) => [field.key, field]));
  const loose = fieldsFor(kit, 0);
  const taken = new Set([...byHand.values()].filter((key) => key !== null));
  return Array.from({ length: width }, (_, at) => {
    const heading = headings[at] ?? '';
    const read = readHeading(heading);
    const chosen = byHand.get(at);
    const found =
      chosen === undefined && heading.trim() !== '' ? keyIn(kit, loose, read, heading) : undefined;
    const isFree = found !== undefined && !taken.has(found);
    if (isFree) taken.add(found);
    const field = fields.get(chosen ?? (isFree ? found : '') ?? '');
    const { unit } = read;
    return { at, letter: letterOf(at), heading: heading.trim(), field, ...(unit !== undefined && { unit }) };
  });
}
