import { type GenericSchema, safeParse } from 'valibot';
import { IssueList } from './issue.ts';
import { issueWords, pathOf, type SchemaIssue } from './issue-words.ts';
import { layoutSchema } from './schema.ts';

/** The library keeps every issue that it finds; a document made of issues would take all memory. */
const MOST_COUNTED = 10_000;

/** What does not hold of the nouns of a document by themselves, or of one noun. Stops counting at 10,000. */
export function malformationsOf(document: unknown, schema: GenericSchema = layoutSchema): IssueList {
  const issues = new IssueList();
  const found = allIssues(document, schema);
  for (const issue of found ?? firstIssue(document, schema)) {
    issues.add(pathOf(issue), () => issueWords(issue));
  }
  // What a value might have been instead was counted too: of so many there may be none that is really amiss.
  if (!found && issues.total > 0) issues.total = MOST_COUNTED;
  return issues;
}

const TOO_MANY = new Error('more issues than are counted');

/** Undefined where there are too many. */
function allIssues(document: unknown, schema: GenericSchema): readonly SchemaIssue[] | undefined {
  let counted = 0;
  // The library asks for the words of every issue. They are made later, for the few that are kept.
  const message = (): string => {
    if (++counted > MOST_COUNTED) throw TOO_MANY;
    return '';
  };
  try {
    return safeParse(schema, document, { message, abortPipeEarly: true }).issues ?? [];
  } catch (thrown) {
    if (thrown === TOO_MANY) return undefined;
    throw thrown;
  }
}

const firstIssue = (document: unknown, schema: GenericSchema): readonly SchemaIssue[] =>
  safeParse(schema, document, { abortEarly: true }).issues ?? [];
