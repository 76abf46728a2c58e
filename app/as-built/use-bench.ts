import type { Edit } from '../../src/index.ts';
import { perform } from '../actions/action.ts';
import { useEditor, useSession, useTake } from '../hooks.ts';

const two = (n: number): string => String(n).padStart(2, '0');

/** The time as people note it. */
function timeOf(ms: number): string {
  const now = new Date(ms);
  const day = [now.getFullYear(), two(now.getMonth() + 1), two(now.getDate())].join('-');
  return `${day} ${two(now.getHours())}:${two(now.getMinutes())}`;
}

/** What is done at the bench to the take shown, with who does it and when. */
export function useBench() {
  const editor = useEditor();
  const by = useSession((session) => session.benchName);
  const { id: take } = useTake();
  return {
    editor,
    take,
    perform: (edit: Edit) => perform(editor, edit),
    mark: () => ({ ...(by.trim() !== '' && { by }), at: timeOf(editor.platform.clock.now()) }),
  };
}
