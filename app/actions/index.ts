import type { Action } from './action.ts';
import { addTake } from './add-take.ts';
import { benchSheet } from './bench-sheet.ts';
import { compareWithKin } from './compare-with-kin.ts';
import { copy } from './copy.ts';
import { cut } from './cut.ts';
import { duplicate } from './duplicate.ts';
import { feedAllThatNeed } from './feed-all.ts';
import { findCommand } from './find-command.ts';
import { fit } from './fit.ts';
import { handOver } from './hand-over.ts';
import { labelRibbon } from './label-ribbon.ts';
import { showAllLayers, toggleLeads } from './layers.ts';
import { letGo } from './let-go.ts';
import { lockRibbons } from './lock-ribbons.ts';
import { markInCase } from './mark-in-case.ts';
import { measureRibbon } from './measure-ribbon.ts';
import { newFromStock } from './new-from-stock.ts';
import { newLeadKind, newModuleKind, newRibbonKind } from './new-kind.ts';
import { newEmptyStock, newLayout } from './new-layout.ts';
import { nudges } from './nudge.ts';
import { openDemo } from './open-demo.ts';
import { openFile } from './open-file.ts';
import { bringToFront, sendToBack } from './order-ribbons.ts';
import { paste } from './paste.ts';
import { pin } from './pin.ts';
import { redo } from './redo.ts';
import { rehearse } from './rehearse.ts';
import { remove } from './remove.ts';
import { removeTake } from './remove-take.ts';
import { saveFile } from './save-file.ts';
import { selectAll } from './select-all.ts';
import { selectJoined } from './select-joined.ts';
import { themes, toggleHalfHp, togglePush } from './settings.ts';
import { showBuilt } from './show-built.ts';
import { showCase } from './show-case.ts';
import { showChange } from './show-change.ts';
import { showFaults } from './show-faults.ts';
import { showHelp, showKeys } from './show-help.ts';
import { showLayouts } from './show-layouts.ts';
import { showLicences } from './show-licences.ts';
import { showList } from './show-list.ts';
import { showPower } from './show-power.ts';
import { showStates } from './show-states.ts';
import { showStock } from './show-stock.ts';
import { showTakes } from './show-takes.ts';
import { nextNote, previousNote } from './step-note.ts';
import { nextRibbon, previousRibbon } from './step-ribbon.ts';
import { nextTake, previousTake } from './step-take.ts';
import { swap } from './swap.ts';
import { toggleHeat } from './toggle-heat.ts';
import { turn } from './turn.ts';
import { turnRibbon } from './turn-ribbon.ts';
import { twistRibbon } from './twist-ribbon.ts';
import { undo } from './undo.ts';
import { zoomIn, zoomOut } from './zoom.ts';

/** Everything that a user can do apart from pointing, dragging and typing into fields. */
export const actions: readonly Action[] = [
  undo,
  redo,
  turn,
  fit,
  zoomIn,
  zoomOut,
  remove,
  copy,
  cut,
  paste,
  duplicate,
  pin,
  swap,
  feedAllThatNeed,
  selectAll,
  selectJoined,
  letGo,
  ...nudges,
  showCase,
  showLayouts,
  showStates,
  compareWithKin,
  showList,
  showStock,
  showPower,
  toggleHeat,
  showFaults,
  measureRibbon,
  showBuilt,
  showChange,
  markInCase,
  showTakes,
  turnRibbon,
  twistRibbon,
  lockRibbons,
  labelRibbon,
  rehearse,
  bringToFront,
  sendToBack,
  nextRibbon,
  previousRibbon,
  newLayout,
  newFromStock,
  newEmptyStock,
  openDemo,
  openFile,
  saveFile,
  handOver,
  benchSheet,
  newModuleKind,
  newRibbonKind,
  newLeadKind,
  addTake,
  removeTake,
  nextTake,
  previousTake,
  nextNote,
  previousNote,
  toggleLeads,
  showAllLayers,
  togglePush,
  toggleHalfHp,
  ...themes,
  findCommand,
  showHelp,
  showKeys,
  showLicences,
];
