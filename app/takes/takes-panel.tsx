import { useStore } from 'zustand';
import { perform } from '../actions/action.ts';
import { addTake } from '../actions/add-take.ts';
import { looksLikeLink, readLinkText } from '../actions/open-link.ts';
import { removeTake } from '../actions/remove-take.ts';
import { useEditor, useLayout, useTake } from '../hooks.ts';
import '../style/case.css';
import '../style/as-built.css';
import '../style/takes-panel.css';
import { ActionButton } from '../panels/action-button.tsx';
import { FoldPanel } from '../panels/fold-panel.tsx';
import { TextField } from '../panels/text-field.tsx';
import { Compared } from './compared.tsx';
import { Proposing } from './proposing.tsx';
import { takesDeskOf } from './takes-desk.ts';

/** Name and place of the take shown, a copy of it, or its end. */
function ThisTake() {
  const editor = useEditor();
  const takes = useLayout((layout) => layout.takes);
  const take = useTake();
  const at = takes.indexOf(take);
  const move = (to: number): void => perform(editor, { type: 'move-take', take: take.id, to });
  return (
    <section aria-label="This take">
      <TextField
        label="Name of the take"
        value={take.name}
        onCommit={(name) => perform(editor, { type: 'rename-take', take: take.id, name })}
      />
      <div className="take-deeds">
        <button type="button" aria-disabled={at === 0} onClick={() => at > 0 && move(at - 1)}>
          Earlier
        </button>
        <button
          type="button"
          aria-disabled={at === takes.length - 1}
          onClick={() => at < takes.length - 1 && move(at + 1)}
        >
          Later
        </button>
        <ActionButton action={addTake} shows="both" className="" />
        <ActionButton action={removeTake} shows="icon" className="" />
      </div>
    </section>
  );
}

/** Which take the one shown is compared with, a bandmate's among them. */
function CompareWith() {
  const editor = useEditor();
  const desk = takesDeskOf(editor);
  const state = useStore(desk);
  const takes = useLayout((layout) => layout.takes);
  const take = useTake();
  const own = takes.filter(({ id }) => id !== take.id);
  const theirs = state.linked?.takes ?? [];
  const linkKey = (id: string): string => `link/${id}`;
  const isLinked = theirs.some(({ id }) => linkKey(id) === state.with);
  const other =
    theirs.find(({ id }) => linkKey(id) === state.with) ??
    own.find(({ id }) => id === state.with) ??
    own[0] ??
    theirs[0];
  const openLink = async (text: string): Promise<void> => {
    if (!text.trim()) return;
    const read = looksLikeLink(text) ? await readLinkText(editor, text) : undefined;
    if (!read?.ok) {
      editor.session.setState({
        banner: read ? `Not opened: ${read.error}.` : 'That is no link to a layout.',
      });
      return;
    }
    desk.setState({ linked: read.value, with: linkKey(read.value.takes[0]?.id ?? '') });
  };
  return (
    <section aria-label="Compare">
      <h3>Compare</h3>
      {other && (
        <label className="with">
          <span>With</span>
          <select
            value={isLinked || !own.includes(other) ? linkKey(other.id) : other.id}
            onChange={({ target }) => desk.setState({ with: target.value })}
          >
            {own.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
            {state.linked && (
              <optgroup label={`By link: ${state.linked.title}`}>
                {theirs.map(({ id, name }) => (
                  <option key={id} value={linkKey(id)}>
                    {name}
                  </option>
                ))}
              </optgroup>
            )}
          </select>
        </label>
      )}
      <div className="with">
        <span aria-hidden="true">By link</span>
        <TextField label="A bandmate’s link" value="" onCommit={(text) => void openLink(text)} />
      </div>
      {other ? (
        <>
          <label className="check">
            <input
              type="checkbox"
              checked={state.hasShadow}
              onChange={({ target }) => desk.setState({ hasShadow: target.checked })}
            />
            Its shadow on the drawing
          </label>
          <Compared
            other={other}
            linked={own.includes(other) ? null : state.linked}
            hasShadow={state.hasShadow}
          />
        </>
      ) : (
        <p>There is no other take yet: add one, paste a link, or have one proposed.</p>
      )}
    </section>
  );
}

/** Takes in their order, compared, and proposed. */
export function TakesPanel() {
  return (
    <FoldPanel title="Takes" label="Takes compared" name="as-built takes-panel">
      <ThisTake />
      <Proposing />
      <CompareWith />
    </FoldPanel>
  );
}
