import { useMemo, useState } from 'react';
import { type Action, start } from '../actions/action.ts';
import { actions } from '../actions/index.ts';
import { keysOf } from '../actions/keys-of.ts';
import { shortcutsOf } from '../actions/shortcuts-of.ts';
import { showTake } from '../actions/show-take.ts';
import { selectionKey } from '../canvas/model.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { useEditor } from '../hooks.ts';
import { Dialog } from '../panels/dialog.tsx';
import { isApple } from '../platform/keyboard.ts';
import { HELP_PAGES } from './help-pages.ts';
import { OTHER_WORDS } from './other-words.ts';
import { type Findable, rank } from './rank.ts';
import { whyNot } from './why-not.ts';

interface Entry extends Findable {
  readonly sort: string;
  readonly keys?: string | undefined;
  /** Why it cannot be done now. */
  readonly off?: string | undefined;
  run(): void;
}

const MOST_SHOWN = 60;
const MOST_RECENT = 6;
const RECENT = 'recentCommands';

function recentOf({ platform }: Editor): readonly string[] {
  const read = platform.preferences.read(RECENT);
  return read.ok && Array.isArray(read.value) ? read.value.filter((id) => typeof id === 'string') : [];
}

function commandOf(editor: Editor, action: Action): Entry {
  const words = OTHER_WORDS[action.id];
  const off = whyNot(editor, action);
  const [shortcut] = shortcutsOf(action, editor.session.getState().keys);
  return {
    id: action.id,
    label: action.label(editor),
    sort: 'Command',
    ...(words && { words }),
    keys: shortcut && keysOf(shortcut, isApple()),
    ...(off && { off, isLater: true as const }),
    run: () => start(editor, action),
  };
}

/** All that can be found: commands, what is in this take, other takes, pages of the help. */
function entriesOf(editor: Editor): Entry[] {
  const { session, layouts } = editor;
  const { places, wiring } = shownAnalysis(editor).derived;
  const select = (type: 'module' | 'ribbon', id: string, name: string, sort: string): Entry => ({
    id: `${type}:${id}`,
    label: name,
    sort,
    run: () => session.setState({ selection: new Set([selectionKey(type, id)]), focus: null }),
  });
  return [
    ...actions
      .filter(({ id, isVariant }) => !isVariant && id !== 'find-command')
      .map((action) => commandOf(editor, action)),
    ...places.modules.map(({ module, name }) => select('module', module.id, name, 'Module')),
    ...wiring.ribbons.map(({ id, name }) => select('ribbon', id, name, 'Ribbon')),
    ...layouts.layout().takes.map(
      ({ id, name }): Entry => ({
        id: `take:${id}`,
        label: name,
        sort: 'Take',
        run: () => showTake(editor, id),
      }),
    ),
    ...HELP_PAGES.map(
      ({ id, label }): Entry => ({
        id: `help:${id}`,
        label,
        sort: 'Help',
        isLater: true,
        run: () => session.setState({ help: id }),
      }),
    ),
  ];
}

/** Finds a command or a place by some of its name: a combobox whose list follows what is typed. */
export function FindCommand() {
  const editor = useEditor();
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const entries = useMemo(() => entriesOf(editor), [editor]);
  const recent = useMemo(() => recentOf(editor), [editor]);
  const found = useMemo(() => rank(entries, typed, recent).slice(0, MOST_SHOWN), [entries, typed, recent]);
  const chosen = Math.min(at, found.length - 1);
  const close = () => editor.session.setState({ help: null });
  const take = (entry: Entry | undefined) => {
    if (!entry || entry.off) return;
    close();
    editor.platform.preferences.write(
      RECENT,
      [entry.id, ...recent.filter((id) => id !== entry.id)].slice(0, MOST_RECENT),
    );
    // What it opens takes the focus after this has given it back.
    setTimeout(entry.run);
  };
  const move = (to: number) => {
    const next = (to + found.length) % Math.max(1, found.length);
    setAt(next);
    document.getElementById(`found-${next}`)?.scrollIntoView({ block: 'nearest' });
  };
  return (
    <Dialog name="find-command" label="Find a command" first="input" onClose={close}>
      <input
        role="combobox"
        aria-label="Find a command"
        aria-expanded="true"
        aria-controls="found"
        aria-autocomplete="list"
        aria-activedescendant={found.length > 0 ? `found-${chosen}` : undefined}
        placeholder="A command, a module, a ribbon, a take, a page of the help"
        autoComplete="off"
        spellCheck={false}
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
          setAt(0);
        }}
        onKeyDown={(event) => {
          if (event.nativeEvent.isComposing) return;
          if (event.key === 'ArrowDown') move(chosen + 1);
          else if (event.key === 'ArrowUp') move(chosen - 1);
          else if (event.key === 'Enter') take(found[chosen]);
          else return;
          event.preventDefault();
        }}
      />
      <div id="found" role="listbox" aria-label="Found">
        {found.map((entry, i) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are the field's
          // biome-ignore lint/a11y/useFocusableInteractive: the field keeps the focus, and names the chosen one
          <div
            key={entry.id}
            id={`found-${i}`}
            role="option"
            aria-selected={i === chosen}
            aria-disabled={entry.off !== undefined}
            onClick={() => take(entry)}
          >
            <span>{entry.label}</span>
            <small>{entry.off ?? entry.sort}</small>
            {entry.keys && <kbd>{entry.keys}</kbd>}
          </div>
        ))}
      </div>
      <p role="status" className="said">
        {found.length === 0 ? 'Nothing has these words.' : ''}
      </p>
    </Dialog>
  );
}
