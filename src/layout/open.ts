import { type Issue, IssueList } from './issue.ts';
import { faultOfJson, sizeOfJson, type TextPlace } from './json-text.ts';
import type { Layout } from './layout.ts';
import { malformationsOf } from './malformations.ts';
import { migrate } from './migrations.ts';
import { OPEN_LIMITS } from './open-limits.ts';
import { type Excess, surveyData } from './plain-data.ts';
import { quote, sketch } from './quote.ts';
import { referenceIssues } from './references.ts';
import { fail, ok, type Result } from './result.ts';
import { VERSION } from './schema.ts';

/** Why a document cannot be opened. Nothing of it is loaded. */
export type OpenFailure =
  | { readonly kind: 'too-big'; readonly excess: Excess | 'characters' }
  | ({ readonly kind: 'not-json' } & TextPlace)
  | { readonly kind: 'not-ours' }
  | { readonly kind: 'too-new'; readonly version: number }
  | { readonly kind: 'migration-failed'; readonly version: number }
  /** The first issues, and how many there are in all (of the same sort, and counted up to 10,000). */
  | { readonly kind: 'invalid'; readonly issues: readonly Issue[]; readonly total: number };

type Opened<T = Layout> = Result<T, OpenFailure>;
type Document = Readonly<Record<string, unknown>>;

/**
 * Opens the text of a file. The layout is the very data of the text: keys that the program does not know are kept,
 * defaults are not filled in. Never throws; a text made to stop the program is refused.
 */
export function openLayout(text: string): Opened {
  const excess = excessOf(text);
  if (excess) return fail({ kind: 'too-big', excess });
  const parsed = parse(text.replace(/^\uFEFF/, ''));
  return parsed.ok ? openDocument(parsed.value) : parsed;
}

function excessOf(text: string): Excess | 'characters' | undefined {
  if (text.length > OPEN_LIMITS.characters.most) return 'characters';
  const { depth, values } = sizeOfJson(text);
  if (depth > OPEN_LIMITS.depth.most) return 'depth';
  return values > OPEN_LIMITS.values.most ? 'values' : undefined;
}

function parse(text: string): Opened<unknown> {
  try {
    return ok(JSON.parse(text));
  } catch {
    return fail({ kind: 'not-json', ...(faultOfJson(text) ?? { line: 1, column: 1 }) });
  }
}

/** Opens data that was parsed, or came out of a structured clone. Never throws for such data. */
export function openDocument(data: unknown): Opened {
  if (!isOurs(data)) return fail({ kind: 'not-ours' });
  const version = versionOf(data);
  if (!version.ok) return version;
  const survey = surveyData(data);
  if (typeof survey === 'string') return fail({ kind: 'too-big', excess: survey });
  if (survey.total > 0) return invalid(survey);
  const migrated = migrate(data, version.value, VERSION);
  return migrated.ok ? judge(migrated.value) : fail({ kind: 'migration-failed', version: migrated.error.at });
}

const isOurs = (data: unknown): data is Document =>
  typeof data === 'object' && data !== null && 'format' in data && data.format === 'ribbonwright';

function versionOf({ version }: Document): Opened<number> {
  if (typeof version === 'number' && Number.isInteger(version) && version >= 1) {
    return version > VERSION ? fail({ kind: 'too-new', version }) : ok(version);
  }
  const found = version === undefined ? 'it is missing' : `not ${sketch(version)}`;
  const issues = new IssueList();
  issues.add(['version'], () => `must be a whole number from 1; ${found}`);
  return invalid(issues);
}

function judge(document: Document): Opened {
  const malformed = malformationsOf(document);
  if (malformed.total > 0) return invalid(malformed);
  const layout = document as unknown as Layout;
  const issues = referenceIssues(layout);
  return issues.total > 0 ? invalid(issues) : ok(layout);
}

const invalid = ({ kept, total }: IssueList): Opened<never> => fail({ kind: 'invalid', issues: kept, total });

/** One clear line that says what is wrong and where. */
export function describeFailure(failure: OpenFailure): string {
  switch (failure.kind) {
    case 'too-big':
      return `the file is too big to open: ${EXCESS_WORDS[failure.excess]}`;
    case 'not-json':
      return `not a layout: the file is no JSON (line ${failure.line}, column ${failure.column}: ${faultWords(failure)})`;
    case 'not-ours':
      return 'not a layout of this program: its format is not "ribbonwright"';
    case 'too-new':
      return `made by a newer program: version ${failure.version}; this one reads up to version ${VERSION}`;
    case 'migration-failed':
      return `the file is of version ${failure.version} and could not be brought up to version ${VERSION}`;
    case 'invalid':
      return invalidWords(failure);
  }
}

const { characters, depth, values } = OPEN_LIMITS;

const EXCESS_WORDS: Readonly<Record<Excess | 'characters', string>> = {
  characters: `longer than ${characters.most / 1e6} million characters`,
  depth: `nested deeper than ${depth.most} levels`,
  values: `holds more than ${values.most / 1e6} million values`,
};

const faultWords = ({ found }: TextPlace): string =>
  found === undefined ? 'it ends too early' : `${quote(found)} cannot stand there`;

function invalidWords({ issues, total }: Extract<OpenFailure, { kind: 'invalid' }>): string {
  const [first] = issues;
  const more = total > 1 ? ` (and ${total - 1} more)` : '';
  return `${first?.path ? `${first.path}: ` : ''}${first?.message ?? 'unusable'}${more}`;
}
