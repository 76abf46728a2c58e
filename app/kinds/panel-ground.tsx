import type { Edges } from '../../src/index.ts';
import { HP_MM, panelHoles } from '../../src/index.ts';
import { figure } from '../panels/figures.ts';
import type { Frame } from './drawing-frame.ts';

/** Marks of a ruler are further apart than this, px, and figures further than that. */
const MARKS_PX = 4;
const FIGURES_PX = 26;

const STEPS = [1, 2, 5, 10, 20, 50, 100, 200] as const;

const stepFor = (scale: number, leastPx: number): number =>
  STEPS.find((step) => step * scale >= leastPx) ?? STEPS[STEPS.length - 1] ?? 1;

/** Places along a length at so many of a unit, and whether a figure stands there. */
function marksOf(length: number, pxPerUnit: number) {
  const step = stepFor(pxPerUnit, MARKS_PX);
  const figures = stepFor(pxPerUnit, FIGURES_PX);
  const count = Math.floor(length / step + 1e-6) + 1;
  return Array.from({ length: count }, (_, i) => ({ at: i * step, hasFigure: (i * step) % figures === 0 }));
}

interface Props {
  readonly frame: Frame;
  readonly edges: Edges;
  readonly widthHp: number;
  readonly heightU: number;
}

/** Rulers in mm, counted from the edges that places are measured from, and in HP. */
export function Rulers({ frame, edges, widthHp }: Props) {
  const { size, scale, top } = frame;
  const bottom = top + size.heightMm * scale;
  const across = (mm: number): number =>
    frame.at({ xMm: edges.across === 'front-left' ? mm : size.widthMm - mm, yMm: 0 }).x;
  const up = (mm: number): number =>
    frame.at({ xMm: 0, yMm: edges.up === 'bottom' ? mm : size.heightMm - mm }).y;
  const { left } = frame;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus.
    <g className="rulers" aria-hidden="true">
      {marksOf(widthHp, scale * HP_MM).map(({ at, hasFigure }) => (
        <g key={`hp ${at}`}>
          <path d={`M${across(at * HP_MM)} ${top - (hasFigure ? 8 : 5)}V${top - 2}`} />
          {hasFigure && (
            <text x={across(at * HP_MM)} y={top - 11}>
              {at}
            </text>
          )}
        </g>
      ))}
      {marksOf(size.widthMm, scale).map(({ at, hasFigure }) => (
        <g key={`mm ${at}`}>
          <path d={`M${across(at)} ${bottom + (hasFigure ? 8 : 5)}V${bottom + 2}`} />
          {hasFigure && (
            <text x={across(at)} y={bottom + 20}>
              {at}
            </text>
          )}
        </g>
      ))}
      {marksOf(size.heightMm, scale).map(({ at, hasFigure }) => (
        <g key={`up ${at}`}>
          <path d={`M${left - (hasFigure ? 8 : 5)} ${up(at)}H${left - 2}`} />
          {hasFigure && (
            <text className="beside" x={left - 10} y={up(at) + 4}>
              {at}
            </text>
          )}
        </g>
      ))}
      <text className="unit" x={left - 10} y={top - 11}>
        HP
      </text>
      <text className="unit" x={left - 10} y={bottom + 20}>
        mm
      </text>
    </g>
  );
}

/** The panel from behind or in front, with the board that carries the headers, its holes and its centre line. */
export function Panel({ frame, widthHp, heightU }: Omit<Props, 'edges'>) {
  const { size, scale, left, top } = frame;
  const [width, height] = [size.widthMm * scale, size.heightMm * scale];
  const inset = Math.min(11, size.heightMm * 0.12) * scale;
  const aside = Math.min(0.8 * scale, width * 0.06);
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus.
    <g aria-hidden="true">
      <rect className="panel" x={left} y={top} width={width} height={height} rx={2} />
      {frame.side === 'rear' && (
        <rect
          className="board"
          x={left + aside}
          y={top + inset}
          width={Math.max(0, width - 2 * aside)}
          height={Math.max(0, height - 2 * inset)}
        />
      )}
      {panelHoles(widthHp, heightU).map((hole) => {
        const { x, y } = frame.at(hole);
        return (
          <circle
            key={`${figure(hole.xMm)} ${figure(hole.yMm)}`}
            className="hole"
            cx={x}
            cy={y}
            r={Math.max(1.4, 1.6 * scale)}
          />
        );
      })}
    </g>
  );
}
