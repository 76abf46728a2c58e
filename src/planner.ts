/** A door of the core: takes compared and proposed. Apart from the others so that the app loads it when it is needed. */
export { type Arrangement, proposeArrangement } from './planner/arrange.ts';
export type { Progress } from './planner/choose.ts';
export { engineOf, type Highs } from './planner/engine.ts';
export { type Proposal, proposeWiring } from './planner/propose-wiring.ts';
export type { Unlinked } from './planner/why.ts';
export { withEngine } from './planner/with-engine.ts';
export { type ProposalChange, proposalChanges } from './share/proposal-changes.ts';
export { proofWords, scoreWords } from './share/proposal-words.ts';
export { type FigureLine, pressingFigures, type SideBySide, sideBySide } from './share/side-by-side.ts';
