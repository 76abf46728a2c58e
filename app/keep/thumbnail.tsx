import { useEffect, useRef, useState } from 'react';
import type { Layout } from '../../src/index.ts';
import type { LayerKey } from '../canvas/layer-keys.ts';
import { paintStill } from '../canvas/layers.ts';
import type { Side } from '../canvas/model.ts';
import { layOutSheet, sheetMm, viewOf } from '../canvas/sheet.ts';
import { THEMES } from '../canvas/theme.ts';
import { fitViewport } from '../canvas/viewport.ts';
import { analyse } from '../store/analysis.ts';
import { NOTHING } from '../store/session.ts';
import { useThemeName } from '../style/use-theme.ts';
import type { KeptLayout } from './kept-layout.ts';
import { openKept } from './open-kept.ts';

/** CSS px. */
const SIZE = { width: 264, height: 150 } as const;

/** Drawn larger than shown: at the size shown the smallest lettering would lie over everything. */
const SHRINK = 3;

const HIDDEN: ReadonlySet<LayerKey> = new Set<LayerKey>(['names', 'section']);

function paint(canvas: HTMLCanvasElement, layout: Layout, side: Side, theme: keyof typeof THEMES): void {
  const context = canvas.getContext('2d');
  const [take] = layout.takes;
  if (!context || !take) return;
  const ratio = Math.min(2, Math.max(1, devicePixelRatio)) / SHRINK;
  const size = { width: SIZE.width * SHRINK, height: SIZE.height * SHRINK };
  canvas.width = Math.round(size.width * ratio);
  canvas.height = Math.round(size.height * ratio);
  const analysis = analyse(layout.kit, take);
  const viewport = fitWhole(analysis.derived.places.rows, side, size);
  const sheet = layOutSheet(analysis.derived, side, viewport.scale);
  context.setTransform(ratio, 0, 0, ratio, viewport.x * ratio, viewport.y * ratio);
  const paper = { sheet, theme: THEMES[theme], view: viewOf(viewport, size), hidden: HIDDEN };
  paintStill(context, paper, { ...analysis, notes: [], side, selection: NOTHING, focus: null });
}

/** The whole sheet, however small it gets. */
function fitWhole(...[rows, side, size]: Parameters<typeof fitViewport>): ReturnType<typeof fitViewport> {
  const { scale } = fitViewport(rows, side, size);
  const { width, height } = sheetMm(rows);
  const whole = Math.min(scale, size.width / width, size.height / height);
  return {
    scale: whole,
    x: (size.width - width * whole) / 2,
    y: Math.max(0, (size.height - height * whole) / 2),
  };
}

/** A layout's first take as the app draws it, when it is looked at: so it suits the theme, and costs nothing on saving. */
export function Thumbnail({ kept, side }: { readonly kept: KeptLayout; readonly side: Side }) {
  const ref = useRef<HTMLCanvasElement>(null);
  const [layout, setLayout] = useState<Layout | string | null>(null);
  const theme = useThemeName();
  useEffect(() => {
    let isOver = false;
    void openKept(kept).then((opened) => {
      if (!isOver) setLayout(opened.ok ? opened.value : opened.error);
    });
    return () => {
      isOver = true;
    };
  }, [kept]);
  useEffect(() => {
    if (ref.current && layout && typeof layout !== 'string') paint(ref.current, layout, side, theme);
  }, [layout, side, theme]);
  if (typeof layout === 'string')
    return <p className="unread">Cannot be opened here: {layout}. It is kept as it is.</p>;
  return <canvas ref={ref} style={SIZE} />;
}
