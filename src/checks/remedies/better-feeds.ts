import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend } from '../check.ts';
import { targetName } from '../words.ts';
import { feedElsewhere } from './loads.ts';
import { freshNotes, notesOf, takeAfter } from './outcome.ts';
import { editsOf } from './remedy.ts';

/** Less is not worth unplugging a lead for, mV: estimates are no better than that. */
const LEAST_GAIN_MV = 1;

/** Another module of an island that would better be fed, and what the module that loses most would lose, mV. */
export interface BetterFeed {
  readonly mend: Mend;
  /** What is fed now, and what would be. */
  readonly from: string;
  readonly to: string;
  readonly nowMv: number;
  readonly thenMv: number;
}

/** Whether edits bring no damage and no fault. */
function bringsNoHarm(take: WholeTake, mend: Mend): boolean {
  const after = takeAfter(take, editsOf(mend));
  return (
    after !== undefined &&
    freshNotes(notesOf(take), notesOf(after)).every(({ level }) => level === 'reminder')
  );
}

/**
 * For each island that its one lead would feed better elsewhere the best such place that brings no harm; the largest
 * gain first. Stops after each island, so that whoever asks can do other things in between.
 */
export function* searchBetterFeeds(take: WholeTake): Generator<undefined, readonly BetterFeed[]> {
  const found: BetterFeed[] = [];
  for (const island of take.supplyNet.islands) {
    for (const { mend, from, to, nowMv, thenMv } of feedElsewhere(take, island)) {
      if (nowMv - thenMv < LEAST_GAIN_MV) break;
      if (!bringsNoHarm(take, mend)) continue;
      const names = { from: targetName(from), to: targetName({ type: 'header', header: to }) };
      found.push({ mend, ...names, nowMv, thenMv });
      break;
    }
    yield;
  }
  return found.sort((a, b) => b.nowMv - b.thenMv - (a.nowMv - a.thenMv));
}
