import { HP_MM, type ModuleKind, panelHeightMm, type RibbonKind } from '../../src/index.ts';

/** Height of a thumbnail, px, for a panel of 3 U. */
const PX_PER_MM = 0.42;

/** Half of a header's box, mm, by the pins along it. */
const boxMm = (pins: number) => ({ long: (pins / 2) * 2.54 + 7.6, wide: 8.9 });

/** A kind of module as it looks from the rear, small and to scale. */
export function ModuleDrawing({
  kind,
  pinsOf,
}: {
  readonly kind: ModuleKind;
  readonly pinsOf: (bus: string) => number;
}) {
  const width = kind.widthHp * HP_MM;
  const height = panelHeightMm(kind.heightU ?? 3);
  return (
    <svg
      className="kind-drawing"
      width={width * PX_PER_MM}
      height={height * PX_PER_MM}
      viewBox={`0 0 ${width} ${height}`}
      aria-hidden="true"
    >
      <rect className="panel" width={width} height={height} rx="2" />
      <rect className="board" x="2" y="11" width={width - 4} height={height - 22} rx="2" />
      {kind.headers.map(({ id, bus, xMm, yMm, axis }) => {
        const { long, wide } = boxMm(pinsOf(bus));
        const [w, h] = axis === 'horizontal' ? [long, wide] : [wide, long];
        return (
          <rect
            key={id}
            className="header"
            x={width - xMm - w / 2}
            y={height - yMm - h / 2}
            width={w}
            height={h}
          />
        );
      })}
    </svg>
  );
}

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
