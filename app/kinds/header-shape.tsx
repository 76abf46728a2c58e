import {
  type Edges,
  fromMiddle,
  headerBodyMm,
  NOTCH_MM,
  type PanelSize,
  PIN_MM,
  type Side,
  socketBodyMm,
} from '../../src/index.ts';
import { type HeaderDraft, placeOf } from './header-draft.ts';

interface Px {
  readonly x: number;
  readonly y: number;
}

/** Half of what a header covers, mm: along the drawing and up it. */
export function halfOf(
  { axis, keyed }: Pick<HeaderDraft, 'axis' | 'keyed'>,
  pins: number,
): { readonly xMm: number; readonly yMm: number } {
  const { longMm, wideMm } = headerBodyMm(pins, keyed === 'yes');
  return axis === 'horizontal' ? { xMm: longMm / 2, yMm: wideMm / 2 } : { xMm: wideMm / 2, yMm: longMm / 2 };
}

/** Whether a header does not lie on the panel as a whole; nothing is said of one that has no place yet. */
export function reachesBeyond(header: HeaderDraft, edges: Edges, size: PanelSize, pins: number): boolean {
  const place = placeOf(header, edges, size);
  if (!place) return false;
  const half = halfOf(header, pins);
  return (
    Math.min(place.xMm, size.widthMm - place.xMm) < half.xMm ||
    Math.min(place.yMm, size.heightMm - place.yMm) < half.yMm
  );
}

/** Every pin by itself where there is room for it; each row as a line where there is not. */
function pinPath({ x, y }: Px, { axis }: HeaderDraft, pins: number, scale: number): string {
  const pairs = pins / 2;
  const pitch = PIN_MM * scale;
  const dot = Math.max(1.2, 0.85 * scale);
  const singly = pitch >= 2.2;
  const long = singly ? dot : pitch * pairs;
  return Array.from({ length: singly ? pairs : 1 }, (_, pair) => {
    const along = singly ? (pair - (pairs - 1) / 2) * pitch : 0;
    return [-pitch / 2, pitch / 2].map((across) =>
      axis === 'horizontal'
        ? `M${x + along - long / 2} ${y + across - dot / 2}h${long}v${dot}h${-long}z`
        : `M${x + across - dot / 2} ${y + along - long / 2}h${dot}v${long}h${-dot}z`,
    );
  })
    .flat()
    .join('');
}

const polygon = (points: readonly Px[]): string => `M${points.map(({ x, y }) => `${x} ${y}`).join('L')}z`;

interface Props {
  readonly header: HeaderDraft;
  readonly pins: number;
  readonly at: Px;
  readonly scale: number;
  readonly side: Side;
}

/** A header as the sheet draws it: its box, pins, the notch, and an arrow at pin 1; a question where that is unknown. */
export function HeaderShape({ header, pins, at, scale, side }: Props) {
  const { pin1, keyed } = header;
  const half = halfOf(header, pins);
  const { longMm, wideMm } = headerBodyMm(pins, keyed === 'yes');
  const tip = Math.max(longMm, socketBodyMm(pins).longMm) / 2 + 0.5;
  const behind = pin1 && fromMiddle(at, pin1, scale);
  // The way from the middle is as seen from the rear; the front is its mirror image.
  const seen = (along: number, across: number): Px => {
    const point = behind ? behind(along, across) : at;
    return side === 'rear' ? point : { x: 2 * at.x - point.x, y: point.y };
  };
  const [side1, notch] = [wideMm / 2, NOTCH_MM / 2];
  return (
    <>
      <rect
        className="box"
        x={at.x - half.xMm * scale}
        y={at.y - half.yMm * scale}
        width={2 * half.xMm * scale}
        height={2 * half.yMm * scale}
      />
      <path className="pins" d={pinPath(at, header, pins, scale)} />
      {behind && (
        <path
          className="pin1"
          d={polygon([
            seen(tip, PIN_MM / 2),
            seen(tip + 2.2, PIN_MM / 2 - 1.5),
            seen(tip + 2.2, PIN_MM / 2 + 1.5),
          ])}
        />
      )}
      {behind && keyed === 'yes' && (
        <path
          className="pin1"
          d={polygon([
            seen(-notch, side1 - 1.3),
            seen(notch, side1 - 1.3),
            seen(notch, side1),
            seen(-notch, side1),
          ])}
        />
      )}
      {!behind && (
        <text className="unsaid" x={at.x} y={at.y + 4}>
          ?
        </text>
      )}
    </>
  );
}
