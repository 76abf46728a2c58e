import type { BaseIssue } from 'valibot';
import { GND } from './defaults.ts';
import type { Path } from './issue.ts';
import { didYouMean, nearest } from './nearest.ts';
import { quote, sketch } from './quote.ts';
import { type Rule, SEATED_ON_WORDS } from './schema.ts';

/** What does not hold of a document, as the library tells it. */
export type SchemaIssue = BaseIssue<unknown>;

export const pathOf = ({ path }: SchemaIssue): Path =>
  (path ?? []).map(({ key }) => (typeof key === 'number' ? key : String(key)));

/** What does not hold, in words. */
export function issueWords(issue: SchemaIssue): string {
  const last = issue.path?.at(-1);
  if (last?.origin === 'key') return missingWords(String(last.key), last.input as object);
  const words = WORDS[issue.type];
  if (!words) throw new Error(`no words for "${issue.type}"`);
  return words(issue);
}

/** A missing key is often a misspelt one. */
function missingWords(key: string, from: object): string {
  const near = nearest(key, Object.keys(from));
  return near === undefined ? 'is missing' : `is missing; did you mean it by ${quote(near)}?`;
}

type Words = (issue: SchemaIssue) => string;

const must =
  (be: string): Words =>
  ({ input }) =>
    `must be ${be}, not ${sketch(input)}`;

const mustBeFrom =
  (bound: string): Words =>
  ({ input, requirement }) =>
    `must be ${bound} ${requirement}, not ${sketch(input)}`;

/** Words by the type of the schema or action that does not hold. */
const WORDS: Readonly<Record<string, Words>> = {
  string: must('a text'),
  number: must('a number'),
  boolean: must('true or false'),
  array: must('a list'),
  record: must('an object'),
  loose_object: must('an object'),
  union: () => SEATED_ON_WORDS,
  picklist: choiceWords,
  integer: must('a whole number'),
  min_value: mustBeFrom('at least'),
  max_value: mustBeFrom('at most'),
  gt_value: mustBeFrom('more than'),
  multiple_of: mustBeFrom('a multiple of'),
  not_value: ({ requirement }) =>
    requirement === GND ? 'GND is implied and no voltage' : `must not be ${requirement}`,
  min_length: ({ input, requirement }) =>
    input === '' ? 'must not be empty' : `needs at least ${requirement} entries`,
  max_length: ({ input, requirement }) =>
    `holds more than ${requirement} ${typeof input === 'string' ? 'characters' : 'entries'}`,
  regex: () => 'must be of printable ASCII characters',
  check: ({ input, requirement }) => (requirement as Rule<unknown>).words(input),
};

function choiceWords(issue: SchemaIssue): string {
  const choices = (issue.expected ?? '').match(/[\w-]+/g) ?? [];
  const words = must(choices.map(quote).join(' or '))(issue);
  return typeof issue.input === 'string' ? words + didYouMean(issue.input, choices) : words;
}
