import type { Edit } from '../../src/index.ts';
import { perform } from '../actions/action.ts';
import { type Editor, shownTake } from '../editor.ts';
import { labelOf } from '../store/edit-label.ts';

/** Shows an edit on the drawing as long as it is chosen among; one gesture, taken back or kept. */
export interface Preview {
  show(edit: Edit | null): void;
  keep(edit: Edit): void;
  drop(): void;
}

export function createPreview(editor: Editor): Preview {
  const { gestures, layouts } = editor;
  let isOn = false;
  const drop = (): void => {
    if (isOn) gestures.cancel();
    isOn = false;
  };
  const show = (edit: Edit | null): void => {
    drop();
    if (!edit) return;
    gestures.begin(shownTake(editor).id, labelOf(layouts.layout(), edit));
    isOn = true;
    gestures.preview(edit);
  };
  return {
    show,
    keep(edit) {
      drop();
      perform(editor, edit);
    },
    drop,
  };
}
