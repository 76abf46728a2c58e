import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { WholeTake } from '../../src/index.ts';
import { useAnalysis, useEditor } from '../hooks.ts';
import { type FaultDesk, type FaultDeskStore, faultDeskOf } from './fault-desk.ts';
import { renewBreakage, renewSeen, renewTest } from './renew.ts';

interface AtDesk extends FaultDesk {
  readonly take: WholeTake;
  readonly desk: FaultDeskStore;
}

/** What lies on the desk, by the take as it is now. */
export function useFaultDesk(): AtDesk {
  const desk = faultDeskOf(useEditor());
  const state = useStore(desk);
  const { derived: take } = useAnalysis();
  return useMemo(
    () => ({
      take,
      desk,
      way: state.way,
      broken: state.broken.flatMap((breakage) => renewBreakage(breakage, take) ?? []),
      symptoms: state.symptoms.flatMap((seen) => renewSeen(seen, take) ?? []),
      answers: state.answers.flatMap(({ test, isThere }) => {
        const now = renewTest(test, take);
        return now ? [{ test: now, isThere }] : [];
      }),
    }),
    [take, desk, state],
  );
}
