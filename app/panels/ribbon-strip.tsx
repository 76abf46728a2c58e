import type { Point } from '../../src/index.ts';
import {
  atMmOf,
  type BandStop,
  bandPieces,
  connectorAt,
  directionOf,
  type LaidRibbon,
  ribbonWidthMm,
  socketBodyMm,
  stripCorners,
  stripeAt,
  stripeCorners,
  typeOf,
  waysOf,
} from '../../src/index.ts';

/** Widest and largest that a strip is drawn, px and px per mm. */
const WIDEST_PX = 268;
const LARGEST = 2.1;

/** Room for half a connector at the ends, and for the numbers below, px. */
const SIDE_PX = 14;
const NUMBERS_PX = 15;

interface Stop extends BandStop {
  readonly connector: number;
}

const corners = (points: readonly Point[]): string =>
  `M${points.map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}Z`;

/** A ribbon by itself, true to scale, as it lies seen from the rear: stripe, half-twists, connectors by number. */
export function RibbonStrip({
  ribbon,
  chosen,
}: {
  readonly ribbon: LaidRibbon;
  readonly chosen: number | null;
}) {
  const { facts, uses } = ribbon;
  const orders = uses.map((_, order) => connectorAt(ribbon, order));
  const lengthMm = atMmOf(ribbon, orders.at(-1) ?? 0);
  const scale = Math.min(LARGEST, WIDEST_PX / Math.max(lengthMm, 1));
  const half = Math.max((ribbonWidthMm(facts.conductors) * scale) / 2, 3);
  const bodyOf = (connector: number) => {
    const { longMm, wideMm } = socketBodyMm(waysOf(ribbon, connector));
    return { long: Math.max(longMm * scale, 2 * half + 4), wide: Math.max(wideMm * scale, 6) };
  };
  const top = Math.max(...orders.map((connector) => bodyOf(connector).long)) / 2 + 2;
  const width = lengthMm * scale + 2 * SIDE_PX;
  const turned = facts.flat && directionOf(ribbon) === 1;
  const stops = orders.map((connector): Stop => {
    const along = atMmOf(ribbon, connector) * scale;
    const pin1 = facts.flat ? stripeAt(ribbon, connector) : 'down';
    return { connector, x: SIDE_PX + (turned ? lengthMm * scale - along : along), y: top, pin1 };
  });
  const pieces = bandPieces(stops, half, ribbon.ribbon.twists ?? [], scale);
  const stripe = Math.max(2, scale * 1.27);
  return (
    <svg
      className="strip"
      width={width}
      height={2 * top + NUMBERS_PX}
      viewBox={`0 0 ${width} ${2 * top + NUMBERS_PX}`}
      role="img"
      aria-label={`${ribbon.name} seen from the rear`}
    >
      <path className="band" d={pieces.map((piece) => corners(stripCorners(piece, -half, half))).join('')} />
      <path className="stripe" d={pieces.map((piece) => corners(stripeCorners(piece, stripe))).join('')} />
      {stops.map(({ connector, x, y }) => {
        const { long, wide } = bodyOf(connector);
        const isFree = uses[connector]?.length === 0;
        const isPlug = typeOf(facts.connectors[connector] ?? { atMm: 0 }) === 'plug';
        return (
          <g key={connector} className={connector === chosen ? 'chosen' : undefined}>
            <rect
              className={['connector', isFree && 'free', isPlug && 'plug'].filter(Boolean).join(' ')}
              x={x - wide / 2}
              y={y - long / 2}
              width={wide}
              height={long}
              rx="1.5"
            />
            <text x={x} y={2 * top + NUMBERS_PX - 3}>
              {connector + 1}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
