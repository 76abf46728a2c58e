import { useEffect, useRef, useState } from 'react';
import type { Layout, PlacedRow } from '../../src/index.ts';
import { layOutSheet, sheetMm, viewOf } from '../../src/index.ts';
import type { LayerKey } from '../canvas/layer-keys.ts';
import { paintStill } from '../canvas/layers.ts';
import type { Side, Size, ThemeName, Viewport } from '../canvas/model.ts';
import { THEMES } from '../canvas/theme.ts';
import { analyse } from '../store/analysis.ts';
import { NOTHING } from '../store/session.ts';
import { useThemeName } from '../style/use-theme.ts';
import type { KeptLayout } from './kept-layout.ts';
import { openKept } from './open-kept.ts';

/** CSS px. */
const SIZE = { width: 264, height: 150 } as const;

/** Drawn larger than shown: lines have a least width, and labels a least size. */
const SHRINK = 3;

/** A small case does not fill the picture with one module, px per mm as drawn. */
const MOST_SCALE = 3;

const HIDDEN: ReadonlySet<LayerKey> = new Set<LayerKey>(['names', 'section']);

/** The rows without the section below each, which a small picture has no room for. */
const withoutSections = (rows: readonly PlacedRow[]): readonly PlacedRow[] =>
  rows.map((placed) => ({ ...placed, row: { ...placed.row, depthMm: 0 } }));

/** The whole sheet, however small it gets, in the middle. */
function fitWhole(rows: readonly PlacedRow[], size: Size): Viewport {
  const { width, height } = sheetMm(rows);
  const scale = Math.min(MOST_SCALE, size.width / width, size.height / height);
  return { scale, x: (size.width - width * scale) / 2, y: (size.height - height * scale) / 2 };
}

function paint(canvas: HTMLCanvasElement, layout: Layout, side: Side, theme: ThemeName): void {
  const context = canvas.getContext('2d');
  const [take] = layout.takes;
  if (!context || !take) return;
  const ratio = Math.min(2, Math.max(1, devicePixelRatio)) / SHRINK;
  const size = { width: SIZE.width * SHRINK, height: SIZE.height * SHRINK };
  canvas.width = Math.round(size.width * ratio);
  canvas.height = Math.round(size.height * ratio);
  // Lettering would be too small to read.
  context.fillText = () => {};
  const { derived } = analyse(layout.kit, take);
  const rows = withoutSections(derived.places.rows);
  const viewport = fitWhole(rows, size);
  const sheet = layOutSheet({ places: { ...derived.places, rows } }, side, viewport.scale);
  context.setTransform(ratio, 0, 0, ratio, viewport.x * ratio, viewport.y * ratio);
  const paper = { sheet, theme: THEMES[theme], view: viewOf(viewport, size), hidden: HIDDEN };
  paintStill(context, paper, { derived, notes: [], side, selection: NOTHING, focus: null });
}

interface Props {
  readonly kept: Pick<KeptLayout, 'id' | 'text'>;
  readonly side: Side;
  /** As shown, CSS px. */
  readonly widthPx?: number;
}

/** A layout's first take as the app draws it, when it is looked at: so it suits the theme, and costs nothing on saving. */
export function Thumbnail({ kept, side, widthPx = SIZE.width }: Props) {
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
  return <canvas ref={ref} style={{ width: widthPx, height: (widthPx * SIZE.height) / SIZE.width }} />;
}
