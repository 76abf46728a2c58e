import type { Editor } from '../editor.ts';
import { browserChannel } from '../platform/channel.ts';
import { browserJournal } from '../platform/journal.ts';
import { browserPageLife } from '../platform/page-life.ts';
import { browserOffline } from '../platform/service-worker.ts';
import { browserShelf, type Shelf } from '../platform/storage.ts';
import { browserTabLock } from '../platform/tab-lock.ts';
import { type Beginning, rememberIn, sharedMemory, tabMemory } from './begin.ts';
import { createKeeper } from './create-keeper.ts';
import { followUpdates } from './follow-updates.ts';
import { greet } from './greet.ts';
import { keepStates } from './keep-states.ts';

/** What the shelf answered before the first screen stood, or does yet. */
export interface Begun {
  readonly shelf: Shelf;
  readonly beginning: Beginning;
}

/** Keeps the layout from now on: what is shown stands, and the shelf has answered or will not. */
export function startKeeping(editor: Editor, begun: Begun | null): void {
  const { layouts, keep, session, gestures, platform } = editor;
  const tell = (banner: string): void => session.setState({ banner });

  const record = greet(editor, begun?.beginning ?? { is: 'fault', fault: 'blocked' });
  // Should it be needed, it may be too late to fetch it.
  const end = keep.subscribe(({ keeping }) => {
    if (keeping.is !== 'failed') return;
    end();
    void Promise.all([import('../../src/document.ts'), import('../actions/save-file.ts'), platform.files()]);
  });

  const shelf = begun?.shelf ?? browserShelf();
  const keeper = createKeeper(
    {
      layouts,
      keep,
      shelf,
      journal: browserJournal(),
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
  rememberIn([tabMemory(), sharedMemory()], layouts);
  const room = { name: 'ribbonwright-states', store: 'states' };
  const states = browserShelf(undefined, room);
  keep.setState({
    keeper,
    states: keepStates({ layouts, keep, shelf, states, clock: platform.clock }),
  });
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
