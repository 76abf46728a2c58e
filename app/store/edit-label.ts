import type { Edit, Layout, Take } from '../../src/index.ts';
import { voltageName } from '../panels/figures.ts';
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

const rowOf = (layout: Layout, takeId: string, id: string): string => {
  const { rows } = take(layout, takeId);
  const at = rows.findIndex((row) => row.id === id);
  return rows[at]?.name ?? (at < 0 ? 'a row' : `row ${at + 1}`);
};

const supplyOf = (layout: Layout, takeId: string, id: string): string =>
  take(layout, takeId).supplies.find((supply) => supply.id === id)?.name ?? 'a supply';

const boardOf = (layout: Layout, takeId: string, id: string): string =>
  take(layout, takeId)
    .supplies.flatMap(({ boards }) => boards)
    .find((board) => board.id === id)?.name ?? 'a board';

const LABELS: { readonly [T in Edit['type']]: LabelOf<Extract<Edit, { type: T }>> } = {
  'accept-finding': () => 'put a note away',
  'bring-back': () => 'bring a note back',
  'add-board': () => 'add a board',
  'add-ribbon': ({ kind }, { kit }) => `lay ${kindName(kit.ribbons, kind)}`,
  'add-row': () => 'add a row',
  'add-supply': () => 'add a supply',
  'add-take': () => 'add a take',
  'adopt-measured': ({ kind }, { kit }) => `adopt what was measured of ${kindName(kit.modules, kind)}`,
  'change-board': ({ take, board }, layout) => `change ${boardOf(layout, take, board)}`,
  'change-row': ({ take, row }, layout) => `change ${rowOf(layout, take, row)}`,
  'change-supply': ({ take, supply }, layout) => `change ${supplyOf(layout, take, supply)}`,
  'add-bus': ({ bus }) => `make the bus ${bus.name}`,
  'add-voltage': ({ voltage }) => `add ${voltageName(voltage.id)}`,
  'change-bus': ({ bus }) => `change the bus ${bus.name}`,
  'change-voltage': ({ id }) => `change ${voltageName(id)}`,
  'remove-bus': ({ bus }, { kit }) => `remove the bus ${kindName(kit.buses, bus)}`,
  'remove-voltage': ({ voltage }) => `remove ${voltageName(voltage)}`,
  'set-limits': () => 'change limits',
  'add-module-kind': ({ kind }) => `make ${kind.name}`,
  'add-ribbon-kind': ({ kind }) => `make ${kind.name}`,
  'change-module-kind': ({ kind }) => `change ${kind.name}`,
  'change-ribbon-kind': ({ kind }) => `change ${kind.name}`,
  'exchange-ribbon': ({ take, ribbon }, layout) => `change the kind of ${ribbonName(layout, take, ribbon)}`,
  'duplicate-modules': ({ take, modules }, layout) => `duplicate ${moduleNames(layout, take, modules)}`,
  'lay-out-rows': () => 'lay out the rows',
  'label-ribbon': ({ take, ribbon }, layout) => `label ${ribbonName(layout, take, ribbon)}`,
  'lock-ribbon': ({ take, ribbons, locked }, layout) =>
    `${locked ? 'lock' : 'unlock'} ${ribbonNames(layout, take, ribbons)}`,
  'mark-in-case': ({ inCase: id }, layout) =>
    id === null ? 'mark no take as in the case' : `mark ${take(layout, id).name} as in the case`,
  'move-modules': ({ take, moves }, layout) =>
    `move ${moduleNames(
      layout,
      take,
      moves.map(({ module }) => module),
    )}`,
  'move-take': () => 'move the take',
  'move-row': ({ take, row }, layout) => `move ${rowOf(layout, take, row)}`,
  'note-measured': ({ value }) => (value === null ? 'clear a reading' : 'note a reading'),
  'order-ribbons': ({ take, ribbons, to }, layout) =>
    `${to === 'front' ? 'bring' : 'send'} ${ribbonNames(layout, take, ribbons)} to the ${to}`,
  paste: ({ clip: { modules } }) =>
    `paste ${modules.length === 1 ? 'a module' : `${modules.length} modules`}`,
  'pin-modules': ({ take, modules, pinned }, layout) =>
    `${pinned ? 'pin' : 'unpin'} ${moduleNames(layout, take, modules)}`,
  'place-module': ({ kind }, { kit }) => `place ${kindName(kit.modules, kind)}`,
  'remove-board': ({ take, board }, layout) => `remove ${boardOf(layout, take, board)}`,
  'remove-module-kind': ({ kind }, { kit }) => `remove the kind ${kindName(kit.modules, kind)}`,
  'remove-modules': ({ take, modules }, layout) => `remove ${moduleNames(layout, take, modules)}`,
  'remove-ribbon-kind': ({ kind }, { kit }) => `remove the kind ${kindName(kit.ribbons, kind)}`,
  'remove-ribbons': ({ take, ribbons }, layout) => `remove ${ribbonNames(layout, take, ribbons)}`,
  'remove-row': ({ take, row }, layout) => `remove ${rowOf(layout, take, row)}`,
  'remove-supply': ({ take, supply }, layout) => `remove ${supplyOf(layout, take, supply)}`,
  'remove-take': ({ take: id }, layout) => `remove the take ${take(layout, id).name}`,
  'rename-layout': () => 'rename the layout',
  'rename-module': ({ take, module }, layout) => `rename ${moduleNames(layout, take, [module])}`,
  'rename-take': () => 'rename the take',
  'rewire-take': () => 'add a proposed take',
  'seat-connector': ({ take, ribbon }, layout) => `seat ${ribbonName(layout, take, ribbon)}`,
  'set-board-headers': ({ take, board }, layout) => `change the headers of ${boardOf(layout, take, board)}`,
  several: ({ label }) => label,
  'slide-ribbon': ({ take, ribbon }, layout) => `slide ${ribbonName(layout, take, ribbon)}`,
  'swap-modules': () => 'swap two modules',
  'take-kinds': ({ from, kinds: [only, ...more] }) => {
    const all = [...from.modules, ...from.ribbons, ...from.buses];
    return more.length > 0 ? `take ${more.length + 1} kinds` : `take ${kindName(all, only?.id ?? '')}`;
  },
  'tick-step': ({ done }) => (done ? 'tick a step' : 'untick a step'),
  'tick-test': ({ take, ribbon }, layout) => `tick a test of ${ribbonName(layout, take, ribbon)}`,
  'untick-test': ({ take, ribbon }, layout) => `untick a test of ${ribbonName(layout, take, ribbon)}`,
  'turn-ribbon': ({ take, ribbon }, layout) => `turn ${ribbonName(layout, take, ribbon)}`,
  'twist-ribbon': ({ take, ribbon }, layout) => `twist ${ribbonName(layout, take, ribbon)}`,
  unseat: ({ take, ribbon }, layout) => `unseat ${ribbonName(layout, take, ribbon)}`,
};

/** What an edit does, to follow "Undo" and "Redo". */
export function labelOf(layout: Layout, edit: Edit): string {
  const label = LABELS[edit.type] as LabelOf<Edit>;
  return label(edit, layout);
}
