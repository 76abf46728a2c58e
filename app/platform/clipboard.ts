import { isTyping } from './keyboard.ts';

/** Who answers when the browser tells of a copy, a cut or a paste. */
export interface ClipboardEar {
  /** What to copy; `null`: nothing of ours, the browser does what it does. */
  copied(): string | null;
  /** As with copying; what was cut is gone after it. */
  cut(): string | null;
  pasted(text: string): void;
}

/**
 * The clipboard, by the events that the browser sends with its own keys and menus: they need no permission and
 * work offline. What was last put there is kept besides, for buttons that may not read the clipboard.
 */
export interface Clipboard {
  put(text: string): void;
  /** What this page put there last. */
  kept(): string | null;
  listen(ear: ClipboardEar): () => void;
}

/** Text that is selected, or being typed, is the browser's own business. */
const isOurs = (event: ClipboardEvent): boolean =>
  !event.defaultPrevented && !isTyping(event.target) && getSelection()?.isCollapsed !== false;

function give(event: ClipboardEvent, text: string): void {
  event.clipboardData?.setData('text/plain', text);
  event.preventDefault();
}

export function browserClipboard(): Clipboard {
  let last: string | null = null;

  const answer = (ask: () => string | null) => (event: ClipboardEvent) => {
    const text = isOurs(event) ? ask() : null;
    if (text === null) return;
    last = text;
    give(event, text);
  };

  return {
    put(text) {
      last = text;
      const onCopy = (event: ClipboardEvent): void => {
        event.stopImmediatePropagation();
        give(event, text);
      };
      document.addEventListener('copy', onCopy, { capture: true });
      document.execCommand('copy');
      document.removeEventListener('copy', onCopy, { capture: true });
    },
    kept: () => last,
    listen(ear) {
      const end = new AbortController();
      const options = { signal: end.signal };
      document.addEventListener('copy', answer(ear.copied), options);
      document.addEventListener('cut', answer(ear.cut), options);
      const onPaste = (event: ClipboardEvent): void => {
        if (!isOurs(event)) return;
        const text = event.clipboardData?.getData('text/plain') ?? '';
        event.preventDefault();
        ear.pasted(text);
      };
      document.addEventListener('paste', onPaste, options);
      return () => end.abort();
    },
  };
}
