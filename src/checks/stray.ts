import type { DerivedTake } from '../wiring/derived-take.ts';
import type { Stray } from '../wiring/lie.ts';
import type { Misplug } from '../wiring/pin-map.ts';
import { atHpOf, hp } from './words.ts';

/** Every seat that a stiff ribbon does not reach, over all ribbons. */
export function* straysOf({ lies }: DerivedTake): Generator<Stray> {
  for (const lie of lies.values()) yield* lie.strays;
}

/** "Move Cobble 3 to 25 HP", if moving along the rail can put the module where the connector lands. */
export function moveToLand(
  { seat, dxMm, dyMm, otherRow }: Stray,
  { limits }: DerivedTake,
): string | undefined {
  const { owner } = seat.on.header;
  if (owner.type !== 'module' || owner.module.pinned || otherRow) return undefined;
  if (Math.abs(dyMm) > limits.seatToleranceMm) return undefined;
  return `Move ${owner.name} to ${hp(atHpOf(owner.leftMm - dxMm))}`;
}

/**
 * The pins that a displaced connector would touch. The drawing counts rows rightward and pairs upward, seen
 * from the front; pins count pairs from the pin-1 end, and with pin 1 down the even row lies further right.
 */
export function misplugOf({ seat, displaced }: Stray): Misplug {
  const { rows = 0, pairs = 0 } = displaced ?? {};
  const turned = seat.on.header.pin1 === 'up' ? 1 : -1;
  return { type: 'shifted', rows: rows === 0 ? 0 : turned * rows, pairs: pairs === 0 ? 0 : turned * pairs };
}

/** "one pin row", "2 pin pairs", "one pin row and 2 pin pairs". */
export function displacedWords(displaced: NonNullable<Stray['displaced']>): string {
  const rows = Math.abs(displaced.rows);
  const pairs = Math.abs(displaced.pairs);
  const words = [
    ...(rows ? ['one pin row'] : []),
    ...(pairs ? [pairs === 1 ? 'one pin pair' : `${pairs} pin pairs`] : []),
  ];
  return words.join(' and ');
}
