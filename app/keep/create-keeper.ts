import { fail, type Layout, ok, type Result } from '../../src/index.ts';
import type { Channel } from '../platform/channel.ts';
import type { Clock } from '../platform/clock.ts';
import type { Journal, JournalEntry } from '../platform/journal.ts';
import type { PageLife } from '../platform/page-life.ts';
import type { Shelf, StorageFault } from '../platform/storage.ts';
import type { Grip, HowToTake, TabLock } from '../platform/tab-lock.ts';
import type { Keeper, Keeping, KeepStore } from '../store/keep.ts';
import type { LayoutStore } from '../store/layout-store.ts';
import { untouched } from '../store/untouched.ts';
import { asCopy, firstRecord, isKept, type KeptLayout, rewritten, withUnsaved } from './kept-layout.ts';
import { openKept } from './open-kept.ts';

/** Edits that follow one another faster than this are saved together, ms. */
const SETTLE_MS = 80;

/** What could not be saved is tried again after so long, ms. */
const RETRY_MS = 15_000;

/** A tab that is asked for a layout and says nothing for so long is asleep, ms. */
const YIELD_MS = 1500;

/** Why edits are refused for now, as the end of a sentence. */
const OPENING = 'The layout is still opening';
const FOLLOWING = 'Another tab is changing this layout';

interface Doors {
  readonly layouts: LayoutStore;
  readonly keep: KeepStore;
  readonly shelf: Shelf;
  readonly journal: Journal;
  readonly lock: TabLock;
  readonly channel: Channel;
  readonly life: PageLife;
  readonly clock: Clock;
  readonly freshId: () => string;
  /** Calls off what is under way on the drawing. */
  readonly letGo: () => void;
  readonly tell: (banner: string) => void;
}

/** What tabs say to each other: a layout was saved; may I have it?; here it is. */
interface Message {
  readonly says: 'saved' | 'yield' | 'yielded';
  readonly id: string;
}

const isMessage = (heard: unknown): heard is Message =>
  typeof heard === 'object' && heard !== null && 'says' in heard && 'id' in heard;

/** Opening: it is being found out who may write. */
type Role = 'opening' | 'writer' | 'follower';

type State = Pick<KeptLayout, 'epoch' | 'revision'>;

/**
 * Keeps the layout of this tab from now on. All that it does with the shelf it does one after the other, so that no two
 * of its own steps meet there; against other tabs stand a lock for each layout and an epoch in its record.
 *
 * @param begun - the record that the layout on the screen was opened from
 */
export function createKeeper(doors: Doors, begun: KeptLayout | null): Keeper & { readonly stop: () => void } {
  const { layouts, keep, shelf, journal, lock, channel, life, clock } = doors;

  let present: Layout = layouts.layout();
  /** Layouts as the shelf has them, of all that this tab has had. */
  const saved = new Map<string, Layout>(begun && begun.id === present.id ? [[begun.id, present]] : []);
  let role: Role = 'opening';
  let epoch = 0;
  /** Whether the record bears this tab's epoch, or there is none yet. */
  let isClaimed = false;
  let grip: Grip | null = null;
  let callOff: (() => void) | null = null;
  /** Records as this tab last saw them, of all layouts that it has had. */
  const seen = new Map<string, State>(begun ? [[begun.id, begun]] : []);
  /** The record of the layout shown, to be written without a look when the page goes. */
  let record: KeptLayout | null = begun;
  /** Ids of layouts that were given to the shelf, whether it has said so or not. */
  const sent = new Set<string>();
  let fault: StorageFault | null = null;
  let askedToPersist = false;
  let hasTold = false;
  /** An edit was saved a moment ago. */
  let isResting = false;
  let yielded: (() => void) | null = null;

  const idOf = ({ id }: Layout): string => id ?? '';
  const isDirty = (): boolean =>
    present !== saved.get(idOf(present)) &&
    (sent.has(idOf(present)) || seen.has(idOf(present)) || !untouched.has(present));

  /** Before anything else, and without waiting: from here on the edit is safe. */
  function noteDown(): void {
    const id = idOf(present);
    if (!isDirty()) {
      if (role === 'writer') journal.clear(id);
    } else if (role === 'writer' || !seen.has(id) || sent.has(id)) {
      const { title } = present;
      const epoch = seen.get(id)?.epoch ?? 1;
      journal.note({ id, title, text: JSON.stringify(present), epoch, changed: clock.now() });
    }
  }

  let queue: Promise<unknown> = Promise.resolve();
  function inTurn<T>(work: () => Promise<T>): Promise<T> {
    const next = queue.then(work);
    queue = next.catch(() => {});
    return next;
  }

  const say = (keeping: Keeping): void => keep.setState({ keeping });
  function sayHowItStands(): void {
    if (role === 'opening') say({ is: 'opening' });
    else if (role === 'follower') say({ is: 'following' });
    else if (fault) say({ is: 'failed', fault });
    else if (isDirty()) say({ is: 'saving' });
    else say({ is: seen.has(idOf(present)) ? 'saved' : 'untouched' });
  }

  function tellFailure(why: StorageFault): void {
    fault = why;
    if (!hasTold) {
      doors.tell(
        'Not saved on this device. The layout is still here as long as this page is open: save it as a file.',
      );
    }
    hasTold = true;
  }

  /** Shows what another tab has made of the layout. */
  async function adopt(found: unknown): Promise<void> {
    if (!isKept(found)) return;
    seen.set(found.id, found);
    record = found;
    const opened = await openKept(found);
    if (!opened.ok) {
      // Made by a newer program in another tab: never to be written by this one.
      layouts.hold('A newer version of the program has changed this layout; load the page again');
      return;
    }
    present = opened.value;
    saved.set(found.id, present);
    layouts.follow(present);
  }

  function take(how: HowToTake): Grip {
    const id = idOf(present);
    const mine: Grip = lock.take(id, how, () => {
      if (grip === mine) void inTurn(() => beFollower());
    });
    grip = mine;
    return mine;
  }

  /** A layout of this tab's own making that another tab's has overtaken is kept beside it. */
  async function keepBeside(layout: Layout): Promise<void> {
    const copy = asCopy({ ...layout, title: `${layout.title} (from another tab)` }, doors.freshId());
    const done = await shelf.change(idOf(copy), () => firstRecord(copy, idOf(copy), clock.now()));
    if (done.ok) journal.clear(idOf(layout));
    doors.tell(
      done.ok
        ? `Another tab has changed this layout. What you did here is kept as “${copy.title}”.`
        : 'Another tab has changed this layout, and what you did here could not be kept.',
    );
  }

  /** What another page did before it went, on what has been changed since. */
  async function keepEntryBeside(entry: JournalEntry): Promise<void> {
    const opened = await openKept(entry);
    if (opened.ok) await keepBeside(opened.value);
  }

  async function beFollower(): Promise<void> {
    if (role === 'writer' && isDirty()) await save();
    const unsaved = role === 'writer' && isDirty() ? present : null;
    role = 'follower';
    doors.letGo();
    layouts.hold(FOLLOWING);
    if (unsaved) await keepBeside(unsaved);
    grip?.release();
    const waiting = take('when-free');
    void waiting.held.then((isHeld) => {
      if (isHeld && grip === waiting) void inTurn(() => beWriter());
    });
    await refresh();
    sayHowItStands();
  }

  /** Shows what another tab has saved since. */
  async function refresh(): Promise<void> {
    if (role !== 'follower') return;
    const found = await shelf.read(idOf(present));
    if (found.ok && isKept(found.value) && isNews(found.value)) await adopt(found.value);
  }

  /** What another tab may have done meanwhile; where there are no locks, that it began to write too. */
  async function catchUp(): Promise<void> {
    if (role !== 'writer') return refresh();
    if (!isClaimed) return;
    const found = await shelf.read(idOf(present));
    if (found.ok && isKept(found.value) && found.value.epoch > epoch) await beFollower();
  }

  /** Within an epoch one tab writes: what is older than what it knows is what it wrote before. */
  const isNews = (found: KeptLayout): boolean => {
    const known = seen.get(found.id);
    return known?.epoch !== found.epoch || known.revision < found.revision;
  };

  /** The lock is held: from now on this tab writes. */
  async function beWriter(): Promise<void> {
    role = 'writer';
    isClaimed = false;
    layouts.hold(null);
    if (!(await claim())) schedule(RETRY_MS);
    sayHowItStands();
    if (isClaimed && isDirty()) schedule(0);
  }

  /** Writes an epoch of its own into the record, and takes over what came in between; whether it could. */
  async function claim(): Promise<boolean> {
    const id = idOf(present);
    if (seen.has(id)) {
      // What this tab has done meanwhile goes on from what it knows; any other note is of a page that went too soon.
      const entry = isDirty() ? undefined : journal.of(id);
      const claimed = await shelf.change(id, (before) =>
        isKept(before)
          ? { ...withUnsaved(before, entry), epoch: before.epoch + 1, opened: clock.now() }
          : null,
      );
      if (!claimed.ok) {
        tellFailure(claimed.error);
        return false;
      }
      fault = null;
      const { before, after } = claimed.value;
      if (isKept(before) && isKept(after)) {
        const isReplayed = after.text !== before.text && after.text !== record?.text;
        const hasChanged = isReplayed || isNews(before);
        const mine = hasChanged && isDirty() ? present : null;
        epoch = after.epoch;
        seen.set(id, after);
        record = after;
        channel.post({ says: 'saved', id } satisfies Message);
        if (hasChanged) await adopt(after);
        if (mine) await keepBeside(mine);
        else if (entry && entry.text !== after.text) await keepEntryBeside(entry);
        noteDown();
      } else {
        // Deleted meanwhile; what is changed from now on is kept anew.
        seen.delete(id);
        record = null;
      }
    }
    isClaimed = true;
    return true;
  }

  /** Another layout has come on the screen: finds out whether this tab may write it. */
  async function settle(): Promise<void> {
    const id = idOf(present);
    if (seen.has(id)) {
      layouts.hold(OPENING);
      say({ is: 'opening' });
    }
    const isHeld = await take('now').held;
    if (isHeld) await beWriter();
    else await beFollower();
  }

  async function save(): Promise<void> {
    callOff?.();
    callOff = null;
    if (role !== 'writer') return;
    if (!isClaimed && !(await claim())) {
      schedule(RETRY_MS);
      sayHowItStands();
      return;
    }
    if (!isDirty()) {
      sayHowItStands();
      return;
    }
    const layout = present;
    const id = idOf(layout);
    say({ is: 'saving' });
    let isStale = false;
    sent.add(id);
    const done = await shelf.change(id, (before) => {
      isStale = isKept(before) && before.epoch !== epoch;
      // What stands there and cannot be told is not overwritten; nothing but this program writes there.
      if (isStale || (before !== undefined && !isKept(before))) return null;
      return isKept(before) ? rewritten(before, layout, clock.now()) : firstRecord(layout, id, clock.now());
    });
    if (!done.ok) {
      tellFailure(done.error);
      schedule(RETRY_MS);
    } else if (isStale) {
      await overtaken(layout, done.value.after);
    } else if (isKept(done.value.after)) {
      const { after } = done.value;
      saved.set(id, layout);
      record = after;
      epoch = after.epoch;
      seen.set(id, after);
      if (idOf(present) === id) noteDown();
      else journal.clear(id);
      fault = null;
      hasTold = false;
      channel.post({ says: 'saved', id } satisfies Message);
      askToPersist();
      if (isDirty()) schedule(SETTLE_MS);
    } else {
      tellFailure('broken');
    }
    sayHowItStands();
  }

  /** Another tab has written since: its layout is shown, this one's is kept beside it. */
  async function overtaken(mine: Layout, theirs: unknown): Promise<void> {
    role = 'follower';
    await adopt(theirs);
    if (!isKept(theirs) || theirs.text !== JSON.stringify(mine)) await keepBeside(mine);
    await beFollower();
  }

  function askToPersist(): void {
    if (askedToPersist) return;
    askedToPersist = true;
    void shelf.persist().then((persisted) => keep.setState({ persisted }));
  }

  function schedule(ms: number): void {
    callOff?.();
    callOff = clock.after(ms, () => {
      callOff = null;
      void inTurn(save);
    });
  }

  /** The first edit at once, those that follow fast together. */
  function saveSoon(): void {
    if (callOff) return;
    if (isResting) {
      schedule(SETTLE_MS);
      return;
    }
    isResting = true;
    clock.after(SETTLE_MS, () => {
      isResting = false;
    });
    void inTurn(save);
  }

  const endLayouts = layouts.store.subscribe(() => {
    const layout = layouts.layout();
    if (layout === present) return;
    if (idOf(layout) === idOf(present)) {
      present = layout;
      noteDown();
      if (role === 'writer' && isDirty()) {
        if (fault) schedule(SETTLE_MS);
        else saveSoon();
        sayHowItStands();
      }
      return;
    }
    moveTo(layout);
  });

  /** What is on the screen from now on is another layout; the one before is saved as it was left. */
  function moveTo(layout: Layout): void {
    const before = { layout: present, epoch, grip };
    const isUnsaved = isDirty() && (role === 'writer' || !seen.has(idOf(present)));
    present = layout;
    record = null;
    role = 'opening';
    noteDown();
    grip = null;
    callOff?.();
    callOff = null;
    layouts.hold(seen.has(idOf(layout)) ? OPENING : null);
    void inTurn(async () => {
      if (isUnsaved) await saveLeft(before.layout, before.epoch);
      before.grip?.release();
      if (present.id === layout.id && role === 'opening') await settle();
    });
  }

  async function saveLeft(layout: Layout, lastEpoch: number): Promise<void> {
    const id = idOf(layout);
    const done = await shelf.change(id, (before) => {
      if (before === undefined) return firstRecord(layout, id, clock.now());
      return isKept(before) && before.epoch === lastEpoch ? rewritten(before, layout, clock.now()) : null;
    });
    if (!done.ok) tellFailure(done.error);
    else if (isKept(done.value.after)) {
      seen.set(id, done.value.after);
      saved.set(id, layout);
      journal.clear(id);
    }
  }

  const endLife = life.onGoing((going) => {
    if (going === 'back') {
      void inTurn(catchUp);
      return;
    }
    if (!isDirty() || role === 'follower' || (role === 'opening' && record)) return;
    if (going === 'hidden') {
      void inTurn(save);
      return;
    }
    const id = idOf(present);
    sent.add(id);
    // A page that comes back must know it for its own, whether it ever came to the shelf or not.
    record = record ? rewritten(record, present, clock.now()) : firstRecord(present, id, clock.now());
    seen.set(id, record);
    if (isClaimed) epoch = record.epoch;
    shelf.putNow(record);
  });

  const endChannel = channel.listen((heard) => {
    if (!isMessage(heard) || heard.id !== idOf(present)) return;
    if (heard.says === 'yielded') yielded?.();
    if (heard.says === 'saved') void inTurn(catchUp);
    if (heard.says === 'yield' && role === 'writer') {
      doors.letGo();
      layouts.hold(FOLLOWING);
      void inTurn(async () => {
        if (role !== 'writer' || heard.id !== idOf(present)) return;
        await save();
        if (isDirty()) {
          // Given away now it would be lost.
          layouts.hold(null);
          return;
        }
        await beFollower();
        channel.post({ says: 'yielded', id: heard.id } satisfies Message);
      });
    }
  });

  sayHowItStands();
  void inTurn(settle);

  return {
    shelf,
    async flush() {
      await inTurn(save);
      return !isDirty() || role !== 'writer';
    },
    async takeOver() {
      const id = idOf(present);
      // A tab may have missed that it is no longer the writer, and would be asking for what it takes for its own.
      await inTurn(catchUp);
      const answer = new Promise<void>((resolve) => {
        yielded = resolve;
        clock.after(YIELD_MS, resolve);
      });
      channel.post({ says: 'yield', id } satisfies Message);
      await answer;
      yielded = null;
      await inTurn(async () => {
        if (role !== 'follower' || idOf(present) !== id) return;
        const waiting = grip;
        const taken = take('from-other');
        waiting?.release();
        if (await taken.held) await beWriter();
      });
    },
    async open(id) {
      if (id === idOf(present)) return ok(undefined);
      const found = await shelf.read(id);
      if (!found.ok) return fail('The browser did not give it out');
      if (!isKept(found.value)) return fail('It is not kept any more');
      const opened = await openKept(found.value);
      if (!opened.ok) return opened;
      seen.set(id, found.value);
      saved.set(id, opened.value);
      layouts.replace(opened.value, `open ${opened.value.title}`);
      return ok(undefined);
    },
    async alone<T>(id: string, work: () => Promise<Result<T, string>>) {
      const hold = lock.take(id, 'now', () => {});
      try {
        if (await hold.held) return await work();
        return fail('It is open in another tab');
      } finally {
        hold.release();
      }
    },
    forget(id) {
      seen.delete(id);
      sent.delete(id);
      journal.clear(id);
      if (id !== idOf(present)) return;
      saved.set(id, present);
      record = null;
      untouched.add(present);
    },
    stop() {
      endLayouts();
      endLife();
      endChannel();
      callOff?.();
      grip?.release();
    },
  };
}
