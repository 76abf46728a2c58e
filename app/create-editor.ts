import type { Layout } from '../src/index.ts';
import type { Editor, Platform } from './editor.ts';
import { createGestures } from './store/gestures.ts';
import { createHints } from './store/hints.ts';
import { createKeepStore } from './store/keep.ts';
import { createLayoutStore } from './store/layout-store.ts';
import { createSessionStore } from './store/session-store.ts';

export function createEditor(layout: Layout, platform: Platform): Editor {
  const layouts = createLayoutStore(layout);
  return {
    layouts,
    session: createSessionStore(platform.preferences),
    gestures: createGestures(layouts, platform.clock),
    hints: createHints(),
    keep: createKeepStore(),
    platform,
  };
}
