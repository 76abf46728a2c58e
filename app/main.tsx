import './platform/trusted-types.ts';
import './style/tokens.css';
import './style/base.css';
import './style/desk.css';
import './style/top-bar.css';
import './style/layers.css';
import './style/menu.css';
import './style/notes.css';
import './style/this-part.css';
import './style/title-block.css';
import './style/tray.css';
import './style/narrow.css';
import './style/forced-colours.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { demoLayout } from '../src/index.ts';
import { App } from './app.tsx';
import { createEditor } from './create-editor.ts';
import { ErrorBoundary } from './error-boundary.tsx';
import { begin } from './keep/begin.ts';
import type { Clipboard } from './platform/clipboard.ts';
import { browserClock } from './platform/clock.ts';
import { freshId } from './platform/ids.ts';
import type { Photographs } from './platform/photographs.ts';
import { browserPreferences } from './platform/preferences.ts';
import { untouched } from './store/untouched.ts';

/** The first screen waits so long for what is kept; a browser that has not answered then shows the demo, ms. */
const PATIENCE_MS = 3000;

let clipboard: Promise<Clipboard> | undefined;
let photographs: Promise<Photographs> | undefined;

const platform = {
  address: async () => (await import('./platform/address.ts')).browserAddress(),
  // The one that keeps what was copied last.
  clipboard: () =>
    (clipboard ??= import('./platform/clipboard.ts').then(({ browserClipboard }) => browserClipboard())),
  files: async () => (await import('./platform/files.ts')).browserFiles(),
  // One connection to what is kept.
  photographs: () =>
    (photographs ??= import('./platform/photographs.ts').then(({ browserPhotographs }) =>
      browserPhotographs(),
    )),
  preferences: browserPreferences(),
  clock: browserClock,
  freshId,
};

function firstLayout() {
  const layout = { ...demoLayout(), id: freshId() };
  untouched.add(layout);
  return layout;
}

async function open(root: HTMLElement): Promise<void> {
  const begun = begin().catch(() => null);
  const inTime = await Promise.race([
    begun,
    new Promise<null>((resolve) => browserClock.after(PATIENCE_MS, () => resolve(null))),
  ]);
  const editor = createEditor(
    inTime?.beginning.is === 'kept' ? inTime.beginning.layout : firstLayout(),
    platform,
  );
  createRoot(root).render(
    <StrictMode>
      <ErrorBoundary layout={editor.layouts.layout}>
        <App editor={editor} />
      </ErrorBoundary>
    </StrictMode>,
  );
  try {
    const { startKeeping } = await import('./keep/keep.ts');
    startKeeping(editor, await begun);
  } catch {
    editor.keep.setState({ keeping: { is: 'failed', fault: 'broken' } });
  }
}

const root = document.getElementById('root');
if (root) void open(root);
