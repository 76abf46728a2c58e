import { safeParse } from 'valibot';
import { issueWords, pathOf } from '../layout/issue-words.ts';
import { nouns } from '../layout/schema.ts';
import { refuse } from './change.ts';

/** What fields of the case are called among people. */
const FIELDS: Readonly<Record<string, string>> = {
  awg: 'gauge of the lead',
  bus: 'bus',
  case: 'case',
  depthMm: 'depth',
  dxMm: 'place of a header',
  dyMm: 'place of a header',
  gapMm: 'gap',
  headers: 'list of headers',
  heightU: 'height',
  id: 'mark of a header',
  lengthMm: 'length of the lead',
  limits: 'limit',
  name: 'name',
  ratings: 'rating',
  riseMm: 'rise',
  widthHp: 'width',
  widthMm: 'width',
  xMm: 'place',
  yMm: 'height',
};

/**
 * The refusal of what a layout could not be opened with again; none where the schema takes it.
 *
 * @param name - what the thing is called in a refusal
 */
export function refuseIfUnfit(noun: 'Row' | 'Supply' | 'Board', thing: object, name: string) {
  const issue = safeParse(nouns[noun], thing, { abortEarly: true }).issues?.[0];
  if (!issue) return undefined;
  const field = pathOf(issue).findLast((key) => typeof key === 'string' && key in FIELDS);
  return refuse(`The ${FIELDS[field ?? ''] ?? 'data'} of ${name || 'a nameless thing'} ${issueWords(issue)}`);
}
