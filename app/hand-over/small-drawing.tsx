import { HP_MM, type Kit, type ModuleKind, panelHeightMm, panelWidthMm, type Take } from '../../src/index.ts';

/** Anything may stand in a layout that came with a link: what is no colour is not asked for. */
const colourOf = ({ color }: ModuleKind): string =>
  color && CSS.supports('color', color) ? color : 'var(--ink-faint)';

const GAP_MM = 12;
const RAIL_MM = 5.6;

/** A take from the front, small and to scale: rails, and panels with the colour of their kind. */
export function SmallDrawing({ kit, take }: { readonly kit: Kit; readonly take: Take }) {
  const kinds = new Map(kit.modules.map((kind) => [kind.id, kind]));
  const tops = new Map<string, number>();
  let height = 0;
  for (const { id, heightU } of take.rows) {
    tops.set(id, height);
    height += panelHeightMm(heightU) + GAP_MM;
  }
  const width = Math.max(1, ...take.rows.map(({ widthHp }) => widthHp * HP_MM));
  return (
    <svg
      className="small-drawing"
      viewBox={`-4 -4 ${width + 8} ${Math.max(1, height - GAP_MM) + 8}`}
      aria-hidden="true"
    >
      {take.rows.map(({ id, widthHp, heightU }) => {
        const top = tops.get(id) ?? 0;
        const long = widthHp * HP_MM;
        return (
          <g key={id}>
            <rect className="room" y={top} width={long} height={panelHeightMm(heightU)} />
            <rect className="rail" y={top} width={long} height={RAIL_MM} />
            <rect className="rail" y={top + panelHeightMm(heightU) - RAIL_MM} width={long} height={RAIL_MM} />
          </g>
        );
      })}
      {take.modules.map(({ id, kind: kindId, row, atHp }) => {
        const kind = kinds.get(kindId);
        if (!kind) return null;
        const [x, y] = [atHp * HP_MM, tops.get(row) ?? 0];
        const [w, h] = [panelWidthMm(kind.widthHp), panelHeightMm(kind.heightU ?? 3)];
        return (
          <g key={id}>
            <rect className="panel" x={x} y={y} width={w} height={h} rx="1.5" />
            <rect x={x} y={y + h - 14} width={w} height="6" fill={colourOf(kind)} />
          </g>
        );
      })}
    </svg>
  );
}
