import { useEffect, useState } from 'react';
import {
  drawnChecks,
  type Layout,
  type ModuleKind,
  type OpenFact,
  openFacts,
  worstFirst,
} from '../../src/index.ts';

/** A pause in which the page can answer, ms. */
const REST_MS = 0;
/** Nobody reads while typing, ms. */
const PAUSE_MS = 200;

interface Found {
  readonly facts: readonly OpenFact[];
  /** All kinds were looked at. */
  readonly done: boolean;
}

const NONE: Found = { facts: [], done: false };

/**
 * What rests on unknown facts, worst first; looked for kind by kind while the page has nothing else to do.
 *
 * @param kinds - those that are asked about; all of the layout where there are none
 */
export function useOpenFacts(layout: Layout, kinds?: readonly ModuleKind[]): Found {
  const [found, setFound] = useState(NONE);
  useEffect(() => {
    const search = openFacts(layout, drawnChecks, kinds);
    const facts: OpenFact[] = [];
    let timer = setTimeout(step, PAUSE_MS);
    function step(): void {
      const { value, done } = search.next();
      if (value) facts.push(...value);
      if (done) setFound({ facts: worstFirst(facts), done: true });
      else timer = setTimeout(step, REST_MS);
    }
    return () => clearTimeout(timer);
  }, [layout, kinds]);
  return found;
}
