/*
 * Sizes are counted in whole hundredths of a millimetre and divided once, so that they are the very decimals
 * that a table prints: 3 × 44.45 is 133.35000000000002 in floats, 3 × 4445 / 100 is 133.35.
 */
const HP = 508;
const U = 4445;
const PANEL_WIDTH_PLAY = 30;
const PANEL_HEIGHT_PLAY = 495;
/** From a panel's top edge to its upper holes and from its bottom edge to its lower ones. */
const HOLE_INSET = 295;
/** From the end of a panel's allocation to the middle of the second HP. */
const HOLE_OFFSET = 1.5 * HP;

/** Panels from here on, in HP, have holes at both ends (secondary text on 19-inch subracks). */
const FOUR_HOLES_FROM_HP = 8;

/** Horizontal pitch, mm: 0.2 in exactly (IEC 60297-3-101, as quoted in secondary texts). */
export const HP_MM = HP / 100;

/** Rack unit, mm: 1.75 in exactly (IEC 60297-3-100 and EIA-310, as quoted in secondary texts). */
export const U_MM = U / 100;

/** HP to mm; for whole HP the nearest float to the exact decimal. */
export const hpToMm = (hp: number): number => (hp * HP) / 100;

/** mm to HP, up to float rounding. */
export const mmToHp = (mm: number): number => mm / HP_MM;

/** Rack units to mm; for whole units the nearest float to the exact decimal. */
export const uToMm = (units: number): number => (units * U) / 100;

/**
 * Width of a plug-in front panel, mm: 0.30 mm less than its place on the rails (a printed panel table, as
 * quoted in secondary texts; others take off 0.34 mm).
 */
export const panelWidthMm = (widthHp: number): number => (widthHp * HP - PANEL_WIDTH_PLAY) / 100;

/**
 * Height of a plug-in front panel, mm: 4.95 mm less than its rack units, 128.40 mm for 3U (IEC 60297-3-101,
 * as quoted in secondary texts, which give 128.4 to 128.55 mm). No standard was found for other heights:
 * there it is the same play applied to any positive number of units, and a real 1U panel may be taller.
 */
export const panelHeightMm = (heightU: number): number => (heightU * U - PANEL_HEIGHT_PLAY) / 100;

/**
 * Vertical distance between a panel's upper and lower holes, mm: 122.50 for 3U (IEC 60297-3-101, as quoted in
 * secondary texts); for other heights the same inset from the edges.
 */
export const holePitchMm = (heightU: number): number =>
  (heightU * U - PANEL_HEIGHT_PLAY - 2 * HOLE_INSET) / 100;

function holeColumnsMm(widthHp: number): number[] {
  const width = widthHp * HP;
  if (widthHp >= FOUR_HOLES_FROM_HP) return [HOLE_OFFSET / 100, (width - HOLE_OFFSET) / 100];
  return [Math.min(HOLE_OFFSET, width / 2) / 100];
}

/**
 * Middles of a panel's mounting holes: x in mm from the left end of its place on the rails, y in mm from the
 * panel's bottom edge, seen from the front; lower holes first, from left to right.
 *
 * They lie in the middle of the second HP from the left, and from 8 HP up of the second from the right too
 * (secondary texts on 19-inch subracks). Panels under 3 HP, too narrow for that, have them in their middle
 * (common practice, no source).
 */
export function panelHoles(
  widthHp: number,
  heightU: number,
): { readonly xMm: number; readonly yMm: number }[] {
  const columns = holeColumnsMm(widthHp);
  const upper = heightU * U - PANEL_HEIGHT_PLAY - HOLE_INSET;
  return [HOLE_INSET / 100, upper / 100].flatMap((yMm) => columns.map((xMm) => ({ xMm, yMm })));
}
