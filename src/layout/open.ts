import * as v from 'valibot';
import { dataTrouble, textTooBig } from './guard.ts';
import { didYouMean, type Issue, pathOf, quote } from './issue.ts';
import type { Layout } from './layout.ts';
import { migrate } from './migrations.ts';
import { nearest } from './nearest.ts';
import { referenceIssues } from './references.ts';
import { fail, ok, type Result } from './result.ts';
import { layoutSchema, VERSION } from './schema.ts';

/** Why a document cannot be opened. Nothing of it is loaded. */
export type OpenFailure =
  | { readonly kind: 'too-big'; readonly message: string }
  | { readonly kind: 'not-json'; readonly message: string }
  | { readonly kind: 'not-ours' }
  | { readonly kind: 'too-new'; readonly version: number }
  | { readonly kind: 'migration-failed'; readonly version: number }
  | { readonly kind: 'invalid'; readonly issues: readonly Issue[] };

type Opened = Result<Layout, OpenFailure>;

const invalid = (...issues: Issue[]): Opened => fail({ kind: 'invalid', issues });

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What was found where something else was wanted. */
function received(input: unknown): string {
  if (input === null) return 'nothing (null)';
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'string') return quote(input);
  return typeof input === 'object' ? 'an object' : String(input);
}

const WANTED: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list',
  loose_object: 'an object',
  record: 'an object',
  integer: 'a whole number',
};

const requirementOf = (issue: v.BaseIssue<unknown>): string => String(issue.requirement);

/** Words for the requirements of the schema, by the name that the library gives them. */
const RULES: Readonly<Record<string, (issue: v.BaseIssue<unknown>) => string>> = {
  min_value: (issue) => `must be at least ${requirementOf(issue)}, not ${received(issue.input)}`,
  max_value: (issue) => `must be at most ${requirementOf(issue)}, not ${received(issue.input)}`,
  gt_value: (issue) => `must be more than ${requirementOf(issue)}, not ${received(issue.input)}`,
  not_value: (issue) => `must not be ${requirementOf(issue)}`,
  multiple_of: (issue) => `must be a multiple of ${requirementOf(issue)}, not ${received(issue.input)}`,
  min_length: (issue) =>
    issue.input === '' ? 'must not be empty' : `needs at least ${requirementOf(issue)} entries`,
  max_length: (issue) =>
    `holds more than ${requirementOf(issue)} ${typeof issue.input === 'string' ? 'characters' : 'entries'}`,
  regex: () => 'must be of printable ASCII characters',
};

function choiceWords(issue: v.BaseIssue<unknown>): string {
  const choices = [...(issue.expected ?? '').matchAll(/"([^"]*)"/g)].map(([, choice]) => choice as string);
  const near = typeof issue.input === 'string' ? nearest(issue.input, choices) : undefined;
  return `must be ${choices.map(quote).join(' or ')}, not ${received(issue.input)}${didYouMean(near)}`;
}

/** A missing key is often a misspelt one. */
function missingWords(issue: v.BaseIssue<unknown>): string {
  const last = issue.path?.[issue.path.length - 1];
  const container = last?.input;
  const present = isObject(container) ? Object.keys(container) : [];
  const near = nearest(String(last?.key ?? ''), present);
  return near === undefined ? 'is missing' : `is missing; did you mean it by ${quote(near)}?`;
}

function wordsFor(issue: v.BaseIssue<unknown>): string {
  if (issue.input === undefined) return missingWords(issue);
  const rule = RULES[issue.type];
  if (rule) return rule(issue);
  if (issue.type === 'picklist' || issue.type === 'literal') return choiceWords(issue);
  return `must be ${WANTED[issue.type] ?? 'something else'}, not ${received(issue.input)}`;
}

const toIssue = (issue: v.BaseIssue<unknown>): Issue => ({
  path: pathOf((issue.path ?? []).map(({ key }) => (typeof key === 'number' ? key : String(key)))),
  message: wordsFor(issue),
});

/** Opens data that was parsed. Never throws. */
export function openDocument(data: unknown): Opened {
  if (!isObject(data) || data.format !== 'ribbonwright') return fail({ kind: 'not-ours' });
  const trouble = dataTrouble(data);
  if (trouble)
    return 'tooBig' in trouble ? fail({ kind: 'too-big', message: trouble.tooBig }) : invalid(trouble.issue);
  const { version } = data;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    const found = version === undefined ? 'it is missing' : `not ${received(version)}`;
    return invalid({ path: 'version', message: `must be a whole number from 1; ${found}` });
  }
  if (version > VERSION) return fail({ kind: 'too-new', version });
  const migrated = migrate(data, version, VERSION);
  if (!migrated.ok) return fail({ kind: 'migration-failed', version: migrated.error.at });
  const judged = v.safeParse(layoutSchema, migrated.value);
  if (!judged.success) return invalid(...judged.issues.map(toIssue));
  const layout = migrated.value as unknown as Layout;
  const issues = referenceIssues(layout);
  return issues.length > 0 ? invalid(...issues) : ok(layout);
}

/** Opens the text of a file. Never throws. */
export function openLayout(text: string): Opened {
  const tooBig = textTooBig(text);
  if (tooBig !== undefined) return fail({ kind: 'too-big', message: tooBig });
  let data: unknown;
  try {
    data = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (reason) {
    return fail({ kind: 'not-json', message: (reason as Error).message });
  }
  return openDocument(data);
}

const oneLine = (text: string): string => text.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ').trim();

function words(failure: OpenFailure): string {
  switch (failure.kind) {
    case 'too-big':
      return `the file is too big to open: ${failure.message}`;
    case 'not-json':
      return `not a layout: the file is no JSON (${failure.message})`;
    case 'not-ours':
      return 'not a layout of this program: its format is not "ribbonwright"';
    case 'too-new':
      return `made by a newer program: version ${failure.version}; this one reads up to version ${VERSION}`;
    case 'migration-failed':
      return `the file is of version ${failure.version} and could not be brought up to version ${VERSION}`;
    case 'invalid': {
      const [first, ...others] = failure.issues;
      const more = others.length > 0 ? ` (and ${others.length} more)` : '';
      return `${first?.path ? `${first.path}: ` : ''}${first?.message ?? 'unusable'}${more}`;
    }
  }
}

/** One clear line that says what is wrong and where. */
export const describeFailure = (failure: OpenFailure): string => oneLine(words(failure));
