import type { Misplug } from '../wiring/pin-map.ts';
import { count, list } from './words.ts';

const step = (by: number, one: string, ahead: string, back: string): string[] =>
  by === 0 ? [] : [`${count(Math.abs(by), one)} towards ${by > 0 ? ahead : back}`];

/** How a connector is plugged, in words: "Displaced by 1 row towards the even pins". */
export function howPlugged({ type, rows = 0, pairs = 0 }: Misplug): string {
  const steps = list([
    ...step(rows, 'row', 'the even pins', 'the odd pins'),
    ...step(pairs, 'pair', 'the far end', 'pin 1'),
  ]);
  if (type === 'reversed')
    return steps ? `Turned end for end and displaced by ${steps}` : 'Turned end for end';
  return steps ? `Displaced by ${steps}` : 'As it belongs';
}
