export { boxWords } from './checks/box-words.ts';
export type {
  Check,
  Examples,
  Finding,
  Found,
  Level,
  Mend,
  Note,
  Spot,
  Subject,
  SubjectType,
} from './checks/check.ts';
export { type Reach, reachOf, totalMm } from './checks/depth.ts';
export { drawnChecks } from './checks/drawn-checks.ts';
export { type Effect, effectOf } from './checks/effect.ts';
export { type HowManyMore, MOST, searchHowManyMore } from './checks/how-many-more.ts';
export { checks } from './checks/index.ts';
export { judge } from './checks/judge.ts';
export { estimate } from './checks/load-words.ts';
export { type NoteChanges, noteChanges } from './checks/note-changes.ts';
export {
  type Fact,
  type OpenFact,
  openFacts,
  type RestingNote,
  unknownFactsOf,
  worstFirst,
} from './checks/open-facts.ts';
export {
  canRehearse,
  misplugDrawn,
  type Rehearsal,
  rehearsalOf,
  seatRehearsed,
} from './checks/rehearsal.ts';
export { type BetterFeed, searchBetterFeeds } from './checks/remedies/better-feeds.ts';
export { type FeedAll, feedAll } from './checks/remedies/feeding.ts';
export { mendsOf, searchMends } from './checks/remedies/mends-of.ts';
export { checkTake, findingsOf, pressingNotes } from './checks/run.ts';
export { spotsOf } from './checks/spots.ts';
export { type Verdict, verdictOf } from './checks/verdict.ts';
export { lineName, list, targetInFull } from './checks/words.ts';
export {
  acrossOf,
  type BandStop,
  bandPieces,
  type Piece,
  piecesOf,
  stripCorners,
  stripeCorners,
} from './drawing/band.ts';
export { beside } from './drawing/beside.ts';
export { connectorPoints, pointBetween } from './drawing/connector-points.ts';
export { tickCorners } from './drawing/connector-tick.ts';
export { levelsOf, overOf } from './drawing/draw-order.ts';
export { type FreeSpan, freeSpans, hpText } from './drawing/free-spans.ts';
export { fromMiddle, headerHalfMm, pin1Shapes } from './drawing/header-shapes.ts';
export type { Knot } from './drawing/knot.ts';
export { type Run, runOf } from './drawing/runs.ts';
export { CONNECTOR_MM, sectionLine, sliceOf } from './drawing/section.ts';
export * from './drawing/sheet.ts';
export { type Adoption, adoptionOf } from './edit/adopt-measured.ts';
export { applyEdit } from './edit/apply.ts';
export type { EditRefusal } from './edit/change.ts';
export { clipOf } from './edit/clip-of.ts';
export type { Edit } from './edit/edit.ts';
export {
  copyOfKind,
  freshBoardId,
  freshKindId,
  freshModuleId,
  freshRibbonId,
  freshRowId,
  freshSupplyId,
  freshTakeId,
} from './edit/fresh.ts';
export * from './edit/history.ts';
export { type Loss, lossOf, lossWords } from './edit/loss.ts';
export { markLetter } from './edit/mark-letter.ts';
export { boardBudgets, supplyBudgets } from './electrical/budget.ts';
export type { Defect } from './electrical/defect.ts';
export {
  type Observation,
  probeOf,
  type Search,
  searchFault,
  type Test as FaultTest,
} from './electrical/next-test.ts';
export { type PartPower, type Power, powerOf } from './electrical/power.ts';
export {
  type ModuleReadings,
  type Reading,
  type ReadingState,
  type Readings,
  readingsWith,
} from './electrical/readings.ts';
export { type SpanCurrent, spanCurrents } from './electrical/span-currents.ts';
export {
  defectsOfSuspect,
  linesAt,
  type ShortPlace,
  type Suspect,
  shortPairs,
} from './electrical/suspect.ts';
export { type Watts, wattsOf } from './electrical/watts.ts';
export type { Link } from './electrical/ways.ts';
export { ohmsPerMetre } from './electrical/wire.ts';
export { archShape, heldArch, LEGS_TOUCH_RATIO } from './geometry/arch.ts';
export * from './geometry/connector.ts';
export { CUT_END_MM, type Cut, type CutFlaw, type CutGap, cutRibbon, usualSlacks } from './geometry/cut.ts';
export {
  DOCUMENT_EDGES,
  type Edges,
  measuredFrom,
  type PanelPlace,
  type PanelSize,
  panelSizeMm,
} from './geometry/edges.ts';
export * from './geometry/module-templates.ts';
export type { PlacedBoard, PlacedHeader, PlacedModule, PlacedRow, Places } from './geometry/place.ts';
export * from './geometry/rack.ts';
export { type Side, seenFrom } from './geometry/side.ts';
export * from './geometry/similarity.ts';
export { type Guide, SNAP_GRID_MM, type Snapped, snapHeader } from './geometry/snap-header.ts';
export { headersInLine } from './layout/board-headers.ts';
export { CASE_PATTERNS, type CasePattern } from './layout/case-patterns.ts';
export { type Clip, clipText } from './layout/clip.ts';
export * from './layout/defaults.ts';
export { demoLayout } from './layout/demo.ts';
export { groupBy } from './layout/group-by.ts';
export type * from './layout/layout.ts';
export { OPEN_LIMITS } from './layout/open-limits.ts';
export { POWER_BUSES } from './layout/power-buses.ts';
export { remember } from './layout/remember.ts';
export { fail, ok, type Result } from './layout/result.ts';
export { emptyKit, emptyLayout } from './layout/starter.ts';
export { takeInCase } from './layout/take-in-case.ts';
export { revisionOf } from './sheet/revision.ts';
export { type Berth, berthOn, isSamePlace, isTaken } from './wiring/berth.ts';
export { deriveTake } from './wiring/derive.ts';
export type { DerivedTake } from './wiring/derived-take.ts';
export { fingerprintOf } from './wiring/fingerprint.ts';
export { type Gap, gapOf } from './wiring/gap.ts';
export {
  HARNESS_TESTS,
  type HarnessState,
  type HarnessTestId,
  harnessStates,
  testAgain,
} from './wiring/harness-tests.ts';
export { joinedWith } from './wiring/joined.ts';
export {
  atMmOf,
  connectorAt,
  connectorOf,
  connectorsInUse,
  faceAt,
  type Joint,
  type JointTarget,
  type LaidRibbon,
  linesUnder,
  orderOf,
  stripeAt,
  waysOf,
} from './wiring/laid-ribbon.ts';
export { type LayOptions, layAlong } from './wiring/lay-along.ts';
export { layLoose } from './wiring/lay-loose.ts';
export { type LaidOver, layRibbon } from './wiring/lay-ribbon.ts';
export {
  connectorsFor,
  type Landing,
  type Laying,
  type Miss,
  type WhyNot,
  whyNotOn,
} from './wiring/laying.ts';
export { leadFor } from './wiring/lead.ts';
export { directionOf, type Lie } from './wiring/lie.ts';
export {
  connectorsAt,
  headersToMeasure,
  type Measured,
  measure,
  ribbonsOn,
  seatsOnMeasured,
} from './wiring/measure.ts';
export { isShort } from './wiring/mishap.ts';
export { crossesJoint, distanceMm } from './wiring/neighbours.ts';
export { contactPlace, type Misplug } from './wiring/pin-map.ts';
export { betterKind, landed, type Pulled, pullRibbon } from './wiring/pull-ribbon.ts';
export { linesOn, seatAt } from './wiring/rehearse.ts';
export { seatedOnOf, seatPlaces } from './wiring/seat-places.ts';
export { type Lead, lengthMmOf, type NoLead, shortestLead, tautest } from './wiring/shortest-lead.ts';
export { isInStock, ownedLeft } from './wiring/stock.ts';
export type { WholeTake } from './wiring/whole-take.ts';
