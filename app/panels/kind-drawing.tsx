import { HP_MM, type ModuleKind, panelHeightMm } from '../../src/index.ts';

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
