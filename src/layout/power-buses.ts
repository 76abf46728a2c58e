import type { Bus } from './layout.ts';

/** Pin 1 on the side of the stripe, and of −12 V; the ground pins in the middle. */
const TEN_PINS = ['-12', '-12', 'GND', 'GND', 'GND', 'GND', 'GND', 'GND', '+12', '+12'];

/** The two power headers of 3U synthesizer modules, 10-way and 16-way (common practice, no source). */
export const POWER_BUSES: readonly Bus[] = [
  { id: 'power-10', name: 'Power, 10-way', pinout: TEN_PINS },
  { id: 'power-16', name: 'Power, 16-way', pinout: [...TEN_PINS, '+5', '+5', 'CV', 'CV', 'gate', 'gate'] },
];
