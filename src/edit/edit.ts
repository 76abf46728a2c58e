import type { AcceptFinding } from './accept-finding.ts';
import type { AddBoard } from './add-board.ts';
import type { AddBus } from './add-bus.ts';
import type { AddModuleKind } from './add-module-kind.ts';
import type { AddRibbon } from './add-ribbon.ts';
import type { AddRibbonKind } from './add-ribbon-kind.ts';
import type { AddRow } from './add-row.ts';
import type { AddSupply } from './add-supply.ts';
import type { AddTake } from './add-take.ts';
import type { AddVoltage } from './add-voltage.ts';
import type { AdoptMeasured } from './adopt-measured.ts';
import type { BringBack } from './bring-back.ts';
import type { ChangeBoard } from './change-board.ts';
import type { ChangeBus } from './change-bus.ts';
import type { ChangeModuleKind } from './change-module-kind.ts';
import type { ChangeRibbonKind } from './change-ribbon-kind.ts';
import type { ChangeRow } from './change-row.ts';
import type { ChangeSupply } from './change-supply.ts';
import type { ChangeVoltage } from './change-voltage.ts';
import type { DuplicateModules } from './duplicate-modules.ts';
import type { ExchangeRibbon } from './exchange-ribbon.ts';
import type { LabelRibbon } from './label-ribbon.ts';
import type { LayOutRows } from './lay-out-rows.ts';
import type { LockRibbon } from './lock-ribbon.ts';
import type { MarkInCase } from './mark-in-case.ts';
import type { MoveModules } from './move-modules.ts';
import type { MoveRow } from './move-row.ts';
import type { MoveTake } from './move-take.ts';
import type { NoteMeasured } from './note-measured.ts';
import type { OrderRibbons } from './order-ribbons.ts';
import type { Paste } from './paste.ts';
import type { PinModules } from './pin-modules.ts';
import type { PlaceModule } from './place-module.ts';
import type { RemoveBoard } from './remove-board.ts';
import type { RemoveBus } from './remove-bus.ts';
import type { RemoveModuleKind } from './remove-module-kind.ts';
import type { RemoveModules } from './remove-modules.ts';
import type { RemoveRibbonKind } from './remove-ribbon-kind.ts';
import type { RemoveRibbons } from './remove-ribbons.ts';
import type { RemoveRow } from './remove-row.ts';
import type { RemoveSupply } from './remove-supply.ts';
import type { RemoveTake } from './remove-take.ts';
import type { RemoveVoltage } from './remove-voltage.ts';
import type { RenameLayout } from './rename-layout.ts';
import type { RenameModule } from './rename-module.ts';
import type { RenameTake } from './rename-take.ts';
import type { RewireTake } from './rewire-take.ts';
import type { SeatConnector } from './seat-connector.ts';
import type { SetBoardHeaders } from './set-board-headers.ts';
import type { SetLimits } from './set-limits.ts';
import type { Several } from './several.ts';
import type { SlideRibbon } from './slide-ribbon.ts';
import type { SwapModules } from './swap-modules.ts';
import type { TakeKinds } from './take-kinds.ts';
import type { TickStep } from './tick-step.ts';
import type { TickTest } from './tick-test.ts';
import type { TurnRibbon } from './turn-ribbon.ts';
import type { TwistRibbon } from './twist-ribbon.ts';
import type { Unseat } from './unseat.ts';
import type { UntickTest } from './untick-test.ts';

/** A change to a layout as plain data: a finding can name one as its remedy, and a log can keep it. */
export type Edit =
  | AcceptFinding
  | AddBoard
  | AddRibbon
  | AddRow
  | AddSupply
  | AddTake
  | AdoptMeasured
  | BringBack
  | ChangeBoard
  | ChangeRow
  | ChangeSupply
  | AddBus
  | AddModuleKind
  | AddRibbonKind
  | ChangeModuleKind
  | ChangeRibbonKind
  | ExchangeRibbon
  | DuplicateModules
  | LayOutRows
  | LabelRibbon
  | LockRibbon
  | MarkInCase
  | MoveModules
  | MoveRow
  | MoveTake
  | NoteMeasured
  | OrderRibbons
  | Paste
  | PinModules
  | PlaceModule
  | RemoveBoard
  | RemoveModuleKind
  | RemoveModules
  | RemoveRibbonKind
  | RemoveRibbons
  | RemoveRow
  | RemoveSupply
  | RemoveTake
  | RenameLayout
  | RenameModule
  | RenameTake
  | RewireTake
  | SeatConnector
  | SetBoardHeaders
  | Several<Edit>
  | SlideRibbon
  | SwapModules
  | TakeKinds
  | TickStep
  | TickTest
  | TurnRibbon
  | TwistRibbon
  | AddVoltage
  | ChangeBus
  | ChangeVoltage
  | RemoveBus
  | RemoveVoltage
  | SetLimits
  | Unseat
  | UntickTest;
