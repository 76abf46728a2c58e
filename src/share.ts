/** The third door of the core: handing over. Apart from the others so that the app loads it when it is needed. */
export { compareLayouts, type Difference, isKin } from './share/compare.ts';
export { type LeftOut, leaveOut } from './share/left-out.ts';
export { describeLinkFailure, linkOf, openLink } from './share/link.ts';
export {
  type ChangedBy,
  type Chosen,
  changedBy,
  differingKeys,
  isSameContent,
  merge,
  nearestTo,
  type Side,
} from './share/merge.ts';
export { differingParts, type Part } from './share/merge-parts.ts';
export { partWords } from './share/merge-words.ts';
