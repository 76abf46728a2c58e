/** Keys that start an action; letters are told by what they type, whatever the layout of the keyboard. */
export interface Shortcut {
  /** As `KeyboardEvent.key` names it, letters small. */
  readonly key: string;
  /** Ctrl, or the command key. */
  readonly mod?: true;
  readonly shift?: true;
  readonly alt?: true;
}
