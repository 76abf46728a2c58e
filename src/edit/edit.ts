import type { AcceptFinding } from './accept-finding.ts';
import type { AddRibbon } from './add-ribbon.ts';
import type { AddTake } from './add-take.ts';
import type { BringBack } from './bring-back.ts';
import type { ExchangeRibbon } from './exchange-ribbon.ts';
import type { DuplicateModules } from './duplicate-modules.ts';
import type { MoveModules } from './move-modules.ts';
import type { PinModules } from './pin-modules.ts';
import type { PlaceModule } from './place-module.ts';
import type { RemoveModules } from './remove-modules.ts';
import type { RemoveRibbons } from './remove-ribbons.ts';
import type { RemoveTake } from './remove-take.ts';
import type { RenameLayout } from './rename-layout.ts';
import type { RenameModule } from './rename-module.ts';
import type { RenameTake } from './rename-take.ts';
import type { SeatConnector } from './seat-connector.ts';
import type { Several } from './several.ts';
import type { SwapModules } from './swap-modules.ts';
import type { TurnRibbon } from './turn-ribbon.ts';
import type { TwistRibbon } from './twist-ribbon.ts';
import type { Unseat } from './unseat.ts';

/** A change to a layout as plain data: a finding can name one as its remedy, and a log can keep it. */
export type Edit =
  | AcceptFinding
  | AddRibbon
  | AddTake
  | BringBack
  | ExchangeRibbon
  | DuplicateModules
  | MoveModules
  | PinModules
  | PlaceModule
  | RemoveModules
  | RemoveRibbons
  | RemoveTake
  | RenameLayout
  | RenameModule
  | RenameTake
  | SeatConnector
  | Several<Edit>
  | SwapModules
  | TurnRibbon
  | TwistRibbon
  | Unseat;
