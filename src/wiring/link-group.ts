import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import { groupBy } from '../layout/group-by.ts';
import type { BusFacts } from '../layout/kit-index.ts';
import type { Harness } from './harness.ts';
import type { LaidRibbon } from './laid-ribbon.ts';
import { UnionFind } from './union-find.ts';

/** One host or member of a link group: a header, or the headers that a module joins inside. */
export interface Participant {
  readonly module: PlacedModule;
  /** Members that it counts for; the larger where headers are joined. */
  readonly counts: number;
}

/** Who takes part in a group on one bus; a ribbon may lie on headers of two buses that carry the same lines. */
interface Link {
  readonly bus: BusFacts;
  readonly hosts: readonly Participant[];
  readonly members: readonly Participant[];
}

/** Harnesses joined by the `passes` headers inside modules; one harness alone is a group. */
export interface LinkGroup {
  readonly harnesses: readonly Harness[];
  readonly ribbons: readonly LaidRibbon[];
  readonly links: readonly Link[];
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

interface OpenLink extends Link {
  readonly hosts: Participant[];
  readonly members: Participant[];
}

function linksOf(harnesses: readonly Harness[]): Link[] {
  const links: OpenLink[] = [];
  const joined = new Map<string, number>();
  for (const harness of harnesses) {
    for (const { on } of harness.moduleSeats) {
      const { header } = on;
      const { bus, counts, role } = header;
      let link = links.find((other) => other.bus === bus);
      if (!link) {
        link = { bus, hosts: [], members: [] };
        links.push(link);
      }
      const list = role === 'host' ? link.hosts : link.members;
      const participant = { module: header.owner as PlacedModule, counts };
      const unit = header.passes ? `${role} ${joinedInside(header)}` : undefined;
      const known = unit === undefined ? undefined : joined.get(unit);
      if (known === undefined) {
        if (unit !== undefined) joined.set(unit, list.length);
        list.push(participant);
      } else if (counts > (list[known] as Participant).counts) list[known] = participant;
    }
  }
  return links;
}

/** Sorts harnesses into link groups. */
export function findLinkGroups(harnesses: readonly Harness[]): LinkGroup[] {
  const sets = joinHarnesses(harnesses);
  const byRoot = groupBy(harnesses, ({ index }) => sets.find(index));
  return [...byRoot.values()].map((together) => ({
    harnesses: together,
    ribbons: together.flatMap(({ ribbons }) => ribbons),
    links: linksOf(together),
  }));
}
