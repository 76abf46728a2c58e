import { useState } from 'react';
import type { Action } from '../actions/action.ts';
import { actions } from '../actions/index.ts';
import { USUAL_KEYS } from '../actions/key-choices.ts';
import { keysOf } from '../actions/keys-of.ts';
import { shortcutsOf } from '../actions/shortcuts-of.ts';
import { useEditor, useSession } from '../hooks.ts';
import { isApple } from '../platform/keyboard.ts';
import { isFixed, shortcutFrom, whyNotKey, withKey } from './change-keys.ts';

interface RowProps {
  readonly action: Action;
  readonly say: (text: string) => void;
}

/** One command and its key; while it waits for another, the next press is that. */
function KeyRow({ action, say }: RowProps) {
  const editor = useEditor();
  const choices = useSession(({ keys }) => keys);
  const [waits, setWaits] = useState(false);
  const label = action.label(editor);
  const labelOf = (one: Action) => one.label(editor);
  const shown = shortcutsOf(action, choices).map((shortcut) => keysOf(shortcut, isApple()));
  const put = (keys: typeof choices, told: string) => {
    editor.session.setState({ keys });
    say(told);
  };
  const reset = () => {
    const [usual] = action.shortcuts ?? [];
    const why =
      usual &&
      whyNotKey({ actions, action, wanted: usual, choices: { ...choices, noLetters: false }, labelOf });
    if (why) say(why);
    else put(withKey(choices, action.id), `${label} has its usual keys again.`);
  };
  return (
    <div className="key-row">
      <dt>{label}</dt>
      <dd>
        {waits ? (
          <button
            type="button"
            className="plain waits"
            // biome-ignore lint/a11y/noAutofocus: the very button that was pressed, under another name
            autoFocus
            onBlur={() => setWaits(false)}
            onKeyDown={(event) => {
              if (event.key === 'Tab') return;
              event.preventDefault();
              event.stopPropagation();
              if (event.key === 'Escape') return setWaits(false);
              const wanted = shortcutFrom(event);
              if (!wanted) return undefined;
              const why = whyNotKey({ actions, action, wanted, choices, labelOf });
              if (why) return say(why);
              setWaits(false);
              return put(withKey(choices, action.id, wanted), `${label}: ${keysOf(wanted, isApple())}.`);
            }}
          >
            Press the new key
          </button>
        ) : (
          <>
            {shown.map((key) => (
              <kbd key={key}>{key}</kbd>
            ))}
            {isFixed(action) ? (
              <small>fixed</small>
            ) : (
              <button
                type="button"
                className="plain"
                aria-label={`Change the key of ${label}`}
                onClick={() => setWaits(true)}
              >
                {shown.length > 0 ? 'Change' : 'Choose'}
              </button>
            )}
          </>
        )}
        {choices.own[action.id] && (
          <button type="button" className="plain" aria-label={`Usual key for ${label}`} onClick={reset}>
            Usual
          </button>
        )}
      </dd>
    </div>
  );
}

/** Keys of gestures and of the sheet: not commands, and not to be changed. */
const GESTURES: readonly (readonly [keys: string, does: string])[] = [
  ['Alt + drag', 'Move by ½ HP'],
  ['Shift + drag', 'Neighbours give way'],
  ['Space + drag, or the middle button', 'Move the sheet'],
  ['Wheel', 'Move the sheet; with Ctrl, zoom'],
  ['Esc', 'Break off what is dragged'],
];

/** All keys, to be read and changed. */
export function KeysPage() {
  const editor = useEditor();
  const keys = useSession((session) => session.keys);
  const [said, say] = useState('');
  const listed = actions.filter(({ isVariant }) => !isVariant);
  const groups = [
    ['With a key', listed.filter((action) => action.shortcuts ?? keys.own[action.id])],
    ['Without a key', listed.filter((action) => !(action.shortcuts ?? keys.own[action.id]))],
  ] as const;
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
      {groups.map(([name, of]) => (
        <section key={name}>
          <h3>{name}</h3>
          <dl>
            {of.map((action) => (
              <KeyRow key={action.id} action={action} say={say} />
            ))}
          </dl>
        </section>
      ))}
      <section>
        <h3>On the drawing</h3>
        <dl>
          {GESTURES.map(([press, does]) => (
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
