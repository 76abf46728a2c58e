/** The third door of the core: handing over. Apart from the others so that the app loads it when it is needed. */
export { compareLayouts, type Difference, isKin } from './share/compare.ts';
export { type LeftOut, leaveOut } from './share/left-out.ts';
export { describeLinkFailure, linkOf, openLink } from './share/link.ts';
