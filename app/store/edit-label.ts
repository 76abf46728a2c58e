import type { Edit, Layout, Take } from '../../src/index.ts';
import { analyse } from './analysis.ts';
import { takeOf } from './shown.ts';

type LabelOf<E extends Edit> = (edit: E, layout: Layout) => string;

const take = (layout: Layout, id: string): Take => takeOf(layout, id);

function moduleNames(layout: Layout, takeId: string, ids: readonly string[]): string {
  const [only, ...more] = ids;
  if (only === undefined || more.length > 0) return `${ids.length} modules`;
  return analyse(layout.kit, take(layout, takeId)).derived.places.moduleById.get(only)?.name ?? 'module';
}

function ribbonName(layout: Layout, takeId: string, id: string): string {
  return take(layout, takeId).ribbons.find((ribbon) => ribbon.id === id)?.label ?? 'ribbon';
}

function ribbonNames(layout: Layout, takeId: string, ids: readonly string[]): string {
  const [only, ...more] = ids;
  return only === undefined || more.length > 0 ? `${ids.length} ribbons` : ribbonName(layout, takeId, only);
}

const kindName = (kinds: readonly { readonly id: string; readonly name: string }[], id: string): string =>
  kinds.find((kind) => kind.id === id)?.name ?? 'one';

const LABELS: { readonly [T in Edit['type']]: LabelOf<Extract<Edit, { type: T }>> } = {
  'accept-finding': () => 'put a note away',
  'bring-back': () => 'bring a note back',
  'add-ribbon': ({ kind }, { kit }) => `lay ${kindName(kit.ribbons, kind)}`,
  'add-take': () => 'add a take',
  'exchange-ribbon': ({ take, ribbon }, layout) =>
    `change the kind of ${ribbonName(layout, take, ribbon)}`,
  'duplicate-modules': ({ take, modules }, layout) => `duplicate ${moduleNames(layout, take, modules)}`,
  'move-modules': ({ take, moves }, layout) =>
    `move ${moduleNames(
      layout,
      take,
      moves.map(({ module }) => module),
    )}`,
  'pin-modules': ({ take, modules, pinned }, layout) =>
    `${pinned ? 'pin' : 'unpin'} ${moduleNames(layout, take, modules)}`,
  'place-module': ({ kind }, { kit }) => `place ${kindName(kit.modules, kind)}`,
  'remove-modules': ({ take, modules }, layout) => `remove ${moduleNames(layout, take, modules)}`,
  'remove-ribbons': ({ take, ribbons }, layout) => `remove ${ribbonNames(layout, take, ribbons)}`,
  'remove-take': ({ take: id }, layout) => `remove the take ${take(layout, id).name}`,
  'rename-layout': () => 'rename the layout',
  'rename-module': ({ take, module }, layout) => `rename ${moduleNames(layout, take, [module])}`,
  'rename-take': () => 'rename the take',
  'seat-connector': ({ take, ribbon }, layout) => `seat ${ribbonName(layout, take, ribbon)}`,
  several: ({ label }) => label,
  'swap-modules': () => 'swap two modules',
  'turn-ribbon': ({ take, ribbon }, layout) => `turn ${ribbonName(layout, take, ribbon)}`,
  'twist-ribbon': ({ take, ribbon }, layout) => `twist ${ribbonName(layout, take, ribbon)}`,
  unseat: ({ take, ribbon }, layout) => `unseat ${ribbonName(layout, take, ribbon)}`,
};

/** What an edit does, to follow "Undo" and "Redo". */
export function labelOf(layout: Layout, edit: Edit): string {
  const label = LABELS[edit.type] as LabelOf<Edit>;
  return label(edit, layout);
}
