/** IACS copper at 20 °C, Ω·mm²/m. */
const RESISTIVITY_20C = 0.017241;
/** Of copper at 20 °C, per kelvin. */
const TEMPERATURE_COEFFICIENT = 0.00393;

/** Diameter of a solid wire by American wire gauge, mm (ASTM B258). */
export const diameterMm = (awg: number): number => 0.127 * 92 ** ((36 - awg) / 39);

/** Cross-section of a solid wire by American wire gauge, mm². */
export const areaMm2 = (awg: number): number => (Math.PI / 4) * diameterMm(awg) ** 2;

/** Resistivity of copper, Ω·mm²/m. */
const resistivity = (celsius: number): number =>
  RESISTIVITY_20C * (1 + TEMPERATURE_COEFFICIENT * (celsius - 20));

/** Resistance of one copper wire for each metre of it, Ω/m. */
export const ohmsPerMetre = (awg: number, celsius: number): number => resistivity(celsius) / areaMm2(awg);
