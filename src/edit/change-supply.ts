import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { editSupply, withFigures } from './case-parts.ts';
import { type Edited, editTake, findAll, refuse, withField } from './change.ts';
import { refuseIfUnfit } from './check-noun.ts';

/** Changes a supply's name, or what it gives. */
export interface ChangeSupply {
  readonly type: 'change-supply';
  readonly take: string;
  readonly supply: string;
  readonly name?: string;
  /** mA by voltage; null: it does not give it. Voltages that are not named stay as they are. */
  readonly ratings?: Readonly<Record<string, number | null>>;
}

export function changeSupply(layout: Layout, edit: ChangeSupply): Edited<Layout> {
  return editTake(layout, edit.take, (take) =>
    editSupply(take, edit.supply, (supply) => {
      const changes = edit.ratings ?? {};
      const voltages = findAll(layout.kit.voltages, Object.keys(changes), 'voltage');
      if (!voltages.ok) return voltages;
      const name = edit.name?.trim() ?? supply.name;
      if (!name && edit.name !== undefined) return refuse('A supply needs a name');
      const named = withField(supply, 'name', name);
      const changed = withField(named, 'ratings', withFigures(supply.ratings, changes));
      return refuseIfUnfit('Supply', changed, supply.name) ?? ok(changed);
    }),
  );
}
