import type { Kit, Take } from '../../src/index.ts';
import {
  engineOf,
  type Highs,
  type Progress,
  type Proposal,
  proposeArrangement,
  proposeWiring,
  withEngine,
} from '../../src/planner.ts';

export interface Question {
  readonly kit: Kit;
  readonly take: Take;
  readonly arrange: boolean;
}

export type Message =
  | { readonly progress: Progress }
  /** Nothing where the search came to no end. */
  | { readonly proposal: Proposal | undefined };

async function loadEngine() {
  const { default: loadHighs } = await import('highs');
  return engineOf((await loadHighs()) as unknown as Highs);
}

/* Searches beside the page, which ends this thread if it no longer wants to know. */
addEventListener('message', async ({ data }: MessageEvent<Question>) => {
  const { kit, take, arrange } = data;
  const make = arrange ? proposeArrangement : proposeWiring;
  const proposal = await withEngine(
    (engine) => make(kit, take, engine),
    loadEngine,
    (progress) => postMessage({ progress } satisfies Message),
  );
  postMessage({ proposal } satisfies Message);
});
