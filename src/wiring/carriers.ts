import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import type { BusFacts } from '../layout/kit-index.ts';

const isJoinedTo = (header: PlacedHeader, other: PlacedHeader): boolean =>
  other !== header && other.passes && other.bus === header.bus;

/** Whether another header of its module is joined to a header inside. */
export const passesOn = (header: PlacedHeader): boolean =>
  header.passes && (header.owner as PlacedModule).headers.some((other) => isJoinedTo(header, other));

/**
 * What headers of modules hand their supply lines to, by number: each module's own supply, in the order of the
 * modules, then each way past one (isolated headers; those joined inside are one).
 */
export class Carriers {
  readonly #throughOf = new Map<PlacedHeader, number>();
  readonly #numberOf: ReadonlyMap<PlacedModule, number>;
  readonly count: number;

  constructor(modules: readonly PlacedModule[]) {
    this.#numberOf = new Map(modules.map((module, number) => [module, number]));
    let next = modules.length;
    for (const module of modules) {
      const joined = new Map<BusFacts, number>();
      for (const header of module.headers) {
        if (!header.isolated) continue;
        const passesToOwn =
          header.passes && module.headers.some((other) => isJoinedTo(header, other) && !other.isolated);
        const known = header.passes ? joined.get(header.bus) : undefined;
        const carrier = passesToOwn ? this.ofModule(module) : (known ?? next++);
        if (header.passes) joined.set(header.bus, carrier);
        this.#throughOf.set(header, carrier);
      }
    }
    this.count = next;
  }

  /** What a header hands its supply lines to: its module, or a way past it. */
  of(header: PlacedHeader): number {
    return header.isolated
      ? (this.#throughOf.get(header) as number)
      : this.ofModule(header.owner as PlacedModule);
  }

  /** What a module's own supply lines lie on. */
  ofModule(module: PlacedModule): number {
    return this.#numberOf.get(module) as number;
  }
}
