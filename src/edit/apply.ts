import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { acceptFinding } from './accept-finding.ts';
import { addBoard } from './add-board.ts';
import { addBus } from './add-bus.ts';
import { addModuleKind } from './add-module-kind.ts';
import { addRibbon } from './add-ribbon.ts';
import { addRibbonKind } from './add-ribbon-kind.ts';
import { addRow } from './add-row.ts';
import { addSupply } from './add-supply.ts';
import { addTake } from './add-take.ts';
import { addVoltage } from './add-voltage.ts';
import { adoptMeasured } from './adopt-measured.ts';
import { bringBack } from './bring-back.ts';
import type { Edited } from './change.ts';
import { changeBoard } from './change-board.ts';
import { changeBus } from './change-bus.ts';
import { changeModuleKind } from './change-module-kind.ts';
import { changeRibbonKind } from './change-ribbon-kind.ts';
import { changeRow } from './change-row.ts';
import { changeSupply } from './change-supply.ts';
import { changeVoltage } from './change-voltage.ts';
import { duplicateModules } from './duplicate-modules.ts';
import type { Edit } from './edit.ts';
import { exchangeRibbon } from './exchange-ribbon.ts';
import { forgetLost } from './forget-lost.ts';
import { labelRibbon } from './label-ribbon.ts';
import { layOutRows } from './lay-out-rows.ts';
import { lockRibbon } from './lock-ribbon.ts';
import { markInCase } from './mark-in-case.ts';
import { moveModules } from './move-modules.ts';
import { moveRow } from './move-row.ts';
import { moveTake } from './move-take.ts';
import { noteMeasured } from './note-measured.ts';
import { orderRibbons } from './order-ribbons.ts';
import { paste } from './paste.ts';
import { pinModules } from './pin-modules.ts';
import { placeModule } from './place-module.ts';
import { removeBoard } from './remove-board.ts';
import { removeBus } from './remove-bus.ts';
import { removeModuleKind } from './remove-module-kind.ts';
import { removeModules } from './remove-modules.ts';
import { removeRibbonKind } from './remove-ribbon-kind.ts';
import { removeRibbons } from './remove-ribbons.ts';
import { removeRow } from './remove-row.ts';
import { removeSupply } from './remove-supply.ts';
import { removeTake } from './remove-take.ts';
import { removeVoltage } from './remove-voltage.ts';
import { renameLayout } from './rename-layout.ts';
import { renameModule } from './rename-module.ts';
import { renameTake } from './rename-take.ts';
import { rewireTake } from './rewire-take.ts';
import { seatConnector } from './seat-connector.ts';
import { setBoardHeaders } from './set-board-headers.ts';
import { setLimits } from './set-limits.ts';
import { severalBy } from './several.ts';
import { slideRibbon } from './slide-ribbon.ts';
import { swapModules } from './swap-modules.ts';
import { takeKinds } from './take-kinds.ts';
import { tickStep } from './tick-step.ts';
import { tickTest } from './tick-test.ts';
import { turnRibbon } from './turn-ribbon.ts';
import { twistRibbon } from './twist-ribbon.ts';
import { unseat } from './unseat.ts';
import { untickTest } from './untick-test.ts';

type Command<E extends Edit> = (layout: Layout, edit: E) => Edited<Layout>;

/** Every command by the type of its edit. */
export const commands: { readonly [T in Edit['type']]: Command<Extract<Edit, { type: T }>> } = {
  'accept-finding': acceptFinding,
  'add-board': addBoard,
  'add-ribbon': addRibbon,
  'add-row': addRow,
  'add-supply': addSupply,
  'add-take': addTake,
  'adopt-measured': adoptMeasured,
  'bring-back': bringBack,
  'change-board': changeBoard,
  'change-row': changeRow,
  'change-supply': changeSupply,
  'add-bus': addBus,
  'add-module-kind': addModuleKind,
  'add-ribbon-kind': addRibbonKind,
  'change-module-kind': changeModuleKind,
  'change-ribbon-kind': changeRibbonKind,
  'exchange-ribbon': exchangeRibbon,
  'duplicate-modules': duplicateModules,
  'lay-out-rows': layOutRows,
  'label-ribbon': labelRibbon,
  'lock-ribbon': lockRibbon,
  'mark-in-case': markInCase,
  'move-modules': moveModules,
  'move-row': moveRow,
  'move-take': moveTake,
  'note-measured': noteMeasured,
  'order-ribbons': orderRibbons,
  paste,
  'pin-modules': pinModules,
  'place-module': placeModule,
  'remove-board': removeBoard,
  'remove-module-kind': removeModuleKind,
  'remove-modules': removeModules,
  'remove-ribbon-kind': removeRibbonKind,
  'remove-ribbons': removeRibbons,
  'remove-row': removeRow,
  'remove-supply': removeSupply,
  'remove-take': removeTake,
  'rename-layout': renameLayout,
  'rename-module': renameModule,
  'rename-take': renameTake,
  'rewire-take': rewireTake,
  'seat-connector': seatConnector,
  'set-board-headers': setBoardHeaders,
  several: severalBy(applyEdit),
  'slide-ribbon': slideRibbon,
  'swap-modules': swapModules,
  'take-kinds': takeKinds,
  'tick-step': tickStep,
  'tick-test': tickTest,
  'turn-ribbon': turnRibbon,
  'twist-ribbon': twistRibbon,
  'add-voltage': addVoltage,
  'change-bus': changeBus,
  'change-voltage': changeVoltage,
  'remove-bus': removeBus,
  'remove-voltage': removeVoltage,
  'set-limits': setLimits,
  unseat,
  'untick-test': untickTest,
};

/**
 * The layout after an edit, or why it was refused. Edits are never refused for what the drawing would then look
 * like: overlaps and bad seats are findings. What an edit leaves alone keeps its identity, the kit in all
 * edits but those of the kit; an edit that changes nothing gives back the very layout.
 */
export function applyEdit(layout: Layout, edit: Edit): Edited<Layout> {
  const command = commands[edit.type] as Command<Edit>;
  const done = command(layout, edit);
  return done.ok ? ok(forgetLost(layout, done.value)) : done;
}
