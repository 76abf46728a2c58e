import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import {
  type Known,
  mapped,
  type PlanePoint,
  panelHoles,
  scaleOf,
  shiftedTo,
  throughPoints,
  unmapped,
} from '../../src/index.ts';
import { type Frame, transformOf } from './drawing-frame.ts';
import { nudged } from './header-drawing.tsx';
import type { Photograph } from './photograph.ts';

/** The photograph where it lies. */
export const PhotographImage = ({
  frame,
  photo: { laid, opacity, widthPx, heightPx },
  address,
}: {
  readonly frame: Frame;
  readonly photo: Photograph;
  readonly address: string;
}) => (
  // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus.
  <g opacity={opacity} aria-hidden="true">
    <image
      href={address}
      width={widthPx}
      height={heightPx}
      preserveAspectRatio="none"
      transform={transformOf(frame, laid)}
    />
  </g>
);

interface HandsProps {
  readonly frame: Frame;
  readonly photo: Photograph;
  readonly onPhoto: (photo: Photograph) => void;
}

/** Where a pointer is on the drawing, px. */
function pointOf(event: PointerEvent<SVGElement>): PlanePoint {
  const { left, top } = (event.currentTarget.ownerSVGElement ?? event.currentTarget).getBoundingClientRect();
  return { x: event.clientX - left, y: event.clientY - top };
}

/** A point of the photograph under a point of the drawing. */
const photoAt = (frame: Frame, { laid }: Photograph, point: PlanePoint): PlanePoint =>
  unmapped(laid, frame.rearAt(point));

const Ground = ({ frame: { width, height } }: { readonly frame: Frame }) => (
  <rect className="ground" width={width} height={height} />
);

interface PointsProps extends HandsProps {
  /** On the photograph, px. */
  readonly points: readonly [PlanePoint, PlanePoint];
  readonly onPoints: (points: readonly [PlanePoint, PlanePoint]) => void;
}

/** Two points of the photograph that are dragged, touched or nudged to where something known is. */
export function TwoPoints({ frame, photo, points, onPoints }: PointsProps) {
  const held = useRef<{ readonly pointer: number; readonly i: 0 | 1 } | null>(null);
  const at = points.map((point) => frame.atRear(mapped(photo.laid, point)));
  const put = (i: 0 | 1, point: PlanePoint): void => {
    const moved = photoAt(frame, photo, point);
    onPoints(i === 0 ? [moved, points[1]] : [points[0], moved]);
  };
  const onPointerDown = (event: PointerEvent<SVGGElement>): void => {
    if (event.button !== 0) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    const point = pointOf(event);
    const [first, second] = at.map(({ x, y }) => Math.hypot(x - point.x, y - point.y));
    const i = (first ?? 0) <= (second ?? 0) ? 0 : 1;
    held.current = { pointer: event.pointerId, i };
    put(i, point);
  };
  const onPointerMove = (event: PointerEvent<SVGGElement>): void => {
    if (held.current?.pointer === event.pointerId) put(held.current.i, pointOf(event));
  };
  const letGo = (): void => {
    held.current = null;
  };
  const onKeyDown = (event: KeyboardEvent, i: 0 | 1): void => {
    const now = at[i];
    const place = now && nudged(frame.placeAt(now), frame.side, event);
    if (!place) return;
    event.preventDefault();
    event.stopPropagation();
    put(i, frame.at(place));
  };
  const [a, b] = at;
  return (
    <g
      className="hands points"
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={letGo}
      onPointerCancel={letGo}
    >
      <Ground frame={frame} />
      {a && b && <path className="between" d={`M${a.x} ${a.y}L${b.x} ${b.y}`} />}
      {at.map(({ x, y }, i) => (
        // biome-ignore lint/a11y/useSemanticElements: a button of HTML cannot lie in a drawing.
        <g
          // biome-ignore lint/suspicious/noArrayIndexKey: a point is its number.
          key={i}
          className="point"
          role="button"
          tabIndex={0}
          aria-label={`Point ${i + 1} of the photograph; the arrow keys move it`}
          onKeyDown={(event) => onKeyDown(event, i === 0 ? 0 : 1)}
        >
          <circle className="hold" cx={x} cy={y} r={22} />
          <path className="cross under" d={`M${x - 11} ${y}h22M${x} ${y - 11}v22`} />
          <path className="cross" d={`M${x - 11} ${y}h22M${x} ${y - 11}v22`} />
          <text x={x + 8} y={y - 8}>
            {i + 1}
          </text>
        </g>
      ))}
    </g>
  );
}

/** Features of a panel that a photograph is held to from so near, px. */
const REACH_PX = 9;

/** Points of the panel that everybody can find on a photograph: corners and mounting holes, mm as seen from the rear. */
export function featuresOf(
  { widthMm, heightMm }: Frame['size'],
  panel: { readonly widthHp: number; readonly heightU: number },
): readonly PlanePoint[] {
  const holes = panelHoles(panel.widthHp, panel.heightU).map(({ xMm, yMm }) => ({
    x: widthMm - xMm,
    y: heightMm - yMm,
  }));
  return [{ x: 0, y: 0 }, { x: widthMm, y: 0 }, { x: 0, y: heightMm }, { x: widthMm, y: heightMm }, ...holes];
}

interface FitProps extends HandsProps {
  readonly panel: { readonly widthHp: number; readonly heightU: number };
  /** The point of the photograph that lies right already. */
  readonly anchor: Known | null;
  readonly onAnchor: (anchor: Known) => void;
}

/** A feature of the photograph is dragged to where it belongs: the first shifts it, the second turns and scales it. */
export function DragToFit({ frame, photo, onPhoto, panel, anchor, onAnchor }: FitProps) {
  const held = useRef<{ readonly pointer: number; readonly from: PlanePoint; to: PlanePoint } | null>(null);
  const features = featuresOf(frame.size, panel);
  const caught = (point: PlanePoint): PlanePoint => {
    const near = features
      .map((feature) => ({ feature, px: frame.atRear(feature) }))
      .map(({ feature, px }) => ({ feature, away: Math.hypot(px.x - point.x, px.y - point.y) }))
      .filter(({ away }) => away <= REACH_PX)
      .sort((x, y) => x.away - y.away)[0];
    return near?.feature ?? frame.rearAt(point);
  };
  const onPointerDown = (event: PointerEvent<SVGGElement>): void => {
    if (event.button !== 0) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    const point = pointOf(event);
    held.current = {
      pointer: event.pointerId,
      from: photoAt(frame, photo, point),
      to: frame.rearAt(point),
    };
  };
  const onPointerMove = (event: PointerEvent<SVGGElement>): void => {
    const now = held.current;
    if (now?.pointer !== event.pointerId) return;
    now.to = caught(pointOf(event));
    const laid = anchor
      ? throughPoints(photo.laid.mirrored, anchor, { from: now.from, to: now.to })
      : shiftedTo(photo.laid, now.from, now.to);
    if (laid && scaleOf(laid) > 1e-6) onPhoto({ ...photo, laid });
  };
  const onPointerUp = (): void => {
    if (held.current && !anchor) onAnchor({ from: held.current.from, to: held.current.to });
    held.current = null;
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const origin = { xMm: 0, yMm: 0 };
    const by = nudged(origin, 'rear', event);
    if (!by) return;
    event.preventDefault();
    event.stopPropagation();
    const across = frame.side === 'rear' ? -by.xMm : by.xMm;
    onPhoto({ ...photo, laid: { ...photo.laid, dx: photo.laid.dx + across, dy: photo.laid.dy - by.yMm } });
  };
  const fixed = anchor && frame.atRear(anchor.to);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button of HTML cannot lie in a drawing.
    <g
      className="hands fit"
      role="button"
      tabIndex={0}
      aria-label="The photograph; the arrow keys move it"
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={onPointerUp}
      onKeyDown={onKeyDown}
    >
      <Ground frame={frame} />
      {features.map((feature) => {
        const { x, y } = frame.atRear(feature);
        return <circle key={`${feature.x} ${feature.y}`} className="feature" cx={x} cy={y} r={5} />;
      })}
      {fixed && <path className="anchor" d={`M${fixed.x - 8} ${fixed.y}h16M${fixed.x} ${fixed.y - 8}v16`} />}
    </g>
  );
}
