import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import type { Edited } from './change.ts';

/** Edits that make one step together: each counts from the outcome of the one before; if one is refused, all are. */
export interface Several<Edit> {
  readonly type: 'several';
  /** What they do together, to follow "Undo". */
  readonly label: string;
  readonly edits: readonly Edit[];
}

/** @param apply - how one edit is carried out; handed in, since it carries out this one too */
export const severalBy =
  <Edit>(apply: (layout: Layout, edit: Edit) => Edited<Layout>) =>
  (layout: Layout, { edits }: Several<Edit>): Edited<Layout> =>
    edits.reduce<Edited<Layout>>((done, edit) => (done.ok ? apply(done.value, edit) : done), ok(layout));
