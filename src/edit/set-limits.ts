import { LIMIT_FACTS } from '../layout/defaults.ts';
import type { Layout, Limits } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, refuse, withField } from './change.ts';
import { refuseLimits } from './kind-faults.ts';

/** Changes what the checks hold the drawing to. Limits that are not named stay as they are. */
export interface SetLimits {
  readonly type: 'set-limits';
  /** null: the default again. */
  readonly limits: Readonly<Partial<Record<keyof Limits, number | null>>>;
}

const isLimit = (name: string): name is keyof Limits => Object.hasOwn(LIMIT_FACTS, name);

export function setLimits(layout: Layout, edit: SetLimits): Edited<Layout> {
  const { kit } = layout;
  const before: Partial<Limits> = kit.limits ?? {};
  let limits = before;
  for (const [name, value] of Object.entries(edit.limits)) {
    if (!isLimit(name)) return refuse(`There is no limit "${name}"`);
    if (value !== undefined)
      limits = withField<Partial<Limits>, keyof Limits>(limits, name, value ?? undefined);
  }
  if (limits === before) return ok(layout);
  const refusal = refuseLimits(limits);
  if (refusal) return refusal;
  const kept = Object.keys(limits).length > 0 ? limits : undefined;
  return ok(withField(layout, 'kit', withField(kit, 'limits', kept)));
}
