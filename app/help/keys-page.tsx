import { useState } from 'react';
import { USUAL_KEYS } from '../actions/key-choices.ts';
import { useEditor, useSession } from '../hooks.ts';
import { allKeyed, KEY_GROUPS } from './key-list.ts';
import { KeyRow } from './key-row.tsx';

/** What the hand and a key do together, and keys that the page needs: not to be changed. */
const FIXED: readonly (readonly [keys: string, does: string])[] = [
  ['Alt + drag', 'Move by ½ HP'],
  ['Shift + drag', 'Neighbours give way'],
  ['Space + drag, or the middle button', 'Move the sheet'],
  ['Wheel', 'Move the sheet; with Ctrl, zoom'],
  ['Enter, then arrows, then Enter', 'Pick up, carry and put down'],
  ['Esc', 'Break off what is dragged or carried'],
];

/** All keys, to be read and changed. */
export function KeysPage() {
  const editor = useEditor();
  const keys = useSession((session) => session.keys);
  const [said, say] = useState('');
  const all = allKeyed(editor);
  return (
    <div className="keys-page">
      <label className="switch">
        <input
          type="checkbox"
          checked={keys.noLetters}
          onChange={(event) =>
            editor.session.setState({ keys: { ...keys, noLetters: event.target.checked } })
          }
        />
        Turn off single letters, figures and signs
      </label>
      <p className="links">
        <button
          type="button"
          className="plain"
          onClick={() => {
            editor.session.setState({ keys: USUAL_KEYS });
            say('All keys are the usual ones again.');
          }}
        >
          All keys as usual
        </button>
      </p>
      <p role="status" className="said">
        {said}
      </p>
      {KEY_GROUPS.map(([name, ids]) => (
        <section key={name}>
          <h3>{name}</h3>
          <dl>
            {ids.map((id) => {
              const of = all.find((one) => one.id === id);
              return of && <KeyRow key={id} of={of} all={all} say={say} />;
            })}
          </dl>
        </section>
      ))}
      <section>
        <h3>With the hand on the drawing</h3>
        <dl>
          {FIXED.map(([press, does]) => (
            <div key={press} className="key-row">
              <dt>{does}</dt>
              <dd>{press}</dd>
            </div>
          ))}
        </dl>
      </section>
    </div>
  );
}
