import type { Layout } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import { NOTHING } from '../store/session.ts';

/** Shows another layout in place of the present one, which stays an undo away. */
export function takeLayout({ layouts, session }: Editor, layout: Layout, label: string): void {
  layouts.replace(layout, label);
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
