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
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { demoLayout } from '../src/index.ts';
import { App } from './app.tsx';
import { createEditor } from './create-editor.ts';
import { ErrorBoundary } from './error-boundary.tsx';
import type { Clipboard } from './platform/clipboard.ts';
import { browserClock } from './platform/clock.ts';
import { browserPreferences } from './platform/preferences.ts';

let clipboard: Promise<Clipboard> | undefined;

const editor = createEditor(demoLayout(), {
  address: async () => (await import('./platform/address.ts')).browserAddress(),
  // The one that keeps what was copied last.
  clipboard: () =>
    (clipboard ??= import('./platform/clipboard.ts').then(({ browserClipboard }) => browserClipboard())),
  files: async () => (await import('./platform/files.ts')).browserFiles(),
  preferences: browserPreferences(),
  clock: browserClock,
});

const root = document.getElementById('root');
if (root) {
  createRoot(root).render(
    <StrictMode>
      <ErrorBoundary layout={editor.layouts.layout}>
        <App editor={editor} />
      </ErrorBoundary>
    </StrictMode>,
  );
}
