import type { Edit, Result } from '../../src/index.ts';
import type { Action } from '../actions/action.ts';
import type { WithKeys } from '../actions/key-choices.ts';
import type { Moving } from '../canvas/model.ts';
import type { Editor } from '../editor.ts';

/** Something to type in. */
interface Field {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly decimal?: boolean;
  /** To choose among, instead of typing. */
  readonly options?: readonly { readonly value: string; readonly label: string }[];
}

type Deed =
  /** Shown on the drawing while it is chosen among, done when it is taken: one step to undo. */
  | {
      readonly type: 'edit';
      readonly edit: Edit;
      /** What it would come to, once it is shown. */
      readonly shows?: (shown: Moving) => string;
      /** What came of it. */
      readonly said: (editor: Editor) => string;
      /** The item to stand on afterwards; else the same. */
      readonly goTo?: string;
    }
  | { readonly type: 'action'; readonly action: Action }
  | { readonly type: 'do'; readonly run: () => void }
  | { readonly type: 'more'; readonly page: () => Page }
  | {
      readonly type: 'fields';
      readonly fields: readonly Field[];
      readonly edit: (values: Readonly<Record<string, string>>) => Result<Edit, string>;
      readonly said: (editor: Editor) => string;
    };

/** One thing that can be done with an item. */
export interface Choice {
  readonly label: string;
  /** Quiet words below it. */
  readonly words?: string;
  /** Heading that it stands under, with the others of the same one before and after it. */
  readonly under?: string;
  /** The command whose keys do it without the menu. */
  readonly keysOf?: WithKeys;
  /** It goes on by arrow keys: nothing for a hand that has none. */
  readonly byKeys?: true;
  /** Why it cannot be done. */
  readonly off?: string;
  readonly deed: Deed;
}

/** Choices that stand together. */
export interface Page {
  readonly title: string;
  /** What there is to know before one chooses. */
  readonly says?: string;
  readonly choices: readonly Choice[];
  /** Finds more, in its own time; answers with how to call that off. */
  readonly later?: (show: (choices: readonly Choice[]) => void) => () => void;
  /** Said while that goes on. */
  readonly waiting?: string;
  /** Said where there is nothing to choose. */
  readonly none?: string;
}

/** Does something and says what came of it; what the notes say of the change follows. */
export function doAndTell(editor: Editor, act: () => void, words: () => string): void {
  const { session } = editor;
  const { spoken: before } = session.getState();
  act();
  const { spoken: after } = session.getState();
  const said = words();
  if (said) session.setState({ spoken: after === before ? said : `${said} ${after}` });
}
