import type { Address } from './platform/address.ts';
import type { Clipboard } from './platform/clipboard.ts';
import type { Clock } from './platform/clock.ts';
import type { Files } from './platform/files.ts';
import type { Photographs } from './platform/photographs.ts';
import type { Preferences } from './platform/preferences.ts';
import { type Analysis, analyse } from './store/analysis.ts';
import type { Gestures } from './store/gestures.ts';
import type { Hints } from './store/hints.ts';
import type { KeepStore } from './store/keep.ts';
import type { LayoutStore } from './store/layout-store.ts';
import type { SessionStore } from './store/session-store.ts';
import { takeOf } from './store/shown.ts';

/** The browser's powers, each behind a door of its own. */
export interface Platform {
  /** Loaded when they are first needed. */
  readonly address: () => Promise<Address>;
  readonly clipboard: () => Promise<Clipboard>;
  readonly files: () => Promise<Files>;
  readonly photographs: () => Promise<Photographs>;
  readonly preferences: Preferences;
  readonly clock: Clock;
  /** A name that nothing else bears, for a new layout. */
  readonly freshId: () => string;
}

/** All that the screen, the tools and the actions share. */
export interface Editor {
  readonly layouts: LayoutStore;
  readonly session: SessionStore;
  readonly gestures: Gestures;
  readonly hints: Hints;
  readonly keep: KeepStore;
  readonly platform: Platform;
}

/** The take on the sheet as it stands in the document, a running gesture aside. */
export function shownTake({ layouts, session }: Editor) {
  const layout = layouts.layout();
  return takeOf(layout, session.getState().take);
}

export function shownAnalysis(editor: Editor): Analysis {
  return analyse(editor.layouts.layout().kit, shownTake(editor));
}
