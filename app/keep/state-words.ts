import type { Layout } from '../../src/index.ts';
import { compareLayouts } from '../../src/share.ts';

/** As many changes as are told one by one. */
const MOST_TOLD = 2;

/** What was done to a layout after a state of it, up to the next one, in few words. */
export function changeWords(before: Layout, after: Layout): string {
  const found = compareLayouts(before, after);
  if (found.length === 0) return 'Then changed in small things only.';
  const told = found.slice(0, MOST_TOLD).map(({ words }) => words);
  const more = found.length - told.length;
  return `Then: ${told.join(' ')}${more > 0 ? ` And ${more} more.` : ''}`;
}

const clockTime = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const dayAndTime = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  hour: '2-digit',
  minute: '2-digit',
});

/** When a state was left: the time alone where it was on the same day. */
export const whenWords = (at: number, now: number): string =>
  (new Date(at).toDateString() === new Date(now).toDateString() ? clockTime : dayAndTime).format(at);
