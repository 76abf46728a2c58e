/** Whether keys are printed the Apple way. */
export const isApple = (): boolean => /Mac|iPhone|iPad/.test(navigator.platform);

const TYPED_INTO = 'input, textarea, select, [contenteditable]';

/** Whether what is pressed there is typed into something. */
export const isTyping = (target: EventTarget | null): boolean =>
  target instanceof Element && target.matches(TYPED_INTO);
