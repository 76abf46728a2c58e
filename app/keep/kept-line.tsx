import '../style/keep.css';
import { useState } from 'react';
import { useStore } from 'zustand';
import { start } from '../actions/action.ts';
import { saveFile } from '../actions/save-file.ts';
import { showLayouts } from '../actions/show-layouts.ts';
import { useEditor } from '../hooks.ts';
import { keepingWords, SHORT } from './words.ts';

/** Tells that a newer program is ready; it waits until it is wanted. */
function UpdateNote() {
  const { keep } = useEditor();
  const update = useStore(keep, (state) => state.update);
  const [later, setLater] = useState<(() => void) | null>(null);
  const isShown = update !== null && update !== later;
  return (
    <div className="update-place" aria-live="polite">
      {isShown && (
        <div className="update-note">
          <p>
            <b>A new version is ready.</b> Your layout is saved before it is loaded.
          </p>
          <button type="button" className="do" onClick={update}>
            Load it
          </button>
          <button type="button" className="quiet" onClick={() => setLater(() => update)}>
            Later
          </button>
        </div>
      )}
    </div>
  );
}

/** How it stands with keeping the layout, and the way to all that are kept. */
export function KeptLine() {
  const editor = useEditor();
  const keeping = useStore(editor.keep, (state) => state.keeping);
  const words = keepingWords(keeping);
  return (
    <div className={`kept-line ${keeping.is}`}>
      <button
        type="button"
        className="to-layouts"
        title="My layouts (M)"
        onClick={() => start(editor, showLayouts)}
      >
        My layouts
      </button>
      <span title={words} data-short={SHORT[keeping.is]}>
        {words}
      </span>
      {keeping.is === 'following' && (
        <button
          type="button"
          className="to-layouts"
          onClick={() => void editor.keep.getState().keeper?.takeOver()}
        >
          Change it here
        </button>
      )}
      {keeping.is === 'failed' && (
        <button type="button" className="to-layouts" onClick={() => start(editor, saveFile)}>
          Save as a file
        </button>
      )}
      <UpdateNote />
    </div>
  );
}
