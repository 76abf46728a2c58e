import type { PanelPlace, PanelSize, PlanePoint, Side, Similarity } from '../../src/index.ts';

/** A point of the drawing, px. */
interface Px {
  readonly x: number;
  readonly y: number;
}

/** How a panel lies in its drawing: the ways from mm to px and back, whichever side is looked at. */
export interface Frame {
  readonly side: Side;
  readonly size: PanelSize;
  /** px to the mm. */
  readonly scale: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** A place on the panel, as the document has it. */
  at(place: PanelPlace): Px;
  /** The place at a point. */
  placeAt(point: Px): PanelPlace;
  /** A point as seen from the rear, mm from the left and from the upper edge: what photographs are laid by. */
  atRear(point: PlanePoint): Px;
  rearAt(point: Px): PlanePoint;
}

/** Room for rulers, px: beside, above and below the panel. */
const LEFT = 34;
const RIGHT = 16;
const TOP = 26;
const BOTTOM = 30;

const LEAST_SCALE = 0.5;
const MOST_SCALE = 8;

/** The frame in which a panel fills a box, px, or more of it by a factor. */
export function frameOf(
  size: PanelSize,
  side: Side,
  box: { readonly width: number; readonly height: number },
  zoom: number,
): Frame {
  const fits = Math.min(
    (box.width - LEFT - RIGHT) / size.widthMm,
    (box.height - TOP - BOTTOM) / size.heightMm,
    MOST_SCALE,
  );
  const scale = Math.max(LEAST_SCALE, fits) * zoom;
  const panelPx = size.widthMm * scale;
  const width = Math.max(box.width, panelPx + LEFT + RIGHT);
  const height = size.heightMm * scale + TOP + BOTTOM;
  const left = Math.max(LEFT, (width - panelPx) / 2);
  const top = TOP;
  const mirror = (xMm: number): number => (side === 'rear' ? size.widthMm - xMm : xMm);
  return {
    side,
    size,
    scale,
    left,
    top,
    width,
    height,
    at: ({ xMm, yMm }) => ({ x: left + mirror(xMm) * scale, y: top + (size.heightMm - yMm) * scale }),
    placeAt: ({ x, y }) => ({ xMm: mirror((x - left) / scale), yMm: size.heightMm - (y - top) / scale }),
    atRear: ({ x, y }) => ({
      x: left + (side === 'rear' ? x : size.widthMm - x) * scale,
      y: top + y * scale,
    }),
    rearAt: ({ x, y }) => {
      const across = (x - left) / scale;
      return { x: side === 'rear' ? across : size.widthMm - across, y: (y - top) / scale };
    },
  };
}

/** The `transform` that draws a photograph's px where they lie. */
export function transformOf({ side, size, scale, left, top }: Frame, by: Similarity): string {
  const { mirrored, a, b, dx, dy } = by;
  const view = side === 'rear' ? '' : `translate(${size.widthMm} 0) scale(-1 1) `;
  const flip = mirrored ? ' scale(-1 1)' : '';
  return `translate(${left} ${top}) scale(${scale}) ${view}matrix(${a} ${b} ${-b} ${a} ${dx} ${dy})${flip}`;
}
