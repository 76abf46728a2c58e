import type { RibbonKind } from '../../src/index.ts';

const RIBBON_PX = 54;

/** A kind of ribbon laid out: its stripe, and its connectors where they are. */
export function RibbonDrawing({ kind }: { readonly kind: RibbonKind }) {
  const length = kind.connectors.at(-1)?.atMm || 1;
  const width = RIBBON_PX + Math.min(length, 220) * 0.12;
  const x = (atMm: number): number => 5 + (atMm / length) * (width - 10);
  const loose = kind.lay === 'loose';
  const way = loose ? `M5 14Q${width / 2} 52 ${width - 5} 14` : `M3 24H${width - 3}`;
  return (
    <svg
      className="kind-drawing ribbon"
      width={width}
      height="54"
      viewBox={`0 0 ${width} 54`}
      aria-hidden="true"
    >
      <path className="band-edge" d={way} strokeWidth={loose ? 7 : 15} />
      <path className="band" d={way} strokeWidth={loose ? 5 : 13} />
      <path className="stripe" d={way} transform={loose ? 'translate(0 1.5)' : 'translate(0 5)'} />
      {kind.connectors.map(({ atMm, type }) => (
        <rect
          key={atMm}
          className={type === 'plug' ? 'connector plug' : 'connector'}
          x={x(atMm) - 3.5}
          y={loose ? 4 : 12}
          width="7"
          height={loose ? 18 : 24}
          rx="1.5"
        />
      ))}
    </svg>
  );
}
