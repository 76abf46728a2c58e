import { fail, type Layout, type Result } from '../../src/index.ts';
import { describeLinkFailure, openLink } from '../../src/share.ts';

/** The layout that a link carries, or one line that says what is wrong with it. */
export function readLink(text: string): Result<Layout, string> {
  const opened = openLink(text);
  return opened.ok ? opened : fail(describeLinkFailure(opened.error));
}

/** What is said of a link that takes longer to read than anybody waits. */
export const tooBigWords = (): string => describeLinkFailure({ kind: 'too-big' });
