import { lookAnew } from '../actions/take-layout.ts';
import type { Editor } from '../editor.ts';
import { untouched } from '../store/untouched.ts';
import type { Beginning } from './begin.ts';
import type { KeptLayout } from './kept-layout.ts';

/**
 * Says what the shelf had to say, which may have come later than the first picture: then the layout that was kept takes
 * the place of a demo on which nothing was done.
 *
 * @returns the record of the layout that is on the screen now
 */
export function greet(editor: Editor, beginning: Beginning): KeptLayout | null {
  const { layouts, session } = editor;
  const tell = (banner: string): null => {
    session.setState({ banner });
    return null;
  };
  switch (beginning.is) {
    case 'nothing':
      return null;
    case 'kept': {
      const { layout, record } = beginning;
      if (layouts.layout() === layout) return record;
      if (!untouched.has(layouts.layout())) {
        return tell(
          record
            ? `“${record.title}” is in My layouts; the browser took long to find it.`
            : `“${layout.title}” is there again when you load the page anew; the browser took long to find it.`,
        );
      }
      layouts.follow(layout);
      lookAnew(editor);
      return record;
    }
    case 'unreadable':
      return tell(
        `“${beginning.title}” could not be opened: ${beginning.why}. It is kept as it is, in My layouts.`,
      );
    case 'fault':
      return tell(
        beginning.fault === 'newer'
          ? 'A newer version of the program has been here: nothing is saved until you load the page again.'
          : 'The browser lets this page keep nothing. Save your layout as a file before you leave.',
      );
  }
}
