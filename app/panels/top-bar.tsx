import { lazy, Suspense } from 'react';
import { perform } from '../actions/action.ts';
import { benchSheet } from '../actions/bench-sheet.ts';
import { handOver } from '../actions/hand-over.ts';
import { redo } from '../actions/redo.ts';
import { showList } from '../actions/show-list.ts';
import { undo } from '../actions/undo.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { ActionButton } from './action-button.tsx';
import { MainMenu } from './main-menu.tsx';
import { Takes } from './takes.tsx';
import { TextField } from './text-field.tsx';
import { VerdictLine } from './verdict.tsx';

/** Loaded once the first picture stands: by then there is something to tell. */
const KeptLine = lazy(async () => ({ default: (await import('../keep/kept-line.tsx')).KeptLine }));

/** What this is, which take of it, and how it stands. */
export function TopBar() {
  const editor = useEditor();
  const title = useLayout((layout) => layout.title);
  return (
    <header className="top-bar">
      <h1 className="unseen">Ribbonwright</h1>
      <div className="title-place">
        <TextField
          className="title"
          label="Title of the layout"
          value={title}
          onCommit={(text) => perform(editor, { type: 'rename-layout', title: text })}
        />
        <Suspense>
          <KeptLine />
        </Suspense>
      </div>
      <Takes />
      <VerdictLine />
      <div className="tools">
        <ActionButton action={showList} />
        <ActionButton action={undo} />
        <ActionButton action={redo} />
        <ActionButton action={handOver} />
        <ActionButton action={benchSheet} shows="both" className="do print-sheet" />
        <MainMenu />
      </div>
    </header>
  );
}
