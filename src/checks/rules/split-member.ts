import type { PlacedModule } from '../../geometry/place.ts';
import { groupBy } from '../../layout/group-by.ts';
import type { BusFacts } from '../../layout/kit-index.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { LaidRibbon } from '../../wiring/laid-ribbon.ts';
import type { LinkGroup } from '../../wiring/link-group.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, kind, onModule, ribbon, shoreHeader } from '../example.ts';
import { moduleSpot } from '../spots.ts';
import { moduleSubject, namesOf, ribbonSubjects } from '../words.ts';

interface Membership {
  readonly group: LinkGroup;
  readonly bus: BusFacts;
}

/** The memberships of every module that has more than one. */
function severalMemberships(linkGroups: readonly LinkGroup[]): Map<PlacedModule, Membership[]> {
  const first = new Map<PlacedModule, Membership>();
  const several = new Map<PlacedModule, Membership[]>();
  for (const group of linkGroups) {
    for (const { bus, members } of group.links) {
      for (const { module } of members) {
        const membership = { group, bus };
        const before = first.get(module);
        const list = several.get(module);
        if (!before) first.set(module, membership);
        else if (list) list.push(membership);
        else several.set(module, [before, membership]);
      }
    }
  }
  return several;
}

/** Ribbons of the groups that are seated on the module's member headers of the bus. */
const ribbonsThere = (
  module: PlacedModule,
  bus: BusFacts,
  memberships: readonly Membership[],
): LaidRibbon[] => {
  const seats = memberships
    .flatMap(({ group }) => group.harnesses)
    .flatMap(({ moduleSeats }) => moduleSeats)
    .filter(
      ({ on: { header } }) => header.owner === module && header.bus === bus && header.role === 'member',
    );
  return [...new Set(seats.map(({ ribbon: laid }) => laid))];
};

export const about: About = {
  title: 'One module a member of two groups',
  why: 'Through it two hosts meet: their supplies and outputs are joined inside the member.',
  source: 'common practice, no source',
};

export const splitMember: Check = {
  id: 'split-member',
  level: 'damage',
  *find({ linkGroups }: DerivedTake) {
    for (const [module, ofModule] of severalMemberships(linkGroups)) {
      for (const [bus, memberships] of groupBy(ofModule, ({ bus: own }) => own)) {
        const groups = new Set(memberships.map(({ group }) => group));
        if (groups.size < 2) continue;
        const ribbons = ribbonsThere(module, bus, memberships);
        yield {
          subjects: [moduleSubject(module), ...ribbonSubjects(ribbons)],
          part: bus.bus.id,
          headline: `${module.name} is a member of ${groups.size} ${bus.bus.name} links at once`,
          detail: `${namesOf(ribbons)} belong to link groups that are not joined otherwise.`,
          remedy: 'Leave it on one of them.',
          measure: { groups: groups.size },
          spots: [moduleSpot(module)],
        };
      }
    }
  },
};

/** A member with two headers, between two voices; where its headers pass, both ribbons are one group. */
const between = (passes: boolean) =>
  example({
    kinds: [
      kind('double', {
        headers: [shoreHeader({ id: 'left', passes }), shoreHeader({ id: 'right', yMm: 60, passes })],
      }),
    ],
    modules: [
      ['a', 'collector', 5],
      ['m', 'double', 0],
      ['b', 'double', 10],
    ],
    ribbons: [
      ribbon('r', 'stiff', [onModule(0, 'a'), onModule(1, 'm', 'left')]),
      ribbon('s', 'stiff', [onModule(0, 'b', 'right'), onModule(1, 'm', 'right')]),
    ],
  });

export const examples: Examples = { good: () => between(true), bad: () => between(false) };
