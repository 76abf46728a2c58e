import { start } from '../actions/action.ts';
import { showAllLayers } from '../actions/layers.ts';
import { useAction, useAnalysis, useEditor, useSession } from '../hooks.ts';
import { layersOf, toggleLayer } from '../store/layer-list.ts';

/** What the drawing shows, layer by layer. */
export function LayersBody() {
  const editor = useEditor();
  const hidden = useSession((session) => session.hidden);
  const { derived } = useAnalysis();
  const { enabled, label } = useAction(showAllLayers);
  return (
    <>
      <h2>Show in the drawing</h2>
      <ul>
        {layersOf(derived).map(({ key, name, count }) => (
          <li key={key}>
            <label>
              <input
                type="checkbox"
                checked={!hidden.has(key)}
                onChange={() => toggleLayer(editor.session, key)}
              />
              <span>{name}</span>
              {count !== undefined && <small>{count}</small>}
            </label>
          </li>
        ))}
      </ul>
      <p>
        Hidden ribbons stay as dashes and cannot be hit. Notes about them keep their marks, and a note that is
        touched shows them.
      </p>
      <button
        type="button"
        className="quiet"
        aria-disabled={!enabled}
        onClick={() => start(editor, showAllLayers)}
      >
        {label}
      </button>
    </>
  );
}
