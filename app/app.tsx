import { lazy, Suspense, useLayoutEffect } from 'react';
import type { Editor } from './editor.ts';
import { EditorContext, useSession } from './hooks.ts';
import { Banner, Spoken } from './panels/banner.tsx';
import { Notes } from './panels/notes.tsx';
import { TitleBlock } from './panels/title-block.tsx';
import { TopBar } from './panels/top-bar.tsx';
import { Tray } from './panels/tray.tsx';
import { Stage } from './stage/stage.tsx';
import { NARROW_PX } from './store/view.ts';
import { paintPage } from './style/paint.ts';
import { useThemeName } from './style/use-theme.ts';

/** Loaded when there is something to show in them. */
const CasePanel = lazy(async () => ({ default: (await import('./panels/case/case-panel.tsx')).CasePanel }));
const FoldBar = lazy(async () => ({ default: (await import('./panels/fold-bar.tsx')).FoldBar }));
const Overlays = lazy(async () => ({ default: (await import('./panels/overlays.tsx')).Overlays }));
const ThisPart = lazy(async () => ({ default: (await import('./panels/this-part.tsx')).ThisPart }));

function Desk() {
  const narrow = useSession(({ stage }) => stage.width > 0 && stage.width < NARROW_PX);
  const hasSelection = useSession(({ selection }) => selection.size > 0);
  const showsCase = useSession(({ fold }) => fold === 'case');
  const isCovered = useSession(({ asked, kindDesk, handsOver, offered, showsLayouts }) =>
    Boolean(asked || kindDesk || handsOver || offered || showsLayouts),
  );
  const theme = useThemeName();
  useLayoutEffect(() => paintPage(theme, document.documentElement), [theme]);
  return (
    <div className={narrow ? 'desk narrow' : 'desk'}>
      <TopBar />
      <main>
        <Stage />
        {!narrow && (
          <aside className="margin" aria-label="Margin">
            {showsCase || <Notes besideRows />}
            <Suspense>{showsCase && <CasePanel />}</Suspense>
            <Suspense>{hasSelection && !showsCase && <ThisPart />}</Suspense>
            <TitleBlock />
          </aside>
        )}
        <Banner />
      </main>
      <Suspense fallback={<div />}>{narrow ? <FoldBar /> : <Tray />}</Suspense>
      <Suspense>{isCovered && <Overlays />}</Suspense>
      <Spoken />
    </div>
  );
}

export const App = ({ editor }: { readonly editor: Editor }) => (
  <EditorContext value={editor}>
    <Desk />
  </EditorContext>
);
