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
export { checks } from './checks/index.ts';
export { type FeedAll, feedAll } from './checks/remedies/feeding.ts';
export { mendsOf, searchMends } from './checks/remedies/mends-of.ts';
export { checkTake, findingsOf } from './checks/run.ts';
export { type Verdict, verdictOf } from './checks/verdict.ts';
export { applyEdit } from './edit/apply.ts';
export type { EditRefusal } from './edit/change.ts';
export type { Edit } from './edit/edit.ts';
export { freshModuleId, freshRibbonId, freshTakeId } from './edit/fresh.ts';
export * from './edit/history.ts';
export { archShape, heldArch, LEGS_TOUCH_RATIO } from './geometry/arch.ts';
export * from './geometry/connector.ts';
export type { PlacedBoard, PlacedHeader, PlacedModule, PlacedRow, Places } from './geometry/place.ts';
export * from './geometry/rack.ts';
export { type Side, seenFrom } from './geometry/side.ts';
export * from './layout/defaults.ts';
export { demoLayout } from './layout/demo.ts';
export type * from './layout/layout.ts';
export { fail, ok, type Result } from './layout/result.ts';
export { emptyLayout } from './layout/starter.ts';
export { type DerivedTake, deriveTake } from './wiring/derive.ts';
export {
  atMmOf,
  connectorAt,
  connectorOf,
  type Joint,
  type LaidRibbon,
  orderOf,
  stripeAt,
  waysOf,
} from './wiring/laid-ribbon.ts';
export { type LaidOver, layRibbon } from './wiring/lay-ribbon.ts';
export { directionOf, type Lie } from './wiring/lie.ts';
