import type { Layout } from '../layout/layout.ts';
import { acceptFinding } from './accept-finding.ts';
import { addRibbon } from './add-ribbon.ts';
import { addTake } from './add-take.ts';
import { bringBack } from './bring-back.ts';
import type { Edited } from './change.ts';
import { exchangeRibbon } from './exchange-ribbon.ts';
import { duplicateModules } from './duplicate-modules.ts';
import type { Edit } from './edit.ts';
import { moveModules } from './move-modules.ts';
import { pinModules } from './pin-modules.ts';
import { placeModule } from './place-module.ts';
import { removeModules } from './remove-modules.ts';
import { removeRibbons } from './remove-ribbons.ts';
import { removeTake } from './remove-take.ts';
import { renameLayout } from './rename-layout.ts';
import { renameModule } from './rename-module.ts';
import { renameTake } from './rename-take.ts';
import { seatConnector } from './seat-connector.ts';
import { severalBy } from './several.ts';
import { swapModules } from './swap-modules.ts';
import { turnRibbon } from './turn-ribbon.ts';
import { twistRibbon } from './twist-ribbon.ts';
import { unseat } from './unseat.ts';

type Command<E extends Edit> = (layout: Layout, edit: E) => Edited<Layout>;

/** Every command by the type of its edit. */
export const commands: { readonly [T in Edit['type']]: Command<Extract<Edit, { type: T }>> } = {
  'accept-finding': acceptFinding,
  'add-ribbon': addRibbon,
  'add-take': addTake,
  'bring-back': bringBack,
  'exchange-ribbon': exchangeRibbon,
  'duplicate-modules': duplicateModules,
  'move-modules': moveModules,
  'pin-modules': pinModules,
  'place-module': placeModule,
  'remove-modules': removeModules,
  'remove-ribbons': removeRibbons,
  'remove-take': removeTake,
  'rename-layout': renameLayout,
  'rename-module': renameModule,
  'rename-take': renameTake,
  'seat-connector': seatConnector,
  several: severalBy(applyEdit),
  'swap-modules': swapModules,
  'turn-ribbon': turnRibbon,
  'twist-ribbon': twistRibbon,
  unseat,
};

/**
 * The layout after an edit, or why it was refused. Edits are never refused for what the drawing would then look
 * like: overlaps and bad seats are findings. What an edit leaves alone keeps its identity, the kit always; an
 * edit that changes nothing gives back the very layout.
 */
export function applyEdit(layout: Layout, edit: Edit): Edited<Layout> {
  const command = commands[edit.type] as Command<Edit>;
  return command(layout, edit);
}
