import { type KeyboardEvent, useState } from 'react';
import { perform } from '../actions/action.ts';
import { addTake } from '../actions/add-take.ts';
import { showTake } from '../actions/show-take.ts';
import { nextTake, previousTake } from '../actions/step-take.ts';
import { useEditor, useLayout, useTake } from '../hooks.ts';
import { ActionButton } from './action-button.tsx';
import { TextField } from './text-field.tsx';

/** The takes as tabs; a double click renames the one shown. */
export function Takes() {
  const editor = useEditor();
  const takes = useLayout((layout) => layout.takes);
  const shown = useTake();
  const [renaming, setRenaming] = useState<string | null>(null);

  const onKeyDown = (event: KeyboardEvent<HTMLElement>): void => {
    const step = { ArrowRight: nextTake, ArrowLeft: previousTake }[event.key];
    if (!step || renaming !== null) return;
    event.preventDefault();
    step.run(editor);
    event.currentTarget
      .querySelectorAll<HTMLElement>('[role=tab]')
      [editor.layouts.layout().takes.findIndex(({ id }) => id === editor.session.getState().take)]?.focus();
  };

  return (
    <nav className="takes" aria-label="Takes">
      <div role="tablist" aria-label="Takes" onKeyDown={onKeyDown}>
        {takes.map(({ id, name }) =>
          renaming === id ? (
            <TextField
              key={id}
              label="Name of the take"
              value={name}
              autoFocus
              onCommit={(text) => perform(editor, { type: 'rename-take', take: id, name: text })}
              onLeave={() => setRenaming(null)}
            />
          ) : (
            <button
              key={id}
              type="button"
              role="tab"
              aria-selected={id === shown.id}
              tabIndex={id === shown.id ? 0 : -1}
              onClick={() => showTake(editor, id)}
              onDoubleClick={() => setRenaming(id)}
            >
              {name}
            </button>
          ),
        )}
      </div>
      <ActionButton action={addTake} />
    </nav>
  );
}
