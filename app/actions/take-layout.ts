import type { Layout } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import { asCopy } from '../keep/kept-layout.ts';
import { NOTHING } from '../store/session.ts';
import { untouched } from '../store/untouched.ts';

/** Shows another layout in place of the present one, which stays an undo away. It is one of its own: whatever it came from is never overwritten. */
export function takeLayout(editor: Editor, layout: Layout, label: string): void {
  const own = asCopy(layout, editor.platform.freshId());
  editor.layouts.replace(own, label);
  lookAnew(editor);
}

/** As with `takeLayout`, for a layout of the program's own, which is not kept before something is changed in it. */
export function takeReady(editor: Editor, layout: Layout, label: string): void {
  const own = asCopy(layout, editor.platform.freshId());
  untouched.add(own);
  editor.layouts.replace(own, label);
  lookAnew(editor);
}

/** Nothing of how the layout before was looked at fits another one. */
export function lookAnew({ session }: Editor): void {
  session.setState({
    take: '',
    selection: NOTHING,
    cursor: null,
    focus: null,
    viewport: null,
    inHand: null,
    kindDesk: null,
    banner: null,
  });
}
