import { lazy, Suspense, useLayoutEffect } from 'react';
import { start } from './actions/action.ts';
import { showList } from './actions/show-list.ts';
import type { Editor } from './editor.ts';
import { EditorContext, useEditor, useSession } from './hooks.ts';
import { Banner, Spoken } from './panels/banner.tsx';
import { TitleBlock } from './panels/title-block.tsx';
import { TopBar } from './panels/top-bar.tsx';
import { Tray } from './panels/tray.tsx';
import { Stage } from './stage/stage.tsx';
import { isPanel } from './store/session.ts';
import { isNarrow } from './store/view.ts';
import { paintPage } from './style/paint.ts';
import { useThemeName } from './style/use-theme.ts';

/** Loaded when there is something to show in them. */
const FoldBar = lazy(async () => ({ default: (await import('./panels/fold-bar.tsx')).FoldBar }));
const ListPanel = lazy(async () => ({ default: (await import('./by-list/list-panel.tsx')).ListPanel }));
const HeatLegend = lazy(async () => ({ default: (await import('./power/heat-legend.tsx')).HeatLegend }));
/** There are none before the checks have come, which they do by themselves. */
const Notes = lazy(async () => ({ default: (await import('./panels/notes.tsx')).Notes }));
const MarginPanel = lazy(async () => ({
  default: (await import('./panels/margin-panel.tsx')).MarginPanel,
}));
const Overlays = lazy(async () => ({ default: (await import('./panels/overlays.tsx')).Overlays }));
const ThisPart = lazy(async () => ({ default: (await import('./panels/this-part.tsx')).ThisPart }));

/** What lies over everything else, while any of these is set. */
const COVERS = [
  'asked',
  'choosing',
  'handsOver',
  'help',
  'kindDesk',
  'offered',
  'rehearsing',
  'showsLayouts',
  'showsLicences',
  'showsSheet',
  'statesOf',
  'stockDesk',
] as const;

/** The first stop of the keys: to the list of all that is in the take. */
function SkipLink() {
  const editor = useEditor();
  const skip = (): void => {
    editor.session.setState({ listOpen: false, fold: null });
    start(editor, showList);
  };
  return (
    <button type="button" className="skip" onClick={skip}>
      Skip to By list
    </button>
  );
}

function Desk() {
  const narrow = useSession(({ stage }) => isNarrow(stage));
  const hasSelection = useSession(({ selection }) => selection.size > 0);
  const showsPower = useSession(({ fold }) => fold === 'power');
  const isTaken = useSession(({ fold }) => isPanel(fold));
  const hasHeat = useSession(({ heat }) => heat !== null) && !showsPower;
  const isCovered = useSession((session) => COVERS.some((key) => Boolean(session[key])));
  const showsList = useSession(({ listOpen }) => listOpen) && !isTaken;
  const labels = useSession(({ labelling }) => labelling);
  const theme = useThemeName();
  useLayoutEffect(() => paintPage(theme, document.documentElement), [theme]);
  return (
    <div className={narrow ? 'desk narrow' : 'desk'}>
      <SkipLink />
      <TopBar />
      <main>
        <Stage />
        {!narrow && (
          <aside className="margin" aria-label="Margin">
            <Suspense>{isTaken || showsList || <Notes besideRows />}</Suspense>
            <Suspense>{showsList && <ListPanel />}</Suspense>
            <Suspense>{isTaken && <MarginPanel />}</Suspense>
            <Suspense>{hasSelection && !isTaken && (!showsList || labels) && <ThisPart />}</Suspense>
            <Suspense>{hasHeat && <HeatLegend />}</Suspense>
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
