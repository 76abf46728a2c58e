import '../style/help.css';
import { useLayoutEffect } from 'react';
import type { Editor } from '../editor.ts';
import { useEditor } from '../hooks.ts';
import { browserHistory } from '../platform/history.ts';
import { FindCommand } from './find-command.tsx';
import { HelpDesk } from './help-desk.tsx';
import { keepSteps } from './help-steps.ts';

const kept = new WeakSet<Editor>();

/** The help at a page, or the list of commands; both are loaded together, since each leads to the other. */
export function HelpLayer({ page }: { readonly page: string }) {
  const editor = useEditor();
  useLayoutEffect(() => {
    if (!kept.has(editor)) keepSteps(editor.session, browserHistory);
    kept.add(editor);
  }, [editor]);
  return page === 'find' ? <FindCommand /> : <HelpDesk page={page} />;
}
