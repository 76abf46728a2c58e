import type { Layout, Supply } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { refuseIfFull } from './case-parts.ts';
import { type Edited, editTake, find, withField } from './change.ts';
import { freshSupplyId, nextInSeries } from './fresh.ts';

/** Adds a supply without boards; its id is what `freshSupplyId` says beforehand. */
export interface AddSupply {
  readonly type: 'add-supply';
  readonly take: string;
  /** Supply whose ratings it has; absent: none yet. */
  readonly like?: string;
}

export function addSupply(layout: Layout, edit: AddSupply): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const { supplies } = take;
    const model = edit.like === undefined ? ok({ ratings: {} }) : find(supplies, edit.like, 'supply');
    if (!model.ok) return model;
    const name = nextInSeries(
      supplies.map((supply) => supply.name),
      'Supply',
    );
    const supply: Supply = { ...model.value, id: freshSupplyId(take), name, boards: [] };
    return (
      refuseIfFull(supplies, OPEN_LIMITS.supplies.most, 'supplies') ??
      ok(withField(take, 'supplies', [...supplies, supply]))
    );
  });
}
