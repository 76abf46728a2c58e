import { lazy, type RefObject, Suspense, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { WholeTake } from '../../src/index.ts';
import type { Heat } from '../canvas/draw/paper.ts';
import type { Scene } from '../canvas/model.ts';
import { CanvasStage } from '../canvas/stage.tsx';
import { THEMES } from '../canvas/theme.ts';
import { useAnalysis, useEditor, useGesture, useSession } from '../hooks.ts';
import { viewportNow } from '../store/view.ts';
import { useThemeName } from '../style/use-theme.ts';
import { ByList } from './by-list.tsx';

/** Loaded when several things lie under a tap. */
const PileHint = lazy(async () => ({ default: (await import('./pile-hint.tsx')).PileHint }));

/** The heat map that is asked for, once the functions that draw it have come. */
function useHeat(derived: WholeTake): Heat | undefined {
  const line = useSession((session) => session.heat);
  const [make, setMake] = useState<((take: WholeTake, line: string) => Heat | undefined) | null>(null);
  const isWanted = line !== null;
  useEffect(() => {
    if (isWanted) void import('../power/heat-map.ts').then(({ heatMap }) => setMake(() => heatMap));
  }, [isWanted]);
  return useMemo(() => (line === null ? undefined : make?.(derived, line)), [derived, line, make]);
}

function useScene(): Scene {
  const { derived, notes } = useAnalysis();
  const heat = useHeat(derived);
  const side = useSession((session) => session.side);
  const selection = useSession((session) => session.selection);
  const focus = useSession((session) => session.focus);
  const hidden = useSession((session) => session.hidden);
  const lifted = useSession((session) => session.lifted);
  const aim = useSession((session) => session.aim);
  const { hints } = useEditor();
  const starts = useStore(hints, (state) => state.starts);
  const overlay = useStore(hints, (state) => state.overlay);
  return useMemo(
    () => ({ derived, notes, side, selection, focus, hidden, lifted, aim, starts, heat, overlay }),
    [derived, notes, side, selection, focus, hidden, lifted, aim, starts, heat, overlay],
  );
}

/** Of the root of a page, where nobody wants it larger. */
const USUAL_TEXT_PX = 16;

/** Tells the session how large the stage is, before the first picture and whenever it changes. */
function useMeasuredStage() {
  const { session } = useEditor();
  const ref = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = (): void => {
      const { clientWidth: width, clientHeight: height } = element;
      const text = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / USUAL_TEXT_PX;
      const { stage } = session.getState();
      if (width !== stage.width || height !== stage.height || text !== stage.text)
        session.setState({ stage: { width, height, text } });
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [session]);
  return ref;
}

function Marquee() {
  const box = useGesture(({ marquee }) => marquee);
  if (!box) return null;
  const { left, top, right, bottom } = box;
  return <div className="marquee" style={{ left, top, width: right - left, height: bottom - top }} />;
}

/** Lets the user take hold of the drawing as soon as it stands. */
function useHands(ref: RefObject<HTMLElement | null>): void {
  const editor = useEditor();
  useEffect(() => {
    let release = (): void => {};
    let isOver = false;
    void import('./hands.ts').then(({ takeHold }) => {
      if (!isOver && ref.current) release = takeHold(editor, ref.current);
    });
    return () => {
      isOver = true;
      release();
    };
  }, [editor, ref]);
}

/** The drawing, and the ear for what pointers and keys do to it. */
export function Stage() {
  const editor = useEditor();
  const ref = useMeasuredStage();
  const list = useRef<HTMLDivElement>(null);
  const scene = useScene();
  const size = useSession((session) => session.stage);
  const moved = useSession((session) => session.viewport);
  const hasPile = useSession((session) => session.pile !== null);
  const inHand = useSession((session) => session.inHand);
  const theme = THEMES[useThemeName()];
  const { derived, side } = scene;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a fitted viewport follows from these.
  const viewport = useMemo(() => viewportNow(editor), [editor, moved, size, derived, side]);
  useHands(list);

  return (
    <div ref={ref} className={inHand === null ? 'stage' : 'stage placing'}>
      {size.width > 0 && (
        <CanvasStage scene={scene} viewport={viewport} theme={theme} size={size} moving={editor.gestures} />
      )}
      <ByList ref={list} />
      <Marquee />
      <Suspense>{hasPile && <PileHint />}</Suspense>
    </div>
  );
}
