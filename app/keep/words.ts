import type { StorageFault } from '../platform/storage.ts';
import type { Keeping } from '../store/keep.ts';

const FAULTS: Readonly<Record<StorageFault, string>> = {
  blocked: 'storage is blocked',
  full: 'storage is full',
  newer: 'a newer version was here',
  broken: 'storage does not answer',
};

export const faultWords = (fault: StorageFault): string => FAULTS[fault];

/** How it stands with keeping, in few words. */
export function keepingWords(keeping: Keeping): string {
  switch (keeping.is) {
    case 'untouched':
      return 'Nothing to save yet';
    case 'opening':
      return 'Opening…';
    case 'saving':
      return 'Saving…';
    case 'saved':
      return 'Saved on this device';
    case 'failed':
      return `Not saved: ${FAULTS[keeping.fault]}`;
    case 'following':
      return 'Another tab changes it';
  }
}

/** Where there is little room. */
export const SHORT: Readonly<Partial<Record<Keeping['is'], string>>> = {
  // There is no room to say that there is nothing to say.
  untouched: '',
  saved: '✓',
};

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });

const ago = (count: number, unit: string): string => `${count} ${unit}${count === 1 ? '' : 's'} ago`;

/** How long ago something was; the day where that is long. A clock that was put back makes nothing of it. */
export function agoWords(at: number, now: number): string {
  const ms = now - at;
  if (ms < MINUTE) return 'just now';
  if (ms < HOUR) return ago(Math.floor(ms / MINUTE), 'minute');
  if (ms < DAY) return ago(Math.floor(ms / HOUR), 'hour');
  if (ms < 2 * DAY) return 'yesterday';
  if (ms < 14 * DAY) return ago(Math.floor(ms / DAY), 'day');
  return day.format(at);
}
