import { lookAnew } from '../actions/take-layout.ts';
import type { Editor } from '../editor.ts';
import { browserChannel } from '../platform/channel.ts';
import { browserPageLife } from '../platform/page-life.ts';
import { browserOffline } from '../platform/service-worker.ts';
import { browserShelf, type Shelf } from '../platform/storage.ts';
import { browserTabLock } from '../platform/tab-lock.ts';
import { untouched } from '../store/untouched.ts';
import { type Beginning, rememberIn, tabMemory } from './begin.ts';
import { createKeeper } from './create-keeper.ts';
import { followUpdates } from './follow-updates.ts';

/** What the shelf answered before the first screen stood, or does yet. */
export interface Begun {
  readonly shelf: Shelf;
  readonly beginning: Beginning;
}

/** Keeps the layout from now on: what is shown stands, and the shelf has answered or will not. */
export function startKeeping(editor: Editor, begun: Begun | null): void {
  const { layouts, keep, session, gestures, platform } = editor;
  const beginning = begun?.beginning ?? ({ is: 'fault', fault: 'blocked' } as const);
  const tell = (banner: string): void => session.setState({ banner });
  const memory = tabMemory();

  let record = null;
  if (beginning.is === 'kept') {
    const shown = layouts.layout();
    if (shown === beginning.layout) {
      record = beginning.record;
    } else if (untouched.has(shown)) {
      // The shelf took its time; nothing was done on the demo meanwhile.
      layouts.follow(beginning.layout);
      lookAnew(editor);
      record = beginning.record;
    } else {
      tell(`“${beginning.record.title}” is in My layouts; the browser took long to find it.`);
    }
  }
  if (beginning.is === 'unreadable') {
    tell(`“${beginning.title}” could not be opened: ${beginning.why}. It is kept as it is, in My layouts.`);
  }
  if (beginning.is === 'fault') {
    tell(
      beginning.fault === 'newer'
        ? 'A newer version of the program has been here: nothing is saved until you load the page again.'
        : 'The browser lets this page keep nothing. Save your layout as a file before you leave.',
    );
  }

  const remember = (): void => rememberIn(memory, layouts.layout().id ?? '');
  const keeper = createKeeper(
    {
      layouts,
      keep,
      shelf: begun?.shelf ?? browserShelf(),
      lock: browserTabLock(),
      channel: browserChannel(),
      life: browserPageLife,
      clock: platform.clock,
      freshId: platform.freshId,
      letGo: () => gestures.cancel(),
      tell,
    },
    record,
  );
  remember();
  layouts.store.subscribe((now, then) => {
    if (now.history.present.id !== then.history.present.id) remember();
  });
  keep.setState({ keeper });
  if (import.meta.env.PROD) {
    followUpdates({
      offline: browserOffline(),
      keep,
      keeper,
      clock: platform.clock,
      tell,
      reload: () => location.reload(),
    });
  }
}
