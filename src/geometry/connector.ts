/*
 * Connectors and headers on a 2.54 mm grid, two rows of contacts; sizes are counted in whole hundredths of a
 * millimetre and divided once, so that they are the very decimals that a table prints.
 */
const PIN = 254;
const CONDUCTOR = 127;
/** Of a box header, beyond the middles of its first and last pins. */
const BOX_LONG = 1020;
const BOX_WIDE = 890;
/** Of a cable socket, beyond one grid step for each pair of contacts. */
const SOCKET_LONG = 460;
const SOCKET_WIDE = 600;

/**
 * Distance between neighbouring contacts, along and across, mm (IEC 60603-13, as quoted in secondary texts).
 */
export const PIN_MM = PIN / 100;

/** Distance between neighbouring conductors of a ribbon, mm: 0.05 in, half the contacts' (secondary texts). */
export const CONDUCTOR_MM = CONDUCTOR / 100;

/** Width of the notch in a box header, mm: in the middle of the side of the odd pins (public footprints). */
export const NOTCH_MM = 4.1;

/** Outline of a connector or header: along its rows of contacts and across them, mm. */
interface Body {
  readonly longMm: number;
  readonly wideMm: number;
}

/** A pin seen from the middle of the pin field. */
interface PinOffset {
  /** Which pair it belongs to, counted from 0 at the pin-1 end. */
  readonly pair: number;
  /** 0 holds the odd pins, on the side of the notch; 1 the even ones. */
  readonly row: 0 | 1;
  /** Along the long side, mm; negative towards the pin-1 end. */
  readonly alongMm: number;
  /** Across, mm; negative on the side of row 0. */
  readonly acrossMm: number;
}

const pairsOf = (contacts: number): number => Math.ceil(contacts / 2);

const field = (pins: number): number => PIN * (pairsOf(pins) - 1);

/** Width of a ribbon, mm: one pitch for each conductor. */
export const ribbonWidthMm = (conductors: number): number => (conductors * CONDUCTOR) / 100;

/** From the middle of the first pin to that of the last, along the long side, mm. */
export const pinFieldMm = (pins: number): number => field(pins) / 100;

/**
 * Body of a header with so many pins: boxed with a notch (`keyed`) after DIN 41651 / IEC 60603-13, as quoted
 * in secondary texts (makers differ by 0.3 mm), or bare: one grid cell for each pin (common practice, no
 * source).
 */
export function headerBodyMm(pins: number, keyed: boolean): Body {
  if (keyed) return { longMm: (field(pins) + BOX_LONG) / 100, wideMm: BOX_WIDE / 100 };
  return { longMm: (field(pins) + PIN) / 100, wideMm: (2 * PIN) / 100 };
}

/** Body of a cable socket with so many contacts: typical, good to about 0.5 mm (from memory). */
export const socketBodyMm = (ways: number): Body => ({
  longMm: (PIN * pairsOf(ways) + SOCKET_LONG) / 100,
  wideMm: SOCKET_WIDE / 100,
});

/**
 * Where each pin lies, pin 1 first: pins run in pairs along the long side, pin = 2 × pair + row + 1. The ends
 * of the field lie `pinFieldMm` apart.
 */
export function pinOffsets(pins: number): PinOffset[] {
  return Array.from({ length: pins }, (_, index) => {
    const row = index % 2 === 0 ? 0 : 1;
    const pair = (index - row) / 2;
    const alongMm = (PIN * pair - field(pins) / 2) / 100;
    return { pair, row, alongMm, acrossMm: (PIN * (row - 0.5)) / 100 };
  });
}
