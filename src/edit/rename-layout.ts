import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, refuse, withField } from './change.ts';

/** Gives the layout another title. */
export interface RenameLayout {
  readonly type: 'rename-layout';
  readonly title: string;
}

export function renameLayout(layout: Layout, edit: RenameLayout): Edited<Layout> {
  const title = edit.title.trim();
  return title ? ok(withField(layout, 'title', title)) : refuse('A layout needs a title');
}
