import { perform } from '../actions/action.ts';
import { redo } from '../actions/redo.ts';
import { showList } from '../actions/show-list.ts';
import { undo } from '../actions/undo.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { ActionButton } from './action-button.tsx';
import { MainMenu } from './main-menu.tsx';
import { Takes } from './takes.tsx';
import { TextField } from './text-field.tsx';
import { VerdictLine } from './verdict.tsx';

/** What this is, which take of it, and how it stands. */
export function TopBar() {
  const editor = useEditor();
  const title = useLayout((layout) => layout.title);
  return (
    <header className="top-bar">
      <h1 className="unseen">Ribbonwright</h1>
      <TextField
        className="title"
        label="Title of the layout"
        value={title}
        onCommit={(text) => perform(editor, { type: 'rename-layout', title: text })}
      />
      <Takes />
      <VerdictLine />
      <div className="tools">
        <ActionButton action={showList} />
        <ActionButton action={undo} />
        <ActionButton action={redo} />
        <MainMenu />
      </div>
    </header>
  );
}
