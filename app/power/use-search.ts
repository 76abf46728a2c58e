import { useEffect, useState } from 'react';
import { useEditor } from '../hooks.ts';
import { inSlices } from '../store/in-slices.ts';

/**
 * What a search finds, a slice at a time; `null` until then.
 * @param search - made anew when, and only when, something else is looked for
 */
export function useSearch<T>(search: () => Iterator<undefined, T>): T | null {
  const editor = useEditor();
  const [found, setFound] = useState<{ readonly by: unknown; readonly value: T } | null>(null);
  useEffect(() => inSlices(editor, search(), (value) => setFound({ by: search, value })), [editor, search]);
  return found?.by === search ? found.value : null;
}
