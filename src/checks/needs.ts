import type { PlacedHeader } from '../geometry/place.ts';
import type { ModuleFacts } from '../layout/kit-index.ts';

/** Voltages that a module draws though no header of its kind carries them. */
export function foreignDraws(facts: ModuleFacts, headers: readonly PlacedHeader[]): string[] {
  const drawn = facts.draws.map(([voltage]) => voltage);
  return drawn.filter((voltage) => !headers.some(({ bus }) => bus.supplyPins.has(voltage)));
}
