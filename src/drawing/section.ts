import { reachOf, totalMm } from '../checks/depth.ts';
import { archShape, LEGS_TOUCH_RATIO } from '../geometry/arch.ts';
import type { PlacedModule } from '../geometry/place.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { atMmOf, type LaidRibbon } from '../wiring/laid-ribbon.ts';
import type { Knot } from './knot.ts';
import type { Run } from './runs.ts';
import { type Point, rowOf, type Sheet, type SheetRow, zOf } from './sheet.ts';

/** Height of a seated connector, mm. */
export const CONNECTOR_MM = 9;

/** Drawn for a module whose depth nobody knows, mm. */
const UNKNOWN_MM = 30;

/** An arch too high for the case is drawn so far past its floor, mm. */
const PAST_FLOOR_MM = 5;

/** Points of a drawn arch. */
const ARCH_POINTS = 25;

export interface Slice {
  readonly module: PlacedModule;
  readonly fullMm: number;
  /** Without the plugs that the depth includes, or that were added to it. */
  readonly bareMm: number;
  readonly known: boolean;
}

/** How deep a module is drawn. */
export function sliceOf(module: PlacedModule, take: DerivedTake): Slice {
  const reach = reachOf(module, take);
  const fullMm = reach ? totalMm(reach) : UNKNOWN_MM;
  const includesPlugs = module.headers.length > 0 && module.facts.kind.depthIs !== 'without-plugs';
  const plugMm = reach?.plugMm || (includesPlugs ? CONNECTOR_MM : 0);
  return { module, fullMm, bareMm: Math.max(fullMm - plugMm, fullMm / 2), known: !!reach };
}

/** The arch between two connectors on headers, as it will stand; nothing where the ribbon is too short for one. */
function archBetween(row: SheetRow, ribbon: LaidRibbon, a: Knot, b: Knot, bodyMm: number): Point[] {
  const free = Math.abs(atMmOf(ribbon, b.connector) - atMmOf(ribbon, a.connector)) - bodyMm;
  const over = Math.max(Math.abs(b.x - a.x) / row.scale - bodyMm, free * LEGS_TOUCH_RATIO);
  if (free <= 0 || over >= free * 0.999) return [];
  const floorMm = row.placed.row.depthMm + PAST_FLOOR_MM;
  const held = (Math.sign(b.x - a.x) * bodyMm * row.scale) / 2;
  return archShape(free, over, ARCH_POINTS).map(({ alongMm, heightMm }) => {
    const share = alongMm / over;
    const level = depthOf(a) + (depthOf(b) - depthOf(a)) * share;
    return {
      x: a.x + held + (b.x - a.x - 2 * held) * share,
      y: zOf(row, Math.min(level + heightMm, floorMm)),
    };
  });
}

const depthOf = ({ header }: Knot): number => header?.zMm ?? 0;

/**
 * A ribbon from above. One that does not bend lies as deep as its deepest header holds it; one that does arches
 * between headers, and runs straight to free ends and to joints, behind which its arch is not computed. Of one that
 * would have to reach into another row only the part in the first of its rows is shown.
 */
export function sectionLine(sheet: Sheet, { knots, ribbon }: Run, bodyMm: number): Point[] {
  const inSomeRow = knots.filter((knot) => knot.header?.zMm !== undefined && !knot.stray?.otherRow);
  const [first] = inSomeRow;
  if (!first?.header) return [];
  const { index } = first.header.row;
  const seats = inSomeRow.filter(({ header }) => header?.row.index === index);
  const row = rowOf(sheet, first.header);
  const deepest = Math.max(...seats.map(depthOf));
  const isEnd = (knot: Knot, i: number) => !knot.header && (i === 0 || i === knots.length - 1);
  const stops = knots.filter((knot, i) => seats.includes(knot) || isEnd(knot, i));
  const levelOf = (knot: Knot): number =>
    !ribbon.facts.bends ? deepest : depthOf(seats.includes(knot) ? knot : first);
  return stops.flatMap((knot, i) => {
    const before = stops[i - 1];
    const arches = before && ribbon.facts.bends && seats.includes(before) && seats.includes(knot);
    const arch = arches ? archBetween(row, ribbon, before, knot, bodyMm) : [];
    return [...arch, { x: knot.x, y: zOf(row, levelOf(knot)) }];
  });
}
