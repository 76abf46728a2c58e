import { fail, type Layout, ok, type Result } from '../../src/index.ts';
import type { KeptLayout } from './kept-layout.ts';

/** The layout in a record, opened as any file is; or why it cannot be. The record is left as it is. */
export async function openKept({
  id,
  text,
}: Pick<KeptLayout, 'id' | 'text'>): Promise<Result<Layout, string>> {
  const { openLayout, describeFailure } = await import('../../src/document.ts');
  const opened = openLayout(text);
  if (!opened.ok) return fail(describeFailure(opened.error));
  return ok(opened.value.id === id ? opened.value : { ...opened.value, id });
}
