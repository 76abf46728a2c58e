import '../style/ribbon-pictures.css';
import {
  archShape,
  type Cut,
  type CutGap,
  LEGS_TOUCH_RATIO,
  type Limits,
  type Measured,
} from '../../src/index.ts';
import { figure } from '../panels/figures.ts';
import { useWidth } from './use-width.ts';

interface Props {
  readonly measured: Measured;
  readonly cut: Cut;
  readonly limits: Limits;
  /** The gap whose slack is being typed. */
  readonly chosen: number | null;
}

/** Height of a seated connector, mm. */
const CONNECTOR_MM = 9;
/** Beside the outer headers, px. */
const BESIDE = 34;
const TOP = 24;
const BELOW = 30;
const MOST_SCALE = 5;
const ARCH_POINTS = 41;

/** The shape of the ribbon between two seats, mm: along from the first and behind the panel. */
function shapeOf(
  gap: CutGap,
  from: number,
  to: number,
  limits: Limits,
): readonly (readonly [number, number])[] {
  const c = limits.connectorBodyMm;
  const free = gap.lengthMm - c;
  const over = Math.max(gap.distanceMm - c, free * LEGS_TOUCH_RATIO);
  if (!gap.arch || free <= 0 || over >= free) return [];
  return archShape(free, over, ARCH_POINTS).map(({ alongMm, heightMm }) => {
    const share = alongMm / over;
    return [c / 2 + (gap.distanceMm - c) * share, from + (to - from) * share + heightMm] as const;
  });
}

/** The case from above: panels, headers, the floor, and the ribbon in the arches that its slack makes. As from the rear, the left is the front's right. */
export function SectionDrawing({ measured, cut, limits, chosen }: Props) {
  const [box, width] = useWidth<HTMLDivElement>(640);
  const { headers, row, stripe } = measured;
  const { depthMm } = row.row;
  const xs = headers.map(({ xMm }) => xMm);
  const right = Math.max(...xs);
  const span = Math.max(right - Math.min(...xs), 1);
  const scale = Math.min((width - 2 * BESIDE) / span, MOST_SCALE, 240 / Math.max(depthMm, 1));
  const left = (width - span * scale) / 2;
  const x = (xMm: number): number => left + (right - xMm) * scale;
  const y = (zMm: number): number => TOP + zMm * scale;
  const crowns = cut.gaps.map((gap) => depthMm - gap.clearanceMm);
  const deepest = Math.max(depthMm, ...crowns.filter(Number.isFinite));
  const height = y(deepest) + BELOW;
  const direction = stripe === 'up' ? -1 : 1;
  const line = headers.flatMap((header, i) => {
    const before = headers[i - 1];
    const gap = cut.gaps[i - 1];
    const z = header.zMm ?? 0;
    const shape = before && gap ? shapeOf(gap, before.zMm ?? 0, z, limits) : [];
    return [
      ...shape.map(([along, zMm]) => [x(before?.xMm ?? 0) + direction * along * scale, y(zMm)] as const),
      [x(header.xMm), y(z)] as const,
    ];
  });
  const d = line.map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${px.toFixed(1)} ${py.toFixed(1)}`).join('');
  const bodyPx = Math.max(limits.connectorBodyMm * scale, 4);
  const owners = [...new Set(headers.map(({ owner }) => owner))];
  return (
    <div className="section-drawing" ref={box}>
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label="The ribbon from above, in the arches that its slack makes; figures stand in the table"
      >
        <rect className="inside" x="0" y={TOP} width={width} height={depthMm * scale} />
        {owners.map((owner) => {
          if (owner.type !== 'module') return null;
          const { rightMm, leftMm, facts, name } = owner;
          const deep = facts.kind.depthMm ?? 30;
          const from = Math.max(x(rightMm) + 0.5, 0);
          const to = Math.min(x(leftMm) - 0.5, width);
          return (
            <g key={owner.id}>
              <rect
                className="board"
                x={from}
                y={TOP}
                width={Math.max(to - from, 2)}
                height={Math.max(deep - CONNECTOR_MM, deep / 2) * scale}
              />
              {to - from > name.length * 6.4 && (
                <text className="module" x={(from + to) / 2} y={TOP - 8}>
                  {name}
                </text>
              )}
            </g>
          );
        })}
        <path className="wall" d={`M0 ${TOP}H${width}M0 ${y(depthMm)}H${width}`} />
        <path className="band-edge" d={d} strokeWidth={Math.max(limits.ribbonMm * scale, 2) + 2} />
        <path className="band-core" d={d} strokeWidth={Math.max(limits.ribbonMm * scale, 2)} />
        {headers.map((header, i) => (
          <rect
            // biome-ignore lint/suspicious/noArrayIndexKey: a connector is its number.
            key={i}
            className="connector"
            x={x(header.xMm) - bodyPx / 2}
            y={y((header.zMm ?? 0) - CONNECTOR_MM)}
            width={bodyPx}
            height={CONNECTOR_MM * scale}
          />
        ))}
        {cut.gaps.map((gap, i) => {
          const a = headers[i]?.xMm ?? 0;
          const b = headers[i + 1]?.xMm ?? 0;
          const middle = (x(a) + x(b)) / 2;
          const crown = y(depthMm - gap.clearanceMm);
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a gap is the one behind its connector.
            <g key={i} className={`gap${i === chosen ? ' chosen' : ''}`}>
              {gap.clearanceMm * scale > 6 && (
                <path
                  className="clear"
                  d={`M${middle} ${crown + 2}V${y(depthMm) - 1}M${middle - 3} ${y(depthMm) - 6}l3 5 3 -5`}
                />
              )}
              <circle className="tag" cx={middle} cy={y(deepest) + 14} r="9" />
              <text x={middle} y={y(deepest) + 18}>
                {i + 1}
              </text>
            </g>
          );
        })}
        <text className="depth" x={width - 6} y={y(depthMm) - 6}>
          {figure(depthMm)} mm deep
        </text>
      </svg>
    </div>
  );
}
