import { start } from '../actions/action.ts';
import { heldKeys } from '../actions/held-keys.ts';
import { actions } from '../actions/index.ts';
import { keysOf } from '../actions/keys-of.ts';
import { actionFor } from '../actions/shortcuts.ts';
import { shortcutsOf, soundKeys } from '../actions/shortcuts-of.ts';
import type { Editor } from '../editor.ts';
import { isApple, isTyping } from '../platform/keyboard.ts';
import { listKeysOf } from '../tools/list-keys.ts';
import type { Toolbox } from '../tools/toolbox.ts';
import { listen } from './listen.ts';

/** An open form has all keys to itself. */
const isFormOpen = (): boolean => document.querySelector('dialog:modal') !== null;

/** An open menu has Escape to itself. */
const isMenuOpen = (): boolean => document.querySelector(':popover-open') !== null;

/** Keys of the list itself; they come before all others. */
function listenToList(editor: Editor, list: HTMLElement): () => void {
  const keys = listKeysOf(editor);
  return listen(list, {
    keydown(event) {
      if (!event.ctrlKey && !event.metaKey && keys.press(event)) event.preventDefault();
    },
    pointerdown: keys.pointed,
    blur: keys.leave,
  });
}

/** Leads keys to actions, wherever the focus is; typing is left alone. */
function listenToWindow(editor: Editor, list: HTMLElement, toolbox: Toolbox): () => void {
  /** The drawing has the keys while nothing else on the page has been focused. */
  const isOnStage = (target: EventTarget | null): boolean => target === document.body || target === list;

  return listen(window, {
    keydown(event) {
      const { target, key } = event;
      if (event.defaultPrevented || isTyping(target) || isFormOpen() || (key === 'Escape' && isMenuOpen()))
        return;
      if (key === 'Escape' && editor.gestures.store.getState().running) {
        toolbox.cancel();
        return;
      }
      const { keys } = editor.session.getState();
      const held = actionFor(heldKeys, event, keys);
      if (held && toolbox.press(held.id)) {
        event.preventDefault();
        return;
      }
      if (key === ' ' && isOnStage(target)) {
        event.preventDefault();
        toolbox.holdSheet(true);
        return;
      }
      const action = actionFor(actions, event, keys);
      if (!action || action.byClipboard || (action.keysOnStageOnly && !isOnStage(target))) return;
      event.preventDefault();
      start(editor, action, event.repeat);
    },
    keyup({ key }) {
      if (key === ' ') toolbox.holdSheet(false);
    },
    blur: () => toolbox.holdSheet(false),
  });
}

/** Buttons print the keys as they are now. */
function tellKeys({ session }: Editor): () => void {
  const tell = () => {
    const { keys } = session.getState();
    session.setState({
      printKeys: (action) => {
        const [shortcut] = shortcutsOf(action, keys);
        return shortcut && keysOf(shortcut, isApple());
      },
    });
  };
  session.setState({ keys: soundKeys(session.getState().keys) });
  tell();
  return session.subscribe((now, before) => {
    if (now.keys !== before.keys) tell();
  });
}

export function listenToKeys(editor: Editor, list: HTMLElement, toolbox: Toolbox): () => void {
  const ends = [listenToList(editor, list), listenToWindow(editor, list, toolbox), tellKeys(editor)];
  return () => {
    for (const end of ends) end();
  };
}
