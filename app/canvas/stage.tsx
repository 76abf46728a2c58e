import 'konva/lib/Shape.js';
import type { Context as LayerContext } from 'konva/lib/Context.js';
import type { Layer as KonvaLayer } from 'konva/lib/Layer.js';
import { type JSX, memo, type Ref, useLayoutEffect, useRef, useState } from 'react';
import { Layer, Shape, Stage } from 'react-konva/lib/ReactKonvaCore';
import type { Context } from './draw/paper.ts';
import type { MovingStore } from './model.ts';
import { Painter, type Shown } from './painter.ts';

export interface CanvasStageProps extends Shown {
  readonly moving: MovingStore;
}

type Paint = (ctx: Context) => void;

interface PaintedLayerProps {
  readonly paint: Paint;
  readonly ref: Ref<KonvaLayer>;
}

/** One layer with one shape, whose drawing is ours. Rendered once, since each rendering would draw it anew. */
const PaintedLayer = memo(
  ({ paint, ref }: PaintedLayerProps): JSX.Element => (
    <Layer ref={ref}>
      <Shape
        sceneFunc={(context: LayerContext) => paint(context._context)}
        listening={false}
        perfectDrawEnabled={false}
      />
    </Layer>
  ),
);

/**
 * The canvas: a still layer, a moving layer and one for marks. It takes no events; whoever holds it listens, and
 * asks `hitTest` what lies under a point. A gesture that pans or zooms only has to change `viewport`: the
 * picture is moved at once, and drawn anew when it rests.
 */
export function CanvasStage({ moving, ...shown }: CanvasStageProps): JSX.Element {
  const [painter] = useState(() => new Painter(shown, moving));
  const turning = useRef<HTMLDivElement>(null);
  const picture = useRef<HTMLDivElement>(null);
  const still = useRef<KonvaLayer>(null);
  const carried = useRef<KonvaLayer>(null);
  const marks = useRef<KonvaLayer>(null);

  useLayoutEffect(() => {
    if (!turning.current || !picture.current || !still.current || !carried.current || !marks.current) return;
    return painter.hang({
      turning: turning.current,
      picture: picture.current,
      layers: { still: still.current, moving: carried.current, marks: marks.current },
    });
  }, [painter]);

  const { scene, viewport, theme, size } = shown;
  useLayoutEffect(
    () => painter.show({ scene, viewport, theme, size }),
    [painter, scene, viewport, theme, size],
  );

  return (
    <div ref={turning} style={{ position: 'absolute', inset: 0, overflow: 'hidden', pointerEvents: 'none' }}>
      <div ref={picture} style={{ transformOrigin: '0 0' }}>
        <Stage width={size.width} height={size.height} listening={false}>
          <PaintedLayer ref={still} paint={painter.still} />
          <PaintedLayer ref={carried} paint={painter.moving} />
          <PaintedLayer ref={marks} paint={painter.marks} />
        </Stage>
      </div>
    </div>
  );
}
