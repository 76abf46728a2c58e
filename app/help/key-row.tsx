import { useState } from 'react';
import { keysOf } from '../actions/keys-of.ts';
import { shortcutsOf } from '../actions/shortcuts-of.ts';
import { useEditor, useSession } from '../hooks.ts';
import { isApple } from '../platform/keyboard.ts';
import { isFixed, shortcutFrom, whyNotKey, whyNotUsual, withKey } from './change-keys.ts';
import type { Keyed } from './key-list.ts';

interface RowProps {
  readonly of: Keyed;
  readonly all: readonly Keyed[];
  readonly say: (text: string) => void;
}

/** One command and its key; while it waits for another, the next press is that. */
export function KeyRow({ of, all, say }: RowProps) {
  const { session } = useEditor();
  const choices = useSession(({ keys }) => keys);
  const [waits, setWaits] = useState(false);
  const { id, label } = of;
  const apple = isApple();
  const shown = shortcutsOf(of, choices).map((shortcut) => keysOf(shortcut, apple));
  const put = (keys: typeof choices, told: string) => {
    session.setState({ keys });
    say(told);
  };
  const reset = () => {
    const why = whyNotUsual({ of, all, choices, apple });
    if (why) say(why);
    else put(withKey(choices, id), `${label} has its usual keys again.`);
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
              const why = whyNotKey({ of, all, wanted, choices, apple });
              if (why) return say(why);
              setWaits(false);
              return put(withKey(choices, id, wanted), `${label}: ${keysOf(wanted, apple)}.`);
            }}
          >
            Press the new key
          </button>
        ) : (
          <>
            {shown.map((key) => (
              <kbd key={key}>{key}</kbd>
            ))}
            {isFixed(of) ? (
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
        {choices.own[id] && (
          <button type="button" className="plain" aria-label={`Usual key for ${label}`} onClick={reset}>
            Usual
          </button>
        )}
      </dd>
    </div>
  );
}
