import type { Layout } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editRibbon, editTake, refuse, withField } from './change.ts';

/** Gives a ribbon a label, a locked one too; null or a blank one takes it away. */
export interface LabelRibbon {
  readonly type: 'label-ribbon';
  readonly take: string;
  readonly ribbon: string;
  readonly label: string | null;
}

export function labelRibbon(layout: Layout, edit: LabelRibbon): Edited<Layout> {
  const label = edit.label?.trim() || undefined;
  return editTake(layout, edit.take, (take) =>
    editRibbon(take, edit.ribbon, (ribbon) => {
      const { most } = OPEN_LIMITS.name;
      if (label && label.length > most) return refuse(`A label may have ${most} characters at most`);
      return ok(withField(ribbon, 'label', label));
    }),
  );
}
