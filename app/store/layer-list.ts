import type { DerivedTake } from '../../src/index.ts';
import { type LayerKey, layerOf } from '../canvas/layer-keys.ts';
import { toggled } from '../tools/pick.ts';
import type { SessionStore } from './session-store.ts';

/** A layer as it stands in the list. */
interface Layer {
  readonly key: LayerKey;
  readonly name: string;
  /** How many ribbons lie in it; absent where it has none of its own. */
  readonly count?: number;
}

const OTHERS: readonly Layer[] = [
  { key: 'boards', name: 'Boards' },
  { key: 'names', name: 'Names' },
  { key: 'section', name: 'Section from above' },
];

/** What can be hidden of a take: the links of each bus that it uses, its leads, and the rest. */
export function layersOf({ kit, wiring }: DerivedTake): readonly Layer[] {
  const counts = new Map<LayerKey, number>();
  for (const ribbon of wiring.ribbons) {
    const key = layerOf(ribbon);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const links = kit.kit.buses.flatMap(({ id, name }): Layer[] => {
    const count = counts.get(`bus:${id}`);
    return count === undefined ? [] : [{ key: `bus:${id}`, name: `Links: ${name}`, count }];
  });
  return [...links, { key: 'leads', name: 'Leads', count: counts.get('leads') ?? 0 }, ...OTHERS];
}

/** Shows a layer or hides it. A ribbon that is lifted may be one of it. */
export const toggleLayer = (session: SessionStore, key: LayerKey): void =>
  session.setState(({ hidden }) => ({ hidden: toggled(hidden, key), lifted: null }));
