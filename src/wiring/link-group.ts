import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import { groupBy } from '../layout/group-by.ts';
import type { BusFacts } from '../layout/kit-index.ts';
import type { Role } from '../layout/layout.ts';
import type { Harness } from './harness.ts';
import type { LaidRibbon } from './laid-ribbon.ts';
import { UnionFind } from './union-find.ts';

/** One host or member of a link group: a header, or the headers that a module joins inside. */
export interface Participant {
  readonly module: PlacedModule;
  readonly bus: BusFacts;
  readonly role: Role;
  /** Members that it counts for; the larger where headers are joined. */
  readonly counts: number;
}

/** Harnesses joined by the `passes` headers inside modules; one harness alone is a group. */
export interface LinkGroup {
  readonly index: number;
  readonly harnesses: readonly Harness[];
  readonly ribbons: readonly LaidRibbon[];
  readonly participants: readonly Participant[];
}

/** Headers of one module on one bus that both pass are one; any other header stands alone. */
const joinedInside = (header: PlacedHeader): string | PlacedHeader =>
  header.passes ? `${(header.owner as PlacedModule).index} ${header.bus.bus.id}` : header;

function joinHarnesses(harnesses: readonly Harness[]): UnionFind {
  const sets = new UnionFind(harnesses.length);
  const firstOf = new Map<string | PlacedHeader, number>();
  for (const harness of harnesses) {
    for (const { on } of harness.moduleSeats) {
      if (!on.header.passes) continue;
      const inside = joinedInside(on.header);
      const first = firstOf.get(inside);
      if (first === undefined) firstOf.set(inside, harness.index);
      else sets.join(first, harness.index);
    }
  }
  return sets;
}

function participantsOf(harnesses: readonly Harness[]): Participant[] {
  const byUnit = new Map<string, Participant>();
  const participants: Participant[] = [];
  for (const harness of harnesses) {
    for (const { on } of harness.moduleSeats) {
      const { header } = on;
      const { bus, counts } = header;
      const participant = { module: header.owner as PlacedModule, bus, role: header.role as Role, counts };
      if (!header.passes) {
        participants.push(participant);
        continue;
      }
      const unit = `${participant.role} ${joinedInside(header)}`;
      const known = byUnit.get(unit);
      if (!known) byUnit.set(unit, participant);
      else if (counts > known.counts) byUnit.set(unit, participant);
    }
  }
  participants.push(...byUnit.values());
  return participants;
}

/** Sorts harnesses into link groups. */
export function findLinkGroups(harnesses: readonly Harness[]): LinkGroup[] {
  const sets = joinHarnesses(harnesses);
  const byRoot = groupBy(harnesses, ({ index }) => sets.find(index));
  return [...byRoot.values()].map((together, index) => ({
    index,
    harnesses: together,
    ribbons: together.flatMap(({ ribbons }) => ribbons),
    participants: participantsOf(together),
  }));
}
